using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Scope;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Maps;

/// <summary>
/// The lens of scope: what a picked item asks for, what any item asks for, and what nobody asked for. An element belongs to
/// the picked item if it, or one above it, answers that item. A branch is asked for in part if something below it is not
/// asked for.
/// </summary>
internal static class ScopeLens
{
    private const byte Asked = 1;
    private const byte Partly = 2;
    private const byte Nobody = 3;

    /// <param name="project">The project.</param>
    /// <param name="item">Number of the picked item; null for none.</param>
    /// <exception cref="QuestionException">No item has the number.</exception>
    public static Lens Of(Project project, string? item)
    {
        var scope = project[ScopeTable.Definition];
        var picked = item is null ? -1 : scope.RowOfCode(item);
        if (item is not null && picked < 0)
        {
            throw new QuestionException($"No scope item has the number \"{item}\".");
        }

        var tree = project.Tree;
        var coverage = project.ScopeCoverage;
        var classOf = new byte[tree.Count];
        for (var row = classOf.Length - 1; row >= 0; row--)
        {
            // what is below has been looked at: it has raised its parent to Partly where it is not asked for
            classOf[row] =
                !coverage.IsAsked(row) ? Nobody
                : classOf[row] == Partly ? Partly
                : Asked;
            if (classOf[row] != Asked && tree.Parent[row] is var parent and >= 0)
            {
                classOf[parent] = Partly;
            }
        }

        if (picked >= 0)
        {
            Pick(project, picked, classOf);
        }

        return new Lens(
            project,
            new LensHead(
                new LensText(
                    "Scope",
                    item is null
                        ? "Which parts the scope statement asks for"
                        : $"Which parts a scope item asks for; item {item} is picked",
                    null
                ),
                new LensLegend("Scope", Classes(item), Outlines: false)
            ),
            classOf
        );
    }

    private static void Pick(Project project, int picked, byte[] classOf)
    {
        var tree = project.Tree;
        var trace = project[TraceTable.Definition];
        foreach (var row in project.ScopeCoverage.Answers[picked])
        {
            var element = tree.Elements.RowOf(trace.Ints(TraceTable.Element)[row]);
            classOf.AsSpan(element..tree.SubtreeEnd[element]).Clear(); // picked is the first class
        }
    }

    private static LensClass[] Classes(string? item) =>
        [
            new(
                "picked",
                item is null ? "asked for by the item" : $"asked for by {item}",
                "ink2",
                Listed: item is not null
            ),
            new("asked", "asked for", "neu"),
            new("partly", "partly", "unf1"),
            new("nobody", "nobody asked for it", "unf3"),
        ];
}
