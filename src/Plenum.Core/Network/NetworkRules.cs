using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Network;

/// <summary>What must hold for links before a network can be made of them.</summary>
public static class NetworkRules
{
    /// <summary>Reports every ring of links whole, in order, by code. Returns true if there is none.</summary>
    /// <param name="links">The table of links.</param>
    /// <param name="codes">Codes of the activities.</param>
    /// <param name="from">Predecessor of each link.</param>
    /// <param name="to">Successor of each link.</param>
    /// <param name="rowOfLink">Row of each link in the table.</param>
    /// <param name="faults">Receives the rings.</param>
    public static bool CheckRings(
        Table links,
        IReadOnlyList<string> codes,
        int[] from,
        int[] to,
        int[] rowOfLink,
        IRowFaults faults
    )
    {
        if (NetworkOrder.Of(codes.Count, from, to) is not null)
        {
            return true;
        }

        foreach (var ring in NetworkException.RingsOf(codes, from, to))
        {
            // one activity alone was reported as a link that leads back to where it begins
            if (ring.Count > 1)
            {
                faults.Add(
                    links,
                    rowOfLink[LinkBetween(ring[^1], ring[0])],
                    LinkTable.To,
                    "a successor that none of its own successors leads back to",
                    NetworkException.Say(ring, codes)
                );
            }
        }

        return false;

        int LinkBetween(int before, int after)
        {
            var link = 0;
            while (from[link] != before || to[link] != after)
            {
                link++;
            }

            return link;
        }
    }

    /// <summary>No link to itself; a package with activities is linked by them and not as a whole.</summary>
    public static void CheckLinks(
        ElementTree tree,
        Table activities,
        Table links,
        IRowFaults faults
    )
    {
        HashSet<int> withActivities = [.. activities.Ints(ActivityTable.Package).ToArray()];
        var from = links.Ints(LinkTable.From);
        var to = links.Ints(LinkTable.To);
        for (var row = 0; row < links.Count; row++)
        {
            if (from[row] == to[row] && from[row] != Cell.NoInt)
            {
                faults.Add(
                    links,
                    row,
                    LinkTable.To,
                    "another activity",
                    "the link leads back to where it begins"
                );
            }

            CheckEnd(row, LinkTable.From, from[row]);
            CheckEnd(row, LinkTable.To, to[row]);
        }

        void CheckEnd(int row, ColumnDefinition column, int end)
        {
            if (end == Cell.NoInt || column.DecodeReference(end) is not (1, var id))
            {
                return;
            }

            if (withActivities.Contains(id))
            {
                faults.Add(
                    links,
                    row,
                    column,
                    "an activity of the package",
                    $"package {tree.Code(tree.Elements.RowOf(id))} is linked by its activities, not as a whole"
                );
            }
        }
    }
}
