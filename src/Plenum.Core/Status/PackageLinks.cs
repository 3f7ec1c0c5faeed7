using Plenum.Core.Baseline;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Network;

namespace Plenum.Core.Status;

/// <summary>Which packages wait for which, by the links of their activities and their own; the type of link is not looked at.</summary>
public sealed class PackageLinks
{
    private readonly RowGroups before;
    private readonly RowGroups after;
    private readonly int[] from;
    private readonly int[] to;

    public PackageLinks(PackageBaseline baseline, Table activities, Table links)
    {
        var owners = baseline.OwnersOf(activities, ActivityTable.Package);
        from = Ends(LinkTable.From);
        to = Ends(LinkTable.To);
        for (var row = 0; row < from.Length; row++)
        {
            // links inside a package, and ends that are no package, hold nothing up
            if (from[row] == to[row] || from[row] < 0 || to[row] < 0)
            {
                from[row] = to[row] = -1;
            }
        }

        before = RowGroups.By(to, baseline.Count);
        after = RowGroups.By(from, baseline.Count);

        int[] Ends(ColumnDefinition column)
        {
            var values = links.Ints(column);
            var packages = new int[values.Length];
            for (var row = 0; row < packages.Length; row++)
            {
                packages[row] = Cell.IsGiven(values[row])
                    ? column.DecodeReference(values[row]) switch
                    {
                        (0, var id) => activities.RowOf(id) is var activity and >= 0
                            ? owners[activity]
                            : -1,
                        (1, var id) => baseline.Tree.PackageOfId(id),
                        _ => -1,
                    }
                    : -1;
            }

            return packages;
        }
    }

    /// <summary>A package that a package waits for has not finished.</summary>
    public bool Waits(int package, Func<int, bool> isFinished)
    {
        foreach (var row in before[package])
        {
            if (!isFinished(from[row]))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The packages that wait for a package directly; one may come twice.</summary>
    public IEnumerable<int> DirectFollowers(int package) =>
        after[package].ToArray().Select(row => to[row]);

    /// <summary>How many packages come after a package, directly or not; counted up to a limit.</summary>
    public int Followers(int package, int limit)
    {
        HashSet<int> seen = [];
        Stack<int> open = new([package]);
        while (open.Count > 0 && seen.Count < limit)
        {
            foreach (var row in after[open.Pop()])
            {
                if (to[row] != package && seen.Add(to[row]))
                {
                    open.Push(to[row]);
                }
            }
        }

        return Math.Min(seen.Count, limit);
    }
}
