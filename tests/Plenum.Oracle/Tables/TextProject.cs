namespace Plenum.Oracle.Tables;

/// <summary>One row of a text table: column name to text; a column that is not there reads as empty.</summary>
public sealed class TextRow
{
    private readonly Dictionary<string, string> cells = new(StringComparer.Ordinal);

    /// <summary>The columns in the order in which they were first set.</summary>
    public IReadOnlyCollection<string> Columns => cells.Keys;

    public string this[string column]
    {
        get => cells.GetValueOrDefault(column, "");
        set => cells[column] = value;
    }

    public bool Has(string column) => this[column] != "";
}

/// <summary>
/// A project as text tables, named and laid out like the files that users bring (docs/files.md).
/// Nothing is checked here.
/// </summary>
public sealed class TextProject
{
    private readonly Dictionary<string, List<TextRow>> tables = new(StringComparer.Ordinal);

    /// <summary>The names of the tables that have rows, in the order in which they were first used.</summary>
    public IReadOnlyCollection<string> TableNames => tables.Keys;

    /// <summary>The rows of a table; none when the project has no such table.</summary>
    public IReadOnlyList<TextRow> Rows(string table) =>
        tables.TryGetValue(table, out var rows) ? rows : [];

    /// <summary>Appends a row; cells with empty text are kept as columns without value.</summary>
    public TextRow Add(string table, params ReadOnlySpan<(string Column, string Value)> cells)
    {
        var row = new TextRow();
        foreach (var (column, value) in cells)
        {
            row[column] = value;
        }

        if (!tables.TryGetValue(table, out var rows))
        {
            rows = [];
            tables.Add(table, rows);
        }

        rows.Add(row);
        return row;
    }

    /// <summary>The value of a key of the table <c>project</c>; empty when it is not there.</summary>
    public string Setting(string key)
    {
        foreach (var row in Rows("project"))
        {
            if (row["key"] == key)
            {
                return row["value"];
            }
        }

        return "";
    }

    /// <summary>
    /// Puts the rows of a table into another order: <paramref name="order"/> holds each row number (from 0) once.
    /// </summary>
    public void Reorder(string table, IReadOnlyList<int> order)
    {
        var rows = tables[table];
        if (!order.Order().SequenceEqual(Enumerable.Range(0, rows.Count)))
        {
            throw new ArgumentException("Each row number once.", nameof(order));
        }

        tables[table] = [.. order.Select(number => rows[number])];
    }
}
