namespace Plenum.Core.Foundation.Tables;

/// <summary>
/// The layout of one table: its name in files and in the store, and its columns. Key columns come first.
/// </summary>
public sealed class TableDefinition
{
    public TableDefinition(string name, string meaning, params ColumnDefinition[] columns)
    {
        Name = name;
        Meaning = meaning;
        Columns = columns;
        Keys = [.. columns.Where(column => column.IsKey)];
        for (var index = 0; index < columns.Length; index++)
        {
            columns[index].Join(this, index);
        }
    }

    public string Name { get; }

    /// <summary>What one row says, for the file layouts page.</summary>
    public string Meaning { get; }

    public IReadOnlyList<ColumnDefinition> Columns { get; }

    public IReadOnlyList<ColumnDefinition> Keys { get; }

    /// <summary>The column that names the currency of the row's money, if the table has one.</summary>
    public ColumnDefinition? CurrencyColumn =>
        Columns.FirstOrDefault(column => column.Codec is CurrencyCodec);

    /// <summary>
    /// The column that names the period which the row belongs to; rows of a closed period do not change.
    /// </summary>
    public ColumnDefinition? ClosedWith { get; init; }

    /// <summary>How the row's amount becomes one in the project's currency, where the table has such a column.</summary>
    public Conversion? Conversion { get; init; }

    /// <summary>A row, once taken over, keeps its content: a known key with other content is an error.</summary>
    public bool IsLedger { get; init; }

    public override string ToString() => Name;
}

/// <summary>The columns by which an amount is converted: amount × rate = converted.</summary>
public sealed record Conversion(
    ColumnDefinition Amount,
    ColumnDefinition Currency,
    ColumnDefinition Rate,
    ColumnDefinition Converted
);
