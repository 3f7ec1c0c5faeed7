using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Network;

/// <summary>What must hold for links before a network can be made of them.</summary>
public static class NetworkRules
{
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
