namespace Plenum.Core.Foundation.Tables;

/// <summary>
/// Rows of one table by the record that they belong to, as one array with a start for each owner. Within an owner the
/// rows keep the order of the table.
/// </summary>
public sealed class RowGroups
{
    private readonly int[] start;
    private readonly int[] rows;

    private RowGroups(int[] start, int[] rows)
    {
        this.start = start;
        this.rows = rows;
    }

    /// <summary>The rows of an owner.</summary>
    public ReadOnlySpan<int> this[int owner] =>
        rows.AsSpan(start[owner], start[owner + 1] - start[owner]);

    public int OwnerCount => start.Length - 1;

    /// <param name="ownerOfRow">The owner of each row; rows with a negative one are left out.</param>
    /// <param name="owners">Number of owners.</param>
    /// <param name="orderWithin">If given, rows of an owner are ordered by it.</param>
    public static RowGroups By(ReadOnlySpan<int> ownerOfRow, int owners, int[]? orderWithin = null)
    {
        var starts = new int[owners + 1];
        foreach (var owner in ownerOfRow)
        {
            if (owner >= 0)
            {
                starts[owner + 1]++;
            }
        }

        for (var owner = 0; owner < owners; owner++)
        {
            starts[owner + 1] += starts[owner];
        }

        var grouped = new int[starts[owners]];
        var next = starts.AsSpan(0, owners).ToArray();
        for (var row = 0; row < ownerOfRow.Length; row++)
        {
            if (ownerOfRow[row] >= 0)
            {
                grouped[next[ownerOfRow[row]]++] = row;
            }
        }

        if (orderWithin is not null)
        {
            SortWithin(starts, grouped, orderWithin);
        }

        return new RowGroups(starts, grouped);
    }

    private static void SortWithin(int[] start, int[] rows, int[] order)
    {
        for (var owner = 0; owner < start.Length - 1; owner++)
        {
            var group = rows.AsSpan(start[owner], start[owner + 1] - start[owner]);
            for (var i = 1; i < group.Length; i++)
            {
                if (order[group[i - 1]] > order[group[i]])
                {
                    group.Sort(
                        (left, right) => (order[left], left).CompareTo((order[right], right))
                    );
                    break;
                }
            }
        }
    }
}
