namespace Plenum.Core.Foundation.Tables;

/// <summary>
/// Puts rows that name their parent into depth-first order: a parent before its children, a subtree in one piece,
/// sisters by their order and then by code. Time: rows × log of the largest family.
/// </summary>
public static class DepthFirstOrder
{
    /// <param name="parentRow">For each row the row of its parent; −1 for a root.</param>
    /// <param name="order">Place among sisters, <see cref="Cell.NoInt"/> where none is given; may be empty.</param>
    /// <param name="codes">The codes.</param>
    /// <returns>Row numbers in depth-first order. Rows that hang on a ring of parents are left out.</returns>
    public static int[] Of(
        ReadOnlySpan<int> parentRow,
        ReadOnlySpan<int> order,
        ReadOnlySpan<string?> codes
    )
    {
        var rows = parentRow.Length;
        var start = new int[rows + 2];
        foreach (var parent in parentRow)
        {
            start[parent + 2]++;
        }

        for (var row = 1; row < start.Length; row++)
        {
            start[row] += start[row - 1];
        }

        var children = new int[rows];
        var next = start.ToArray();
        for (var row = 0; row < rows; row++)
        {
            children[next[parentRow[row] + 1]++] = row;
        }

        SortFamilies(children, start, order.ToArray(), codes.ToArray());
        return Walk(children, start);
    }

    /// <summary>The rings of parents, each whole and in order, beginning with the row that stands first.</summary>
    public static IEnumerable<IReadOnlyList<int>> Rings(int[] parentRow)
    {
        var mark = new int[parentRow.Length];
        for (var row = 0; row < parentRow.Length; row++)
        {
            var at = row;
            while (at >= 0 && mark[at] == 0)
            {
                mark[at] = row + 1;
                at = parentRow[at];
            }

            if (at >= 0 && mark[at] == row + 1)
            {
                List<int> ring = [at];
                for (var other = parentRow[at]; other != at; other = parentRow[other])
                {
                    ring.Add(other);
                }

                yield return ring;
            }
        }
    }

    private static void SortFamilies(int[] children, int[] start, int[] order, string?[] codes)
    {
        var bySisterOrder = Comparer<int>.Create(
            (left, right) =>
            {
                if (order.Length > 0)
                {
                    var leftPlace = order[left] == Cell.NoInt ? int.MaxValue : order[left];
                    var rightPlace = order[right] == Cell.NoInt ? int.MaxValue : order[right];
                    if (leftPlace != rightPlace)
                    {
                        return leftPlace.CompareTo(rightPlace);
                    }
                }

                return NaturalOrder.Codes.Compare(codes[left], codes[right]);
            }
        );
        for (var family = 0; family < start.Length - 1; family++)
        {
            var length = start[family + 1] - start[family];
            if (length > 1)
            {
                Array.Sort(children, start[family], length, bySisterOrder);
            }
        }
    }

    private static int[] Walk(int[] children, int[] start)
    {
        var result = new List<int>(children.Length);
        var waiting = new Stack<int>();
        PushFamily(0);
        while (waiting.TryPop(out var row))
        {
            result.Add(row);
            PushFamily(row + 1);
        }

        return [.. result];

        void PushFamily(int family)
        {
            for (var child = start[family + 1] - 1; child >= start[family]; child--)
            {
                waiting.Push(children[child]);
            }
        }
    }
}
