using Plenum.Core;
using Plenum.Exchange.Lists;

namespace Plenum.Workbench.Questions;

/// <summary>The breakdown, or an element and all below it, as a list that can be pasted elsewhere and read back.</summary>
/// <param name="Under">Code of the element; null for the whole.</param>
/// <param name="Coded">With codes.</param>
public sealed record ListQuestion(string? Under, bool Coded)
{
    /// <exception cref="QuestionException">No element has the code.</exception>
    public ListAnswer Ask(Project project)
    {
        var tree = project.Tree;
        var top = Math.Max(0, ElementPosition.Of(project, Under));
        if (tree.Count == 0)
        {
            return new ListAnswer(project.Revision, []);
        }

        return new ListAnswer(
            project.Revision,
            [
                .. Enumerable
                    .Range(top, tree.SubtreeEnd[top] - top)
                    .Select(row => new ListLine(tree.Level[row], tree.Code(row), tree.Name(row))),
            ]
        );
    }

    /// <summary>Position of the element of a code; −1 for none named.</summary>
    /// <exception cref="QuestionException">No element has the code.</exception>
    public static int PositionOf(Project project, string? code) =>
        ElementPosition.Of(project, code);

    /// <summary>Writes the list, a line for each element.</summary>
    public void Write(TextWriter output, ListAnswer answer) =>
        ListWriter.Write(
            output,
            [.. answer.Lines.Select(line => (line.Level, line.Code, line.Name))],
            Coded ? ListLayout.Coded : ListLayout.Indented
        );
}

/// <summary>An element of a list.</summary>
/// <param name="Level">Level in the project; the root has level 1.</param>
public sealed record ListLine(int Level, string Code, string Name);

public sealed record ListAnswer(long Revision, IReadOnlyList<ListLine> Lines);
