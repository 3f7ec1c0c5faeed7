using System.Collections.Immutable;
using Plenum.Core;

namespace Plenum.Workbench.Questions;

/// <summary>The breakdown as an outline of which only some branches are open.</summary>
/// <param name="Open">Ids of the elements whose parts are shown. Two questions are the same if the set is the same object.</param>
public sealed record OutlineQuestion(ImmutableHashSet<int> Open)
{
    /// <summary>Cost: one step for every line of the outline, whatever lies in closed branches.</summary>
    public OutlineAnswer Ask(Project project)
    {
        var tree = project.Tree;
        var ids = tree.Elements.Ids;
        List<int> lines = [];
        Stack<int> unequal = [];
        for (var row = 0; row < tree.Count; )
        {
            while (unequal.Count > 0 && tree.SubtreeEnd[unequal.Peek()] <= row)
            {
                lines.Add(~unequal.Pop());
            }

            lines.Add(row);
            if (!tree.HasChildren(row) || !Open.Contains(ids[row]))
            {
                row = tree.SubtreeEnd[row];
                continue;
            }

            if (project.Totals.Gap[row] is not (0 or Core.Foundation.Tables.Cell.NoLong))
            {
                unequal.Push(row);
            }

            row++;
        }

        while (unequal.Count > 0)
        {
            lines.Add(~unequal.Pop());
        }

        return new OutlineAnswer(project, Open, [.. lines]);
    }
}
