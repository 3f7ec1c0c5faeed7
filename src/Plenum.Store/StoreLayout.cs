using Plenum.Core;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Store;

/// <summary>One column of a table of the file.</summary>
/// <param name="Name">Its name, not yet quoted.</param>
/// <param name="Type">Its type in a STRICT table.</param>
/// <param name="References">The table whose <c>id</c> it holds, if it is a reference.</param>
internal sealed record SqlColumn(string Name, string Type, string? References = null);

/// <summary>A column of the project's layout with the columns of the file that hold it.</summary>
internal sealed record StoredColumn(ColumnDefinition Definition, IReadOnlyList<SqlColumn> Parts);

/// <summary>
/// How the project's tables stand in the file. Names say the unit: <c>_minor</c> minor units of the currency,
/// <c>_hundredths</c> of an hour, <c>_basis_points</c> of a whole, <c>_id</c> the row of another table. A reference
/// that may point into several tables has one column for each, at most one of them filled; its reserved words stand
/// in a column ending with <c>_fund</c>. What can be taken back has type ANY and then holds a hyphen. The columns of
/// the user's own stand together in <c>own_fields</c>, a JSON object of texts, NULL where there are none.
/// </summary>
internal static class StoreLayout
{
    public const string OwnFields = "own_fields";

    private static readonly StoredTable[] All =
    [
        .. ProjectLayout.Tables.Select(definition => new StoredTable(
            definition,
            [.. definition.Columns.Select(column => new StoredColumn(column, PartsOf(column)))]
        )),
    ];

    public static IReadOnlyList<StoredTable> Tables => All;

    public static StoredTable Of(TableDefinition definition) =>
        All[ProjectLayout.IndexOf(definition)];

    private static SqlColumn[] PartsOf(ColumnDefinition column)
    {
        var name = column.Name;
        return column.Kind switch
        {
            CellKind.Whole or CellKind.Flag => [new(name, TypeOf(column, "INTEGER"))],
            CellKind.Money => [new(name + "_minor", TypeOf(column, "INTEGER"))],
            CellKind.Hours => [new(name + "_hundredths", TypeOf(column, "INTEGER"))],
            CellKind.Percent => [new(name + "_basis_points", TypeOf(column, "INTEGER"))],
            CellKind.Reference => [.. ReferenceParts(column)],
            _ => [new(name, TypeOf(column, "TEXT"))],
        };
    }

    private static string TypeOf(ColumnDefinition column, string type) =>
        column.IsWithdrawable ? "ANY" : type;

    private static IEnumerable<SqlColumn> ReferenceParts(ColumnDefinition column)
    {
        var several = column.Targets.Count > 1 || column.Codec is not null;
        foreach (var target in column.Targets)
        {
            yield return new(
                several ? $"{column.Name}_{Singular(target)}_id" : column.Name + "_id",
                "INTEGER",
                target
            );
        }

        if (column.Codec is not null)
        {
            yield return new(column.Name + "_fund", "TEXT");
        }
    }

    private static string Singular(string table) =>
        table.EndsWith("ies", StringComparison.Ordinal) ? table[..^3] + "y" : table.TrimEnd('s');
}

/// <summary>A table of the project's layout as it stands in the file, with the statements that read and write it.</summary>
internal sealed class StoredTable
{
    public StoredTable(TableDefinition definition, IReadOnlyList<StoredColumn> columns)
    {
        Definition = definition;
        Columns = columns;
        Names =
        [
            "id",
            .. columns.SelectMany(column => column.Parts).Select(part => part.Name),
            StoreLayout.OwnFields,
        ];
        var quoted = Names.Select(name => $"\"{name}\"").ToArray();
        var list = string.Join(", ", quoted);
        var places = string.Join(", ", Enumerable.Range(1, quoted.Length).Select(i => $"?{i}"));
        var assignments = string.Join(
            ", ",
            quoted.Skip(1).Select((name, i) => $"{name} = ?{i + 2}")
        );
        Select = $"SELECT {list} FROM \"{definition.Name}\" ORDER BY id";
        Insert = $"INSERT INTO \"{definition.Name}\" ({list}) VALUES ({places})";
        Update = $"UPDATE \"{definition.Name}\" SET {assignments} WHERE id = ?1";
        Delete = $"DELETE FROM \"{definition.Name}\" WHERE id = ?1";
    }

    public TableDefinition Definition { get; }

    public IReadOnlyList<StoredColumn> Columns { get; }

    /// <summary>All columns, as they are numbered in the statements: id, the parts of each column, own fields.</summary>
    public IReadOnlyList<string> Names { get; }

    public string Select { get; }

    public string Insert { get; }

    public string Update { get; }

    public string Delete { get; }
}
