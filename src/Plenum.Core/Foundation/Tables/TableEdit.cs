namespace Plenum.Core.Foundation.Tables;

/// <summary>
/// A table while some of its rows are added, changed and removed. Only columns that are written are copied, unless
/// rows come or go. Rows are named by id; ids that were once given are not given again. Not safe for several threads.
/// </summary>
public sealed class TableEdit
{
    private readonly ColumnBuilder?[] builders;
    private readonly List<int> addedIds = [];
    private readonly Dictionary<int, int> addedRows = [];
    private readonly HashSet<int> touched = [];
    private readonly HashSet<int> removed = [];
    private readonly Dictionary<string, TextColumnBuilder> fields = new(StringComparer.Ordinal);
    private int nextId;

    /// <param name="before">The table as it was.</param>
    /// <param name="firstNewId">The id of the first row that is added; greater than all that were ever given.</param>
    public TableEdit(Table before, int firstNewId)
    {
        Before = before;
        builders = new ColumnBuilder?[before.Definition.Columns.Count];
        nextId = firstNewId;
    }

    public Table Before { get; }

    /// <summary>The id that the next row would get.</summary>
    public int NextId => nextId;

    /// <summary>Rows that were added and not removed again, in the order in which they came.</summary>
    public IEnumerable<int> Added => addedIds.Where(id => !removed.Contains(id));

    /// <summary>Rows that were there before in which a cell was written and that were not removed.</summary>
    public IEnumerable<int> Touched => touched.Where(id => !removed.Contains(id));

    public IReadOnlySet<int> Removed => removed;

    /// <summary>The row is there at this moment.</summary>
    public bool Has(int id) => PlaceOf(id) >= 0;

    /// <summary>Adds an empty row.</summary>
    public int Add() => Add(nextId);

    /// <summary>Adds an empty row with an id that it had before; the id must not be in use.</summary>
    public int Add(int id)
    {
        if (Has(id))
        {
            throw new ArgumentException(
                $"{Before.Definition.Name} has a row {id} already.",
                nameof(id)
            );
        }

        removed.Remove(id);
        addedRows[id] = Before.Count + addedIds.Count;
        addedIds.Add(id);
        nextId = Math.Max(nextId, id + 1);
        return id;
    }

    public void Remove(int id)
    {
        _ = Place(id);
        removed.Add(id);
    }

    /// <summary>Writes one cell from a cell of another column of the same kind.</summary>
    public void Set(ColumnDefinition column, int id, Column source, int sourceRow)
    {
        Written(column, id).Overwrite(Place(id), source, sourceRow);
    }

    /// <summary>Writes one cell from that of another row.</summary>
    public void Copy(ColumnDefinition column, int from, int to)
    {
        switch (column.Storage)
        {
            case ColumnStorage.Text:
                Set(column, to, Text(column, from));
                break;
            case ColumnStorage.Long:
                Set(column, to, Long(column, from));
                break;
            case ColumnStorage.Decimal:
                Set(column, to, Decimal(column, from));
                break;
            default:
                Set(column, to, Int(column, from));
                break;
        }
    }

    /// <summary>Empties one cell.</summary>
    public void Clear(ColumnDefinition column, int id)
    {
        var none = column.NewBuilder();
        none.AddMissing();
        Set(column, id, none.Build(), 0);
    }

    public void Set(ColumnDefinition column, int id, int value) =>
        ((NumberColumnBuilder<int>)Written(column, id))[Place(id)] = value;

    public void Set(ColumnDefinition column, int id, long value) =>
        ((NumberColumnBuilder<long>)Written(column, id))[Place(id)] = value;

    public void Set(ColumnDefinition column, int id, decimal value) =>
        ((NumberColumnBuilder<decimal>)Written(column, id))[Place(id)] = value;

    public void Set(ColumnDefinition column, int id, string? value) =>
        ((TextColumnBuilder)Written(column, id))[Place(id)] = value;

    public int Int(ColumnDefinition column, int id) =>
        builders[column.Index] is NumberColumnBuilder<int> builder && Place(id) is var at
            ? at < builder.Count
                ? builder[at]
                : Cell.NoInt
            : PlaceBefore(id) is var row and >= 0
                ? Before.Ints(column)[row]
                : Cell.NoInt;

    public long Long(ColumnDefinition column, int id) =>
        builders[column.Index] is NumberColumnBuilder<long> builder && Place(id) is var at
            ? at < builder.Count
                ? builder[at]
                : Cell.NoLong
            : PlaceBefore(id) is var row and >= 0
                ? Before.Longs(column)[row]
                : Cell.NoLong;

    public decimal Decimal(ColumnDefinition column, int id) =>
        builders[column.Index] is NumberColumnBuilder<decimal> builder && Place(id) is var at
            ? at < builder.Count
                ? builder[at]
                : Cell.NoDecimal
            : PlaceBefore(id) is var row and >= 0
                ? Before.Decimals(column)[row]
                : Cell.NoDecimal;

    public string? Text(ColumnDefinition column, int id) =>
        builders[column.Index] is TextColumnBuilder builder && Place(id) is var at
            ? at < builder.Count
                ? builder[at]
                : null
            : PlaceBefore(id) is var row and >= 0
                ? Before.Texts(column)[row]
                : null;

    /// <summary>A cell equals one of another column of the same kind.</summary>
    public bool SameAt(ColumnDefinition column, int id, Column other, int otherRow)
    {
        var place = Place(id);
        if (builders[column.Index] is { } builder)
        {
            Fill(builder);
            return builder.SameAt(place, other, otherRow);
        }

        return place < Before.Count
            ? Before[column].SameAt(place, other, otherRow)
            : other.IsMissing(otherRow);
    }

    /// <summary>The user's own cell of a heading.</summary>
    public string? OwnField(string heading, int id) =>
        fields.TryGetValue(heading, out var builder) && Place(id) is var at
            ? at < builder.Count
                ? builder[at]
                : null
            : PlaceBefore(id) is var row and >= 0
            && Before.OwnFields.TryGetValue(heading, out var field)
                ? field.Values[row]
                : null;

    public void SetOwnField(string heading, int id, string? value)
    {
        if (!fields.TryGetValue(heading, out var builder))
        {
            builder = (TextColumnBuilder)
                (
                    Before.OwnFields.GetValueOrDefault(heading)
                    ?? new TextColumn(new string?[Before.Count])
                ).ToBuilder(addedIds.Count);
            fields.Add(heading, builder);
        }

        Touch(id);
        Fill(builder);
        builder[Place(id)] = value;
    }

    /// <summary>The table afterwards, and the rows in which it differs; the same table if there are none.</summary>
    /// <param name="order">
    /// The ids of all rows in the order in which they are to stand; null for that of before, with what was added after it.
    /// </param>
    public (Table Table, TableChange Change) Finish(Func<int[]?>? order = null)
    {
        List<int> added = [.. Added.Where(id => Before.RowOf(id) < 0)];
        // a row that was taken out and put back with its id has been changed, if at all
        HashSet<int> gone = [.. removed.Where(id => Before.RowOf(id) >= 0)];
        List<int> changed =
        [
            .. touched
                .Concat(addedIds)
                .Distinct()
                .Where(id => !removed.Contains(id) && Before.RowOf(id) >= 0 && Differs(id)),
        ];
        var change = new TableChange(Before.Definition, added, changed, [.. gone]);
        return (change.Count == 0 ? Before : Build(gone, change, order?.Invoke()), change);
    }

    private bool Differs(int id)
    {
        var (was, now) = (Before.RowOf(id), Place(id));
        foreach (var column in Before.Definition.Columns)
        {
            if (builders[column.Index] is { } builder)
            {
                Fill(builder);
                if (!builder.SameAt(now, Before[column], was))
                {
                    return true;
                }
            }
            else if (now != was && !Before[column].IsMissing(was))
            {
                return true;
            }
        }

        return Before
            .OwnFields.Keys.Union(fields.Keys, StringComparer.Ordinal)
            .Any(heading =>
                OwnField(heading, id)
                != (Before.OwnFields.TryGetValue(heading, out var field) ? field.Values[was] : null)
            );
    }

    private Table Build(HashSet<int> gone, TableChange change, int[]? wanted)
    {
        var order =
            wanted is not null ? Array.ConvertAll(wanted, Place)
            : addedIds.Count == 0 && removed.Count == 0 ? null
            : Order(gone);
        order =
            order is not null && addedIds.Count == 0 && IsRunning(order, Before.Count)
                ? null
                : order;
        var columns = new Column[builders.Length];
        for (var index = 0; index < columns.Length; index++)
        {
            columns[index] = Built(builders[index], () => Before.ColumnAt(index), order);
        }

        Dictionary<string, TextColumn> own = new(StringComparer.Ordinal);
        foreach (var heading in Before.OwnFields.Keys.Union(fields.Keys, StringComparer.Ordinal))
        {
            var field = (TextColumn)Built(
                fields.GetValueOrDefault(heading),
                () => Before.OwnFields[heading],
                order
            );
            if (field.Values.ContainsAnyExcept((string?)null))
            {
                own[heading] = field;
            }
        }

        var (left, got) = Codes(change);
        return Before.Edited(
            order is null ? Before.Ids : Array.ConvertAll(order, IdAt),
            columns,
            own,
            left,
            got
        );
    }

    /// <summary>Which codes have gone and come, where the key is one code.</summary>
    private (List<string>? Gone, List<KeyValuePair<string, int>> Come) Codes(TableChange change)
    {
        if (Before.Definition.Keys is not [{ Storage: ColumnStorage.Text } key])
        {
            return (null, []);
        }

        List<string> gone = [];
        List<KeyValuePair<string, int>> come = [];
        foreach (var id in change.Removed.Concat(change.Updated))
        {
            if (Before.Texts(key)[Before.RowOf(id)] is { } code)
            {
                gone.Add(code);
            }
        }

        foreach (var id in change.Updated.Concat(change.Added))
        {
            if (Text(key, id) is { } code)
            {
                come.Add(new(code, id));
            }
        }

        return (gone, come);
    }

    private Column Built(ColumnBuilder? builder, Func<Column> before, int[]? order)
    {
        if (builder is null && order is null)
        {
            return before();
        }

        if (builder is null)
        {
            return before().Pick(order);
        }

        Fill(builder);
        var column = builder.Build();
        return order is null || IsRunning(order, column.Count) ? column : column.Pick(order);
    }

    /// <summary>The rows stay where they are, and what is added comes after them.</summary>
    private static bool IsRunning(int[] order, int count)
    {
        for (var at = 0; at < order.Length; at++)
        {
            if (order[at] != at)
            {
                return false;
            }
        }

        return order.Length == count;
    }

    /// <summary>Places of the rows that stay, those of before first, then what was added.</summary>
    private int[] Order(HashSet<int> gone)
    {
        List<int> order = new(Before.Count + addedIds.Count);
        for (var row = 0; row < Before.Count; row++)
        {
            var id = Before.Ids[row];
            if (!gone.Contains(id))
            {
                order.Add(addedRows.GetValueOrDefault(id, row));
            }
        }

        foreach (var id in Added)
        {
            if (Before.RowOf(id) < 0)
            {
                order.Add(addedRows[id]);
            }
        }

        var isPutBack = addedIds.Exists(id => id <= GreatestBefore && !removed.Contains(id));
        if (isPutBack && IsAscending(Before.Ids))
        {
            order.Sort((one, other) => IdAt(one).CompareTo(IdAt(other)));
        }

        return [.. order];
    }

    private int GreatestBefore => Before.Count == 0 ? 0 : Before.RowOfId.Length - 1;

    private static bool IsAscending(int[] ids)
    {
        for (var row = 1; row < ids.Length; row++)
        {
            if (ids[row] <= ids[row - 1])
            {
                return false;
            }
        }

        return true;
    }

    private int IdAt(int place) =>
        place < Before.Count ? Before.Ids[place] : addedIds[place - Before.Count];

    private ColumnBuilder Written(ColumnDefinition column, int id)
    {
        Touch(id);
        var builder = builders[column.Index] ??= Before[column].ToBuilder(addedIds.Count);
        Fill(builder);
        return builder;
    }

    private void Touch(int id)
    {
        if (!addedRows.ContainsKey(id))
        {
            touched.Add(id);
        }
    }

    private void Fill(ColumnBuilder builder)
    {
        while (builder.Count < Before.Count + addedIds.Count)
        {
            builder.AddMissing();
        }
    }

    private int PlaceBefore(int id) => Place(id) is var at && at < Before.Count ? at : -1;

    private int Place(int id) =>
        PlaceOf(id) is var place and >= 0
            ? place
            : throw new ArgumentException($"{Before.Definition.Name} has no row {id}.", nameof(id));

    private int PlaceOf(int id) =>
        removed.Contains(id) ? -1
        : addedRows.TryGetValue(id, out var row) ? row
        : Before.RowOf(id);
}
