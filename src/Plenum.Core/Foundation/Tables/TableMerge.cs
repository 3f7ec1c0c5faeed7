namespace Plenum.Core.Foundation.Tables;

/// <summary>Which rows of a table a command added, changed and removed, by id.</summary>
public sealed record TableChange(
    TableDefinition Definition,
    IReadOnlyList<int> Added,
    IReadOnlyList<int> Updated,
    IReadOnlyList<int> Removed
)
{
    public int Count => Added.Count + Updated.Count + Removed.Count;
}

/// <summary>What became of a table when rows were merged into it.</summary>
/// <param name="Table">The table afterwards; the same object if nothing changed.</param>
/// <param name="Change">Which rows changed.</param>
/// <param name="Repeated">Incoming rows whose key an earlier incoming row had, with that earlier row.</param>
/// <param name="Altered">Incoming rows that would alter a row of a ledger.</param>
public sealed record MergeResult(
    Table Table,
    TableChange Change,
    IReadOnlyList<(int Row, int Earlier)> Repeated,
    IReadOnlyList<int> Altered,
    MergeSources Sources
);

/// <summary>Tells from which incoming row a row of the merged table came.</summary>
public sealed class MergeSources
{
    private readonly int firstAddedId;
    private readonly IReadOnlyList<int> addedRows;
    private readonly IReadOnlyDictionary<int, int> updatedRows;

    internal MergeSources(
        int firstAddedId,
        IReadOnlyList<int> addedRows,
        IReadOnlyDictionary<int, int> updatedRows
    )
    {
        this.firstAddedId = firstAddedId;
        this.addedRows = addedRows;
        this.updatedRows = updatedRows;
    }

    /// <summary>The incoming row that added or updated a row of this id; −1 if none did.</summary>
    public int Of(int id) =>
        id >= firstAddedId && id - firstAddedId < addedRows.Count
            ? addedRows[id - firstAddedId]
            : updatedRows.GetValueOrDefault(id, -1);
}

/// <summary>
/// Adds or updates rows by their key. A cell that is not given leaves what is there, except under replacement, where
/// the table becomes equal to the incoming rows. Currency and rate go with the amount: a row that gives an amount
/// gives them too, even as empty cells. Time: in the number of rows of table and input.
/// </summary>
public static class TableMerge
{
    public static MergeResult Into(
        Table current,
        IncomingRows incoming,
        bool replace,
        IReadOnlySet<int> broken
    )
    {
        var definition = current.Definition;
        Column[] given = [.. incoming.Builders.Select(builder => builder.Build())];
        Column[] keys = [.. definition.Keys.Select(key => given[key.Index])];
        var work = new Work(current, given, incoming.BuildOwnFields(), replace);
        var seen = KeyIndex.Empty(keys);
        var known = current.KeyIndex;
        List<(int, int)> repeated = [];
        List<int> altered = [];
        for (var row = 0; row < incoming.Count; row++)
        {
            if (broken.Contains(row))
            {
                continue;
            }

            var earlier = seen.AddOrFind(row);
            if (earlier != row)
            {
                repeated.Add((row, earlier));
                continue;
            }

            var existing = known.Find(keys, row);
            if (existing < 0)
            {
                work.Add(row);
            }
            else if (work.Update(existing, row) && definition.IsLedger)
            {
                altered.Add(row);
            }
        }

        return work.Finish(repeated, altered);
    }

    /// <summary>
    /// For a table whose key is one code: the ids that codes will have once the incoming rows are merged; 0 for a code
    /// that neither the table nor the rows know.
    /// </summary>
    public static Func<string, int> IdsByCode(
        Table current,
        IncomingRows incoming,
        IReadOnlySet<int> broken
    )
    {
        var codes = (TextColumnBuilder)incoming.Builders[current.Definition.Keys[0].Index];
        Dictionary<string, int> added = new(StringComparer.Ordinal);
        var nextId = FirstNewId(current);
        for (var row = 0; row < incoming.Count; row++)
        {
            if (
                !broken.Contains(row)
                && codes[row] is { } code
                && current.RowOfCode(code) < 0
                && added.TryAdd(code, nextId)
            )
            {
                nextId++;
            }
        }

        return code =>
            current.RowOfCode(code) is var row and >= 0
                ? current.Ids[row]
                : added.GetValueOrDefault(code);
    }

    private static int FirstNewId(Table current) =>
        current.Ids.Length == 0 ? 1 : current.Ids.Max() + 1;

    private sealed class Work
    {
        private readonly Table current;
        private readonly Column[] given;
        private readonly IReadOnlyDictionary<string, TextColumn> givenFields;
        private readonly bool replace;
        private readonly ColumnBuilder?[] changed;
        private readonly Dictionary<string, TextColumnBuilder> changedFields = new(
            StringComparer.Ordinal
        );
        private readonly List<int> addedRows = [];
        private readonly List<int> addedIds = [];
        private readonly List<int> updated = [];
        private readonly Dictionary<int, int> updatedRows = [];
        private readonly bool[] hit;
        private readonly int firstAddedId;
        private int nextId;

        public Work(
            Table current,
            Column[] given,
            IReadOnlyDictionary<string, TextColumn> givenFields,
            bool replace
        )
        {
            this.current = current;
            this.given = given;
            this.givenFields = givenFields;
            this.replace = replace;
            changed = new ColumnBuilder?[given.Length];
            hit = new bool[current.Count];
            firstAddedId = FirstNewId(current);
            nextId = firstAddedId;
        }

        public void Add(int row)
        {
            addedRows.Add(row);
            addedIds.Add(nextId++);
        }

        public bool Update(int existing, int row)
        {
            hit[existing] = true;
            var differs = false;
            var withMoney = GivesMoney(row);
            foreach (var column in current.Definition.Columns)
            {
                if (column.IsKey || column.IsComputed)
                {
                    continue;
                }

                var incoming = given[column.Index];
                if (incoming.IsMissing(row) && !replace && !(withMoney && GoesWithMoney(column)))
                {
                    continue;
                }

                if (!current[column].SameAt(existing, incoming, row))
                {
                    differs = true;
                    Changed(column.Index).Overwrite(existing, incoming, row);
                }
            }

            differs |= UpdateOwnFields(existing, row);
            if (differs)
            {
                var id = current.Ids[existing];
                updated.Add(id);
                updatedRows[id] = row;
            }

            return differs;
        }

        public MergeResult Finish(IReadOnlyList<(int, int)> repeated, IReadOnlyList<int> altered)
        {
            List<int> removed = [];
            List<int>? kept = null;
            if (replace && hit.AsSpan().Contains(false))
            {
                kept = [];
                for (var row = 0; row < hit.Length; row++)
                {
                    if (hit[row])
                    {
                        kept.Add(row);
                    }
                    else
                    {
                        removed.Add(current.Ids[row]);
                    }
                }
            }

            var change = new TableChange(current.Definition, addedIds, updated, removed);
            var table = change.Count == 0 ? current : Build(kept);
            return new MergeResult(
                table,
                change,
                repeated,
                altered,
                new MergeSources(firstAddedId, addedRows, updatedRows)
            );
        }

        private Table Build(List<int>? kept)
        {
            int[] rows = kept is null ? [.. Enumerable.Range(0, current.Count)] : [.. kept];
            int[] ids = [.. rows.Select(row => current.Ids[row]), .. addedIds];
            var columns = new Column[given.Length];
            for (var index = 0; index < columns.Length; index++)
            {
                columns[index] = Extended(
                    changed[index]?.Build() ?? current.ColumnAt(index),
                    kept is null ? null : rows,
                    given[index],
                    current.Definition.Columns[index].IsComputed
                );
            }

            var fields = new Dictionary<string, TextColumn>(StringComparer.Ordinal);
            foreach (
                var name in current.OwnFields.Keys.Union(givenFields.Keys, StringComparer.Ordinal)
            )
            {
                fields[name] = (TextColumn)Extended(
                    changedFields.TryGetValue(name, out var builder)
                        ? builder.Build()
                        : ExistingField(name),
                    kept is null ? null : rows,
                    givenFields.GetValueOrDefault(name),
                    false
                );
            }

            var empty = fields
                .Where(field => !field.Value.Values.ContainsAnyExcept((string?)null))
                .ToList();
            empty.ForEach(field => fields.Remove(field.Key));
            return new Table(current.Definition, ids, columns, fields);
        }

        private Column Extended(Column existing, int[]? kept, Column? incoming, bool computed)
        {
            var column = kept is null ? existing : existing.Pick(kept);
            if (addedRows.Count == 0)
            {
                return column;
            }

            if (column.Count == 0 && !computed && incoming?.Count == addedRows.Count)
            {
                return incoming; // every row is new
            }

            var builder = column.ToBuilder(addedRows.Count);
            foreach (var row in addedRows)
            {
                if (incoming is null || computed)
                {
                    builder.AddMissing();
                }
                else
                {
                    builder.AddFrom(incoming, row);
                }
            }

            return builder.Build();
        }

        private bool UpdateOwnFields(int existing, int row)
        {
            var differs = false;
            var names = replace
                ? current.OwnFields.Keys.Union(givenFields.Keys, StringComparer.Ordinal)
                : givenFields.Keys;
            foreach (var name in names)
            {
                var before = current.OwnFields.TryGetValue(name, out var field)
                    ? field.Values[existing]
                    : null;
                var after = givenFields.TryGetValue(name, out var incoming)
                    ? incoming.Values[row]
                    : null;
                if ((after is null && !replace) || before == after)
                {
                    continue;
                }

                if (!changedFields.TryGetValue(name, out var builder))
                {
                    builder = (TextColumnBuilder)ExistingField(name).ToBuilder(0);
                    changedFields.Add(name, builder);
                }

                builder[existing] = after;
                differs = true;
            }

            return differs;
        }

        private TextColumn ExistingField(string name) =>
            current.OwnFields.GetValueOrDefault(name) ?? new TextColumn(new string?[current.Count]);

        private ColumnBuilder Changed(int index) =>
            changed[index] ??= current.ColumnAt(index).ToBuilder(addedRows.Count);

        private bool GivesMoney(int row)
        {
            foreach (var column in current.Definition.Columns)
            {
                if (
                    column is { Kind: CellKind.Money, IsComputed: false }
                    && !given[column.Index].IsMissing(row)
                )
                {
                    return true;
                }
            }

            return false;
        }

        private bool GoesWithMoney(ColumnDefinition column) =>
            column == current.Definition.CurrencyColumn
            || column == current.Definition.Conversion?.Rate;
    }
}
