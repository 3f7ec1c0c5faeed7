using System.Globalization;
using Plenum.Bench.Data;
using Plenum.Bench.Harness;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Bench;

/// <summary>Parts against the activities that they need, from the tables; and what a page asks of it.</summary>
internal sealed class MatrixBenchmark : Benchmark
{
    private const int Types = 36;
    private const int ActivitiesOfASet = 12;
    private const int Facets = 5;
    private const int PartsOfABranch = 20;

    private readonly ElementTree tree;
    private readonly Table workSets;
    private readonly Table notNeeded;
    private readonly long[] hours;
    private readonly ActivityMatrix warm;
    private ActivityMatrix? made;
    private CellSisters? sisters;
    private int[] undecided = [];

    public MatrixBenchmark(Setting setting)
    {
        var draw = new Draw(setting.Seed);
        workSets = WorkSets();
        (var elements, notNeeded) = Elements(setting.Size(500_000), draw);
        tree = new ElementTree(elements);
        hours = new long[tree.Count];
        for (var row = 0; row < hours.Length; row++)
        {
            hours[row] = draw.Below(100_000);
        }

        warm = new ActivityMatrix(tree, workSets, notNeeded, hours);
        Contenders =
        [
            new("read through the cells that it follows from", Role.Floor, Read),
            new(
                "Plenum, the whole matrix",
                Role.Plenum,
                () => made = new ActivityMatrix(tree, workSets, notNeeded, hours)
            )
            {
                Answer = () =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{made!.DecidedCount} of {made.CellCount}"
                    ),
            },
            new(
                "undecided cells of the whole project by activity",
                Role.Plenum,
                () => undecided = warm.Undecided(0, warm.PartRows.Length)
            ),
            new(
                "what the sisters of one cell have",
                Role.Plenum,
                () => sisters = CellSisters.Of(warm, warm.PartRows.Length / 2, FirstColumn())
            ),
        ];
    }

    public override string Question =>
        $"Which of {warm.CellCount} cells of {warm.PartRows.Length} parts are planned, ruled out or missing, with their hours: "
        + $"{tree.Count} elements, {Types} part types with {ActivitiesOfASet} activities each.";

    public override string Data =>
        "One cell in ten is missing, one in ten is ruled out. Inside the clock: from tables and tree in memory.";

    public override IReadOnlyList<Contender> Contenders { get; }

    public override IEnumerable<string> Notes =>
        [
            $"{warm.CellCount - warm.DecidedCount} cells are undecided, by activity at most {undecided.DefaultIfEmpty(0).Max()}; "
                + $"the cell has {(sisters?.Parts.Count ?? 1) - 1} sisters.",
        ];

    private int FirstColumn() => warm.Cells(warm.PartRows.Length / 2).First().Column;

    private void Read()
    {
        var sum = 0L;
        var elements = tree.Elements;
        foreach (var type in elements.Ints(ElementTable.PartType))
        {
            sum += type;
        }

        foreach (var activity in elements.Texts(ElementTable.Activity))
        {
            sum += activity?.Length ?? 0;
        }

        foreach (var own in hours)
        {
            sum += own;
        }

        foreach (var end in tree.SubtreeEnd)
        {
            sum += end;
        }

        GC.KeepAlive(sum);
    }

    private static string Activity(int type, int place) =>
        string.Create(CultureInfo.InvariantCulture, $"Step {place + (type % 3)}");

    private static Table WorkSets()
    {
        const int Count = Types * ActivitiesOfASet;
        var (types, order) = (new int[Count], new int[Count]);
        var (activities, facets) = (new string?[Count], new string?[Count]);
        for (var row = 0; row < Count; row++)
        {
            types[row] = (row / ActivitiesOfASet) + 1;
            order[row] = row % ActivitiesOfASet;
            activities[row] = Activity(row / ActivitiesOfASet, order[row]);
            facets[row] = string.Create(
                CultureInfo.InvariantCulture,
                $"facet {order[row] * Facets / ActivitiesOfASet}"
            );
        }

        return Tables.Of(
            WorkSetTable.Definition,
            Count,
            (WorkSetTable.PartType, Tables.Of(types)),
            (WorkSetTable.Activity, Tables.Of(activities)),
            (WorkSetTable.Facet, Tables.Of(facets)),
            (WorkSetTable.Order, Tables.Of(order))
        );
    }

    /// <summary>A root, branches of so many parts, and below each part a package for most of its activities.</summary>
    private static (Table Elements, Table NotNeeded) Elements(int most, Draw draw)
    {
        List<int> parents = [Cell.NoInt];
        List<int> types = [Cell.NoInt];
        List<string?> activities = [null];
        List<string?> names = ["root"];
        List<(int Element, string Activity)> ruledOut = [];
        var branch = 0;
        for (var part = 0; parents.Count < most; part++)
        {
            if (part % PartsOfABranch == 0)
            {
                branch = Add(1, Cell.NoInt, null, $"branch {part}");
            }

            var type = (part % Types) + 1;
            var id = Add(branch, type, null, $"part {part % PartsOfABranch}");
            for (var place = 0; place < ActivitiesOfASet; place++)
            {
                var activity = Activity(type - 1, place);
                switch (draw.Below(10))
                {
                    case 0:
                        break;
                    case 1:
                        ruledOut.Add((id, activity));
                        break;
                    default:
                        Add(id, Cell.NoInt, activity, "package");
                        break;
                }
            }
        }

        return (
            Tables.Of(
                ElementTable.Definition,
                parents.Count,
                (ElementTable.Parent, Tables.Of([.. parents])),
                (ElementTable.PartType, Tables.Of([.. types])),
                (ElementTable.Activity, Tables.Of([.. activities])),
                (ElementTable.Name, Tables.Of([.. names]))
            ),
            Tables.Of(
                NotNeededTable.Definition,
                ruledOut.Count,
                (NotNeededTable.Element, Tables.Of([.. ruledOut.Select(one => one.Element)])),
                (
                    NotNeededTable.Activity,
                    Tables.Of([.. ruledOut.Select(one => (string?)one.Activity)])
                )
            )
        );

        int Add(int parent, int type, string? activity, string name)
        {
            parents.Add(parent);
            types.Add(type);
            activities.Add(activity);
            names.Add(name);
            return parents.Count;
        }
    }
}
