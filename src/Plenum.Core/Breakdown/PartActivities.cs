using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown;

/// <summary>
/// Parts against activities: which activities a part needs by its type, which packages below it carry out, and which
/// are ruled out.
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

    /// <summary>An element below the part, or the part itself, names the activity as the one that it carries out.</summary>
    public bool IsPlanned(int row, string activity)
    {
        var activities = tree.Elements.Texts(ElementTable.Activity);
        return activities[row..tree.SubtreeEnd[row]].Contains(activity);
    }

    /// <summary>
    /// How many cells the matrix of parts by activities has, and in how many of them it is decided whether the work is
    /// planned or not needed. One that says both is not decided.
    /// </summary>
    public (int Decided, int Cells) Decided()
    {
        var (decided, cells) = (0, 0);
        for (var row = 0; row < tree.Count; row++)
        {
            foreach (var activity in Needed(row))
            {
                cells++;
                decided += IsPlanned(row, activity) != IsRuledOut(row, activity) ? 1 : 0;
            }
        }

        return (decided, cells);
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
