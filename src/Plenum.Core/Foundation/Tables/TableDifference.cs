namespace Plenum.Core.Foundation.Tables;

/// <summary>A row that two values of a table do not have in common.</summary>
/// <param name="Before">Its row before; −1 for one that has come.</param>
/// <param name="After">Its row after; −1 for one that has gone.</param>
/// <param name="Columns">The columns in which it differs; all of a row that has come or gone.</param>
public readonly record struct RowDifference(
    int Before,
    int After,
    IReadOnlyCollection<ColumnDefinition> Columns
);

/// <summary>In which rows, by id, two values of a table differ. Columns of the user's own are left out.</summary>
public sealed class TableDifference
{
    private readonly List<RowDifference> rows = [];

    private TableDifference(Table before, Table after)
    {
        Before = before;
        After = after;
    }

    public TableDefinition Definition => After.Definition;

    public Table Before { get; }

    public Table After { get; }

    public IReadOnlyList<RowDifference> Rows => rows;

    /// <summary>Compares all rows. Time: the cells of columns that are not shared.</summary>
    public static TableDifference Between(Table before, Table after)
    {
        var difference = new TableDifference(before, after);
        var definition = after.Definition;
        var inPlace = before.Ids.AsSpan().SequenceEqual(after.Ids);
        Dictionary<int, List<ColumnDefinition>> changed = [];
        foreach (var column in definition.Columns)
        {
            if (inPlace && ReferenceEquals(before[column], after[column]))
            {
                continue;
            }

            for (var row = 0; row < after.Count; row++)
            {
                var was = inPlace ? row : before.RowOf(after.Ids[row]);
                if (was >= 0 && !after[column].SameAt(row, before[column], was))
                {
                    if (!changed.TryGetValue(row, out var columns))
                    {
                        changed[row] = columns = [];
                    }

                    columns.Add(column);
                }
            }
        }

        foreach (var (row, columns) in changed)
        {
            difference.rows.Add(new RowDifference(before.RowOf(after.Ids[row]), row, columns));
        }

        if (!inPlace)
        {
            difference.AddComeAndGone(after.Ids, before.Ids);
        }

        return difference;
    }

    /// <summary>Compares the rows that a command says it has changed.</summary>
    public static TableDifference At(Table before, Table after, TableChange change)
    {
        var difference = new TableDifference(before, after);
        foreach (var id in change.Updated)
        {
            var (was, row) = (before.RowOf(id), after.RowOf(id));
            List<ColumnDefinition> columns =
            [
                .. after.Definition.Columns.Where(column =>
                    !after[column].SameAt(row, before[column], was)
                ),
            ];
            if (columns.Count > 0)
            {
                difference.rows.Add(new RowDifference(was, row, columns));
            }
        }

        difference.AddComeAndGone(change.Added, change.Removed);
        return difference;
    }

    private void AddComeAndGone(IReadOnlyList<int> come, IReadOnlyList<int> gone)
    {
        foreach (var id in come)
        {
            if (Before.RowOf(id) < 0)
            {
                rows.Add(
                    new RowDifference(
                        -1,
                        After.RowOf(id),
                        (ColumnDefinition[])[.. Definition.Columns]
                    )
                );
            }
        }

        foreach (var id in gone)
        {
            if (After.RowOf(id) < 0)
            {
                rows.Add(
                    new RowDifference(
                        Before.RowOf(id),
                        -1,
                        (ColumnDefinition[])[.. Definition.Columns]
                    )
                );
            }
        }
    }
}
