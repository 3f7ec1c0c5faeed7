namespace Plenum.Core.Foundation.Tables;

/// <summary>
/// All rows of one table as columns. Immutable: a change makes a new table that shares every column which it did not
/// touch. A row's id is given once and stays; rows may move, ids do not. Columns that come from a file that is
/// mapped are fetched when they are first asked for.
/// </summary>
public sealed class Table
{
    private readonly Func<int, Column>? fetch;
    private readonly Column?[] columns;
    private int[]? rowOfId;
    private KeyIndex? keyIndex;
    private CodeIndex? codes;

    public Table(
        TableDefinition definition,
        int[] ids,
        Column[] columns,
        IReadOnlyDictionary<string, TextColumn>? ownFields = null
    )
    {
        Definition = definition;
        Ids = ids;
        this.columns = columns;
        OwnFields = ownFields ?? new Dictionary<string, TextColumn>(StringComparer.Ordinal);
    }

    /// <param name="fetch">Gives the column of an index; called once for each, possibly from several threads.</param>
    public Table(
        TableDefinition definition,
        int[] ids,
        Func<int, Column> fetch,
        IReadOnlyDictionary<string, TextColumn> ownFields
    )
        : this(definition, ids, new Column[definition.Columns.Count], ownFields)
    {
        this.fetch = fetch;
    }

    public TableDefinition Definition { get; }

    public int Count => Ids.Length;

    /// <summary>The rows' ids, positive, unique within the table.</summary>
    public int[] Ids { get; }

    /// <summary>Columns of the user's own, by heading; headings begin with <c>x_</c>.</summary>
    public IReadOnlyDictionary<string, TextColumn> OwnFields { get; }

    public static Table Empty(TableDefinition definition) =>
        new(definition, [], [.. definition.Columns.Select(column => column.NewBuilder().Build())]);

    public Column this[ColumnDefinition column] => ColumnAt(column.Index);

    public ReadOnlySpan<int> Ints(ColumnDefinition column) =>
        ((NumberColumn<int>)this[column]).Values;

    public ReadOnlySpan<long> Longs(ColumnDefinition column) =>
        ((NumberColumn<long>)this[column]).Values;

    public ReadOnlySpan<decimal> Decimals(ColumnDefinition column) =>
        ((NumberColumn<decimal>)this[column]).Values;

    public ReadOnlySpan<string?> Texts(ColumnDefinition column) =>
        ((TextColumn)this[column]).Values;

    public Column ColumnAt(int index)
    {
        if (columns[index] is { } known)
        {
            return known;
        }

        var fetched = fetch!(index);
        return Interlocked.CompareExchange(ref columns[index], fetched, null) ?? fetched;
    }

    /// <summary>The row that has an id, or −1.</summary>
    public int RowOf(int id)
    {
        var rows = rowOfId ??= MapIds();
        return (uint)id < (uint)rows.Length ? rows[id] : -1;
    }

    /// <summary>For each id the row that has it, −1 for ids without a row; index 0 is unused.</summary>
    public ReadOnlySpan<int> RowOfId => rowOfId ??= MapIds();

    public KeyIndex KeyIndex =>
        keyIndex ??= KeyIndex.Over([.. Definition.Keys.Select(key => this[key])]);

    /// <summary>For a table whose key is one code: the row of a code, or −1.</summary>
    public int RowOfCode(ReadOnlySpan<char> code) =>
        (codes ??= CodeIndex.Of(Codes, Ids)).Find(code) is var id and > 0 ? RowOf(id) : -1;

    /// <summary>For a table whose key is one code: the codes by row.</summary>
    public ReadOnlySpan<string?> Codes => Texts(Definition.Keys[0]);

    /// <summary>A table with one column changed, sharing all others.</summary>
    public Table With(ColumnDefinition column, Column changed)
    {
        var next = AllColumns();
        next[column.Index] = changed;
        return new Table(Definition, Ids, next, OwnFields) { rowOfId = rowOfId };
    }

    /// <summary>The same rows in another order.</summary>
    public Table InOrder(ReadOnlySpan<int> rows)
    {
        var order = rows.ToArray();
        var ids = Array.ConvertAll(order, row => Ids[row]);
        return new Table(
            Definition,
            ids,
            Array.ConvertAll(AllColumns(), column => column.Pick(order)),
            OwnFields.ToDictionary(
                field => field.Key,
                field => (TextColumn)field.Value.Pick(order),
                StringComparer.Ordinal
            )
        );
    }

    /// <summary>
    /// The table with other rows and columns; what is known of ids and codes is taken over as far as it is the same.
    /// </summary>
    /// <param name="gone">Codes that rows no longer have; null if that is not known.</param>
    /// <param name="come">Codes that rows have got, with their ids.</param>
    internal Table Edited(
        int[] ids,
        Column[] columns,
        IReadOnlyDictionary<string, TextColumn> ownFields,
        IReadOnlyCollection<string>? gone,
        IReadOnlyCollection<KeyValuePair<string, int>> come
    ) =>
        new(Definition, ids, columns, ownFields)
        {
            rowOfId = ReferenceEquals(ids, Ids) ? rowOfId : null,
            codes =
                gone is null ? null
                : gone.Count + come.Count == 0 ? codes
                : codes?.With(gone, come),
            keyIndex =
                ReferenceEquals(ids, Ids)
                && Definition.Keys.All(key =>
                    ReferenceEquals(columns[key.Index], ColumnAt(key.Index))
                )
                    ? keyIndex
                    : null,
        };

    internal Column[] AllColumns()
    {
        var all = new Column[columns.Length];
        for (var index = 0; index < all.Length; index++)
        {
            all[index] = ColumnAt(index);
        }

        return all;
    }

    private int[] MapIds()
    {
        var greatest = 0;
        foreach (var id in Ids)
        {
            greatest = Math.Max(greatest, id);
        }

        var rows = new int[greatest + 1];
        rows.AsSpan().Fill(-1);
        for (var row = 0; row < Ids.Length; row++)
        {
            rows[Ids[row]] = row;
        }

        return rows;
    }
}
