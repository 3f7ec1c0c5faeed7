using Plenum.Core;
using Plenum.Core.Breakdown;

namespace Plenum.Workbench.Maps;

/// <summary>
/// The lens of the breakdown: by which logic each element is split. A logic of the project's own has a class with its
/// own word. Findings of the audit are marked.
/// </summary>
internal static class BreakdownLens
{
    /// <summary>Logics of the project's own that have a class each; those beyond share one.</summary>
    private const int MostOwnLogics = 16;

    private const int Trade = 7;

    private static readonly LensClass[] TradeClasses =
    [
        new("part", "physical part", "c1", Glyph: "part"),
        new("function", "function", "c2", Glyph: "function"),
        new("phase", "phase", "c3", Glyph: "phase"),
        new("place", "place", "c4", Glyph: "place"),
        new("discipline", "discipline", "c5", Glyph: "discipline"),
        new("organisation", "organisation", "c6", Glyph: "organisation"),
        new("contract", "contract", "c7", Glyph: "contract"),
    ];

    public static Lens Of(Project project)
    {
        var tree = project.Tree;
        var splits = tree.Elements.Texts(ElementTable.Split);
        List<LensClass> classes = [.. TradeClasses];
        var numberOf = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        foreach (var logic in TradeClasses)
        {
            numberOf.Add(logic.Key, numberOf.Count);
        }

        // what is not a logic comes last, so its numbers are known only when all logics are
        const int None = -1;
        const int NotSplit = -2;
        const int Package = -3;
        var found = new int[tree.Count];
        for (var row = 0; row < found.Length; row++)
        {
            found[row] =
                tree.PackageOfRow[row] >= 0 ? Package
                : !tree.HasChildren(row) ? NotSplit
                : splits[row]?.Trim() is { Length: > 0 } logic ? NumberOf(logic)
                : None;
        }

        var logics = classes.Count;
        classes.Add(new LensClass("no_logic", "no logic named", "raised"));
        classes.Add(new LensClass("not_split", "not broken down", "none"));
        classes.Add(new LensClass("package", "package", "none"));
        var classOf = Array.ConvertAll(
            found,
            number => (byte)(number >= 0 ? number : logics - 1 - number)
        );
        return new Lens(
            project,
            new LensHead(
                new LensText(
                    "Breakdown",
                    "How each element is split, and what the audit found",
                    null
                ),
                new LensLegend("Split", Listed(classes, classOf), Findings: true, Outlines: false)
            ),
            classOf
        );

        int NumberOf(string logic)
        {
            if (numberOf.TryGetValue(logic, out var known))
            {
                return known;
            }

            if (numberOf.Count < Trade + MostOwnLogics)
            {
                classes.Add(new LensClass("own " + logic, logic, "neu"));
                numberOf.Add(logic, numberOf.Count);
                return numberOf.Count - 1;
            }

            if (classes.Count == numberOf.Count)
            {
                classes.Add(new LensClass("own", "another logic", "neu"));
            }

            return classes.Count - 1;
        }
    }

    /// <summary>
    /// The legend names what there is. What is not broken down has an entry of the map's own there, hatched like its
    /// gap.
    /// </summary>
    private static List<LensClass> Listed(List<LensClass> classes, byte[] classOf)
    {
        var isThere = new bool[classes.Count];
        foreach (var one in classOf)
        {
            isThere[one] = true;
        }

        return
        [
            .. classes.Select(
                (one, number) => one with { Listed = isThere[number] && one.Key != "not_split" }
            ),
        ];
    }
}
