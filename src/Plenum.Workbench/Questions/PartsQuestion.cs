using Plenum.Core;
using Plenum.Core.Breakdown;

namespace Plenum.Workbench.Questions;

/// <summary>Which activities do the parts below an element need, and which of them are decided?</summary>
/// <param name="Under">Code of the element; null for the whole project.</param>
/// <param name="OnlyUndecided">Only parts with a cell that is not decided.</param>
/// <param name="WithoutType">Also parts that have no type yet.</param>
public sealed record PartsQuestion(
    string? Under = null,
    bool OnlyUndecided = false,
    bool WithoutType = false
)
{
    /// <summary>
    /// Cost: a step for each part in the range, beside the matrix, which is kept with the value. An element without
    /// parts below it is asked for as part of the nearest element above that has some.
    /// </summary>
    /// <exception cref="QuestionException">No element has the code.</exception>
    public PartsAnswer Ask(Project project)
    {
        var tree = project.Tree;
        var matrix = project.ActivityMatrix;
        var under = Math.Max(0, ElementPosition.Of(project, Under));
        if (tree.Count == 0)
        {
            return new PartsAnswer(project, under, (0, 0), [], 0);
        }

        var (first, end) = matrix.PartsIn(under, tree.SubtreeEnd[under]);
        List<int> typeless = WithoutTypeIn(tree, matrix, under);
        while (first == end && typeless.Count == 0 && tree.Parent[under] >= 0)
        {
            under = tree.Parent[under];
            (first, end) = matrix.PartsIn(under, tree.SubtreeEnd[under]);
            typeless = WithoutTypeIn(tree, matrix, under);
        }

        List<int> rows = [];
        for (var part = first; part < end; part++)
        {
            var (decided, cells) = matrix.Count(part, part + 1);
            if (!OnlyUndecided || decided < cells)
            {
                rows.Add(matrix.PartRows[part]);
            }
        }

        if (WithoutType)
        {
            rows.AddRange(typeless);
            rows.Sort();
        }

        return new PartsAnswer(project, under, (first, end), rows, typeless.Count);
    }

    /// <summary>
    /// Elements that could be given a type: no package, no other part below, none above, and no activity of one.
    /// </summary>
    private static List<int> WithoutTypeIn(ElementTree tree, ActivityMatrix matrix, int under)
    {
        List<int> found = [];
        var end = tree.SubtreeEnd[under];
        for (var row = Math.Max(under, 1); row < end; row++)
        {
            if (matrix.PartAt(row) >= 0)
            {
                row = tree.SubtreeEnd[row] - 1;
            }
            else if (tree.PackageOfRow[row] < 0 && !HasParts(tree, row))
            {
                found.Add(row);
            }
        }

        return found;
    }

    private static bool HasParts(ElementTree tree, int row)
    {
        for (var child = row + 1; child < tree.SubtreeEnd[row]; child = tree.SubtreeEnd[child])
        {
            if (tree.PackageOfRow[child] < 0)
            {
                return true;
            }
        }

        return false;
    }
}
