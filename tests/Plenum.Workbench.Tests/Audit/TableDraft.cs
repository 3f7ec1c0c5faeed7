using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Tests.Audit;

/// <summary>A table while it is being edited: rows are changed, come and go; what changed is known at the end.</summary>
internal sealed class TableDraft
{
    private readonly Table before;
    private readonly List<int> ids;
    private readonly ColumnBuilder[] columns;
    private readonly HashSet<int> updated = [];
    private readonly HashSet<int> added = [];
    private readonly HashSet<int> removed = [];

    public TableDraft(Table before)
    {
        this.before = before;
        ids = [.. before.Ids];
        columns = [.. before.Definition.Columns.Select(column => before[column].ToBuilder(1))];
    }

    public int Count => ids.Count;

    public int IdOf(int row) => ids[row];

    /// <summary>Copies a cell of the table as it was into a row.</summary>
    public void Copy(ColumnDefinition column, int row, int from)
    {
        columns[column.Index].Overwrite(row, before[column], from);
        Note(row);
    }

    public void Set(ColumnDefinition column, int row, int value)
    {
        ((NumberColumnBuilder<int>)columns[column.Index])[row] = value;
        Note(row);
    }

    public void Set(ColumnDefinition column, int row, long value)
    {
        ((NumberColumnBuilder<long>)columns[column.Index])[row] = value;
        Note(row);
    }

    public void Set(ColumnDefinition column, int row, decimal value)
    {
        ((NumberColumnBuilder<decimal>)columns[column.Index])[row] = value;
        Note(row);
    }

    public void Set(ColumnDefinition column, int row, string? value)
    {
        ((TextColumnBuilder)columns[column.Index])[row] = value;
        Note(row);
    }

    /// <summary>Adds a copy of a row, or an empty one (−1); returns its number.</summary>
    public int Add(int like)
    {
        var id = Math.Max(ids.DefaultIfEmpty(0).Max(), before.Ids.DefaultIfEmpty(0).Max()) + 1;
        ids.Add(id);
        added.Add(id);
        foreach (var column in before.Definition.Columns)
        {
            if (like < 0)
            {
                columns[column.Index].AddMissing();
            }
            else
            {
                columns[column.Index].AddFrom(before[column], like);
            }
        }

        return ids.Count - 1;
    }

    public void Remove(int row) => removed.Add(ids[row]);

    public (Table Table, TableChange Change) Build()
    {
        var all = new Table(
            before.Definition,
            [.. ids],
            [.. columns.Select(column => column.Build())],
            before.OwnFields
        );
        int[] kept = [.. Enumerable.Range(0, ids.Count).Where(row => !removed.Contains(ids[row]))];
        // columns that no row was changed in are shared, as those of a command are
        var table = kept.Length < ids.Count ? all.InOrder(kept) : Sharing(all);
        return (
            table,
            new TableChange(
                before.Definition,
                [.. added.Except(removed)],
                [.. updated.Except(removed).Except(added)],
                [.. removed.Except(added)]
            )
        );
    }

    private Table Sharing(Table all)
    {
        if (added.Count > 0)
        {
            return all;
        }

        var next = before;
        foreach (var column in before.Definition.Columns)
        {
            for (var row = 0; row < all.Count; row++)
            {
                if (!all[column].SameAt(row, before[column], row))
                {
                    next = next.With(column, all[column]);
                    break;
                }
            }
        }

        return next;
    }

    private void Note(int row) => updated.Add(ids[row]);
}
