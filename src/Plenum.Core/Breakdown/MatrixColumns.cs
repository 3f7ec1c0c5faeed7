using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown;

/// <summary>The activities of all work sets as columns, and the places of each set's activities among them.</summary>
internal sealed class MatrixColumns
{
    /// <summary>Facets in the order in which the work is done; others follow in the order of the table.</summary>
    private static readonly string[] FacetsInOrder =
    [
        "engineering",
        "procurement",
        "construction",
        "commissioning",
        "close",
    ];

    private readonly Dictionary<string, int> numberOf = new(StringComparer.Ordinal);
    private readonly Dictionary<int, int> setOfType = [];
    private readonly int[][] activities;
    private readonly int[][] setRows;
    private readonly int[][] placeOf;

    public MatrixColumns(Table workSets)
    {
        var types = workSets.Ints(WorkSetTable.PartType).ToArray();
        var names = workSets.Texts(WorkSetTable.Activity).ToArray();
        var order = workSets.Ints(WorkSetTable.Order).ToArray();
        All = InOrder(workSets, names, order);
        for (var column = 0; column < All.Count; column++)
        {
            numberOf[All[column].Activity] = column;
        }

        List<List<int>> sets = [];
        foreach (var row in Enumerable.Range(0, workSets.Count).OrderBy(row => order[row]))
        {
            if (!setOfType.TryGetValue(types[row], out var set))
            {
                setOfType[types[row]] = set = sets.Count;
                sets.Add([]);
            }

            sets[set].Add(row);
        }

        setRows = [.. sets.Select(rows => rows.ToArray())];
        activities = [.. sets.Select(rows => rows.Select(row => numberOf[names[row]!]).ToArray())];
        placeOf = Array.ConvertAll(activities, Places);
    }

    public IReadOnlyList<ActivityColumn> All { get; }

    public int SetCount => activities.Length;

    /// <summary>Number of a part type's work set; −1 for a type without one.</summary>
    public int SetOf(int partType) => setOfType.GetValueOrDefault(partType, -1);

    /// <summary>Columns of a set's activities, in the order of the set.</summary>
    public int[] Activities(int set) => activities[set];

    /// <summary>Rows of a set's activities in the table of work sets.</summary>
    public int[] SetRows(int set) => setRows[set];

    /// <summary>Place of a column within a set; −1 if the set has no such activity.</summary>
    public int PlaceOf(int set, int column) => placeOf[set][column];

    public int NumberOf(string activity) => numberOf.GetValueOrDefault(activity, -1);

    private int[] Places(int[] columns)
    {
        var places = new int[All.Count];
        places.AsSpan().Fill(-1);
        for (var place = 0; place < columns.Length; place++)
        {
            places[columns[place]] = place;
        }

        return places;
    }

    private static List<ActivityColumn> InOrder(Table workSets, string?[] names, int[] order)
    {
        var facets = workSets.Texts(WorkSetTable.Facet).ToArray();
        List<string> known = [.. FacetsInOrder];
        Dictionary<string, (string Facet, long Orders, int Sets, int First)> found = new(
            StringComparer.Ordinal
        );
        for (var row = 0; row < names.Length; row++)
        {
            var facet = facets[row] ?? "";
            if (!known.Contains(facet, StringComparer.OrdinalIgnoreCase))
            {
                known.Add(facet);
            }

            found[names[row]!] = found.TryGetValue(names[row]!, out var before)
                ? before with
                {
                    Orders = before.Orders + order[row],
                    Sets = before.Sets + 1,
                }
                : (facet, order[row], 1, row);
        }

        return
        [
            .. found
                .OrderBy(pair =>
                    known.FindIndex(facet =>
                        facet.Equals(pair.Value.Facet, StringComparison.OrdinalIgnoreCase)
                    )
                )
                // its mean place: sets differ in what they leave out
                .ThenBy(pair => (double)pair.Value.Orders / pair.Value.Sets)
                .ThenBy(pair => pair.Value.First)
                .Select(pair => new ActivityColumn(pair.Key, pair.Value.Facet)),
        ];
    }
}
