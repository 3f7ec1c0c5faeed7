using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Store.Sqlite;

namespace Plenum.Store.Rows;

/// <summary>Reads the project value from the tables.</summary>
internal static class ProjectReader
{
    /// <summary>Reads all tables, inside a transaction, in the order of the layout.</summary>
    /// <param name="database">The file.</param>
    /// <param name="length">Length of the database in bytes.</param>
    /// <param name="progress">Told the share that is done, 0 to 1.</param>
    public static Table[] Read(
        Database database,
        long length,
        IProgress<double>? progress,
        CancellationToken cancellationToken
    )
    {
        var expected = Array.ConvertAll(
            [.. StoreLayout.Tables],
            stored => ExpectedRows(database, stored, length)
        );
        var total = Math.Max(1, expected.Sum(rows => (long)rows));
        var done = 0L;
        var tables = new Table[expected.Length];
        for (var index = 0; index < tables.Length; index++)
        {
            tables[index] = TableReader.Read(
                database,
                StoreLayout.Tables[index],
                expected[index],
                rows =>
                {
                    cancellationToken.ThrowIfCancellationRequested();
                    done += rows;
                    progress?.Report(Math.Min(1, done / (double)total));
                }
            );
        }

        return tables;
    }

    /// <summary>Puts the elements into depth-first order and makes the value; an error if a reference leads nowhere.</summary>
    public static Project Finish(Table[] tables, long revision, string path)
    {
        var place = ProjectLayout.IndexOf(ElementTable.Definition);
        if (ReferenceCheck.All(new Project(tables, revision)) is { } broken)
        {
            throw new StoreException(
                StoreProblem.Damaged,
                $"{path}: {broken}. Correct it with SQL, or go back to a copy of the file."
            );
        }

        tables[place] = InTreeOrder(tables[place], path);
        return new Project(tables, revision);
    }

    private static Table InTreeOrder(Table elements, string path)
    {
        var parents = elements.Ints(ElementTable.Parent);
        var parentRow = new int[elements.Count];
        for (var row = 0; row < parentRow.Length; row++)
        {
            parentRow[row] = parents[row] == Cell.NoInt ? -1 : elements.RowOf(parents[row]);
        }

        var order = DepthFirstOrder.Of(
            parentRow,
            elements.Ints(ElementTable.Order),
            elements.Codes
        );
        if (order.Length < elements.Count)
        {
            var ring = DepthFirstOrder.Rings(parentRow).First();
            var codes = ring.Select(row => elements.Codes[row]);
            throw new StoreException(
                StoreProblem.Damaged,
                $"{path}: elements are parts of one another in a ring: {string.Join(", ", codes)}. "
                    + "Correct parent_id with SQL, or go back to a copy of the file."
            );
        }

        return elements.InOrder(order);
    }

    /// <summary>
    /// The greatest id, which is how many rows there are as long as none was removed; bounded by what can lie in the
    /// file, in case someone has given out a great number by hand.
    /// </summary>
    private static int ExpectedRows(Database database, StoredTable stored, long length)
    {
        const int LeastBytesOfARow = 4;
        var greatest = database.Number($"SELECT max(id) FROM \"{stored.Definition.Name}\"");
        return (int)Math.Clamp(greatest, 0, length / LeastBytesOfARow);
    }
}
