using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown;

/// <summary>
/// Parts against activities: which activities a part needs by its type, which packages below it carry out, and which
/// are ruled out. For single parts; <see cref="ActivityMatrix"/> has all of them.
/// </summary>
public sealed class PartActivities
{
    private readonly ElementTree tree;
    private readonly Dictionary<int, List<string>> neededByType = [];
    private readonly Dictionary<int, List<string>> ruledOut = [];

    public PartActivities(ElementTree tree, Table workSets, Table notNeeded)
    {
        this.tree = tree;
        var order = workSets.Ints(WorkSetTable.Order).ToArray();
        var types = workSets.Ints(WorkSetTable.PartType).ToArray();
        var activities = workSets.Texts(WorkSetTable.Activity).ToArray();
        foreach (var row in Enumerable.Range(0, workSets.Count).OrderBy(row => order[row]))
        {
            Add(neededByType, types[row], activities[row]!);
        }

        var elements = notNeeded.Ints(NotNeededTable.Element);
        for (var row = 0; row < notNeeded.Count; row++)
        {
            if (tree.Elements.RowOf(elements[row]) is var element and >= 0)
            {
                Add(ruledOut, element, notNeeded.Texts(NotNeededTable.Activity)[row]!);
            }
        }
    }

    /// <summary>Activities that the part needs by its type, in order; none for an element without a type.</summary>
    public IReadOnlyList<string> Needed(int row) =>
        neededByType.GetValueOrDefault(tree.Elements.Ints(ElementTable.PartType)[row]) ?? [];

    /// <summary>Activities that are listed as not needed for the element.</summary>
    public IReadOnlyList<string> RuledOut(int row) => ruledOut.GetValueOrDefault(row) ?? [];

    public bool IsRuledOut(int row, string activity) =>
        RuledOut(row).Contains(activity, StringComparer.Ordinal);

    /// <summary>Activities that elements below the part, or the part itself, name as the one that they carry out.</summary>
    public IReadOnlySet<string> Planned(int row)
    {
        HashSet<string> planned = new(StringComparer.Ordinal);
        foreach (
            var activity in tree.Elements.Texts(ElementTable.Activity)[row..tree.SubtreeEnd[row]]
        )
        {
            if (activity is not null)
            {
                planned.Add(activity);
            }
        }

        return planned;
    }

    private static void Add(Dictionary<int, List<string>> lists, int key, string value)
    {
        if (!lists.TryGetValue(key, out var list))
        {
            lists[key] = list = [];
        }

        list.Add(value);
    }
}
