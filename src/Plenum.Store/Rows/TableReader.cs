using Plenum.Core.Foundation.Tables;
using Plenum.Store.Sqlite;

namespace Plenum.Store.Rows;

/// <summary>Reads all rows of one table, in the order of their ids.</summary>
internal static class TableReader
{
    private const int RowsBetweenReports = 16_384;

    /// <param name="database">The file, inside a transaction.</param>
    /// <param name="stored">The table.</param>
    /// <param name="expectedRows">How many rows there may be; more and fewer are read too.</param>
    /// <param name="reportRows">Told after every few thousand rows how many more were read; may cancel by throwing.</param>
    public static Table Read(
        Database database,
        StoredTable stored,
        int expectedRows,
        Action<int> reportRows
    )
    {
        var readers = new CellReader[stored.Columns.Count];
        var index = 1;
        for (var column = 0; column < readers.Length; column++)
        {
            readers[column] = CellReader.Of(stored.Columns[column], index);
            index += stored.Columns[column].Parts.Count;
        }

        var ownFields = new OwnFieldsReader(new TextPool());
        var ids = new int[Math.Max(16, expectedRows)];
        GrowAll(readers, ids.Length);
        using var statement = database.Prepare(stored.Select);
        var row = 0;
        while (statement.Step())
        {
            if (row == ids.Length)
            {
                Array.Resize(ref ids, ids.Length * 2);
                GrowAll(readers, ids.Length);
            }

            var id = statement.Long(0);
            ids[row] = id is > 0 and < int.MaxValue
                ? (int)id
                : throw Damaged(statement, stored.Definition, "id", 0);
            foreach (var reader in readers)
            {
                reader.Read(statement, row);
            }

            if (!statement.IsNull(index) && !ownFields.Read(statement.Utf8(index), row))
            {
                throw Damaged(statement, stored.Definition, StoreLayout.OwnFields, index);
            }

            row++;
            if (row % RowsBetweenReports == 0)
            {
                reportRows(RowsBetweenReports);
            }
        }

        reportRows(row % RowsBetweenReports);
        Array.Resize(ref ids, row);
        return new Table(
            stored.Definition,
            ids,
            [.. readers.Select(reader => reader.Build(row))],
            ownFields.Build(row)
        );
    }

    /// <summary>The error for a cell that no version of Plenum can have written.</summary>
    public static StoreException Damaged(
        Statement statement,
        TableDefinition table,
        string column,
        int index
    ) =>
        new(
            StoreProblem.Damaged,
            $"Table {table.Name}, row with id {statement.Long(0)}, column {column}: \"{statement.String(index)}\" "
                + "cannot be understood. Correct it with SQL, or go back to a copy of the file."
        );

    private static void GrowAll(CellReader[] readers, int rows)
    {
        foreach (var reader in readers)
        {
            reader.Grow(rows);
        }
    }
}
