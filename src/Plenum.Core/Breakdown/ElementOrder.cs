using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown;

/// <summary>
/// The depth-first order of elements once a few of them have come, gone or moved: what stayed keeps its order, what has
/// changed is put where it belongs. Gives what sorting all of them anew would give.
/// </summary>
public sealed class ElementOrder
{
    private readonly ElementTree before;
    private readonly TableEdit edit;
    private readonly HashSet<int> lifted;
    private readonly Dictionary<int, List<int>> come = [];
    private int[]? touchedRows;

    private ElementOrder(ElementTree before, TableEdit edit, HashSet<int> lifted)
    {
        this.before = before;
        this.edit = edit;
        this.lifted = lifted;
    }

    /// <summary>Ids of all elements in depth-first order.</summary>
    /// <param name="before">The breakdown before.</param>
    /// <param name="edit">What has been written since; it must form one tree.</param>
    /// <returns>Null if too much has changed, or an element has another root.</returns>
    public static int[]? Of(ElementTree before, TableEdit edit)
    {
        HashSet<int> moved = [];
        foreach (var id in edit.Touched)
        {
            var row = before.Elements.RowOf(id);
            if (
                !edit.SameAt(ElementTable.Parent, id, before.Elements[ElementTable.Parent], row)
                || !edit.SameAt(ElementTable.Order, id, before.Elements[ElementTable.Order], row)
                || !edit.SameAt(ElementTable.Code, id, before.Elements[ElementTable.Code], row)
            )
            {
                moved.Add(id);
            }
        }

        moved.UnionWith(edit.Added);
        if (
            before.Count == 0
            || moved.Contains(before.Elements.Ids[0])
            || edit.Removed.Contains(before.Elements.Ids[0])
        )
        {
            return null;
        }

        return new ElementOrder(before, edit, moved).Make();
    }

    private int[]? Make()
    {
        foreach (var id in lifted)
        {
            var parent = edit.Int(ElementTable.Parent, id);
            if (!Cell.IsGiven(parent))
            {
                return null;
            }

            if (!come.TryGetValue(parent, out var family))
            {
                come[parent] = family = [];
            }

            family.Add(id);
        }

        var order = new List<int>(before.Count + lifted.Count);
        var root = before.Elements.Ids[0];
        Write(root, order);
        return order.Count == before.Count + edit.Added.Count() - Gone() ? [.. order] : null;
    }

    private int Gone() => edit.Removed.Count(id => before.Elements.RowOf(id) >= 0);

    /// <summary>Writes an element and all below it.</summary>
    private void Write(int top, List<int> order)
    {
        var waiting = new Stack<int>();
        waiting.Push(top);
        while (waiting.TryPop(out var id))
        {
            var row = before.Elements.RowOf(id);
            if (row >= 0 && !IsTouchedBelow(row))
            {
                // a subtree in which nothing has changed is copied in one piece
                order.AddRange(before.Elements.Ids.AsSpan(row, before.SubtreeEnd[row] - row));
                continue;
            }

            order.Add(id);
            var family = Family(id, row);
            for (var child = family.Count - 1; child >= 0; child--)
            {
                waiting.Push(family[child]);
            }
        }
    }

    private List<int> Family(int id, int row)
    {
        List<int> family = [];
        if (row >= 0)
        {
            for (
                var child = row + 1;
                child < before.SubtreeEnd[row];
                child = before.SubtreeEnd[child]
            )
            {
                var own = before.Elements.Ids[child];
                if (!lifted.Contains(own) && !edit.Removed.Contains(own))
                {
                    family.Add(own);
                }
            }
        }

        if (come.TryGetValue(id, out var more))
        {
            family.AddRange(more);
            family.Sort(Compare);
        }

        return family;
    }

    private int Compare(int one, int other)
    {
        var (left, right) = (Place(one), Place(other));
        return left != right
            ? left.CompareTo(right)
            : NaturalOrder.Codes.Compare(
                edit.Text(ElementTable.Code, one),
                edit.Text(ElementTable.Code, other)
            );
    }

    private int Place(int id) =>
        edit.Int(ElementTable.Order, id) is var order && order == Cell.NoInt ? int.MaxValue : order;

    /// <summary>Something in the subtree of a row has come, gone or moved.</summary>
    private bool IsTouchedBelow(int row)
    {
        touchedRows ??= TouchedRows();
        var at = Array.BinarySearch(touchedRows, row);
        at = at < 0 ? ~at : at;
        return at < touchedRows.Length && touchedRows[at] < before.SubtreeEnd[row];
    }

    /// <summary>Rows of before whose families are no longer what they were.</summary>
    private int[] TouchedRows()
    {
        SortedSet<int> rows = [];
        foreach (var id in lifted.Concat(edit.Removed))
        {
            if (before.Elements.RowOf(id) is var row and >= 0)
            {
                rows.Add(Math.Max(0, before.Parent[row]));
            }
        }

        foreach (var parent in come.Keys)
        {
            if (before.Elements.RowOf(parent) is var row and >= 0)
            {
                rows.Add(row);
            }
        }

        return [.. rows];
    }
}
