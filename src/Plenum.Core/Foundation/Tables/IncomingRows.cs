namespace Plenum.Core.Foundation.Tables;

/// <summary>Rows that are to be added to a table or to update it, with the place from which each came.</summary>
public sealed class IncomingRows
{
    private readonly Dictionary<string, TextColumnBuilder> ownFields = new(StringComparer.Ordinal);
    private readonly List<int> sources = [];
    private readonly List<int> rows = [];

    public IncomingRows(TableDefinition definition)
    {
        Definition = definition;
        Builders = [.. definition.Columns.Select(column => column.NewBuilder())];
    }

    public TableDefinition Definition { get; }

    public ColumnBuilder[] Builders { get; }

    public int Count => rows.Count;

    /// <summary>Notes where the row just filled in came from: the number of its file and the row in it.</summary>
    public void AddSource(int source, int row)
    {
        sources.Add(source);
        rows.Add(row);
        foreach (var field in ownFields.Values)
        {
            while (field.Count < rows.Count)
            {
                field.AddMissing();
            }
        }
    }

    public (int Source, int Row) SourceOf(int incomingRow) =>
        (sources[incomingRow], rows[incomingRow]);

    /// <summary>The user's own column of a heading, filled up to the row that is being read.</summary>
    public TextColumnBuilder OwnField(string heading)
    {
        if (!ownFields.TryGetValue(heading, out var field))
        {
            field = new TextColumnBuilder();
            ownFields.Add(heading, field);
            for (var row = 0; row < rows.Count; row++)
            {
                field.AddMissing();
            }
        }

        return field;
    }

    public IReadOnlyDictionary<string, TextColumn> BuildOwnFields() =>
        ownFields.ToDictionary(
            field => field.Key,
            field => (TextColumn)field.Value.Build(),
            StringComparer.Ordinal
        );
}
