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

    /// <summary>The same value with its rows in the order in which reading gives them.</summary>
    public static Project InFileOrder(Project project, string path) =>
        new(
            project.Tables.Select(table =>
                table.Definition == ElementTable.Definition
                    ? InTreeOrder(table, path)
                    : InOrder(table, RowsById(table))
            ),
            project.Revision
        );

    private static Table InTreeOrder(Table elements, string path)
    {
        // Codes that are equal in natural order keep the order of their ids, wherever the rows stand now.
        var byId = RowsById(elements);
        var place = new int[byId.Length];
        for (var at = 0; at < byId.Length; at++)
        {
            place[byId[at]] = at;
        }

        var parents = elements.Ints(ElementTable.Parent);
        var parentPlace = new int[byId.Length];
        for (var at = 0; at < byId.Length; at++)
        {
            var parent = parents[byId[at]];
            parentPlace[at] = parent == Cell.NoInt ? -1 : place[elements.RowOf(parent)];
        }

        var order = DepthFirstOrder.Of(
            parentPlace,
            ((NumberColumn<int>)elements[ElementTable.Order].Pick(byId)).Values,
            ((TextColumn)elements[ElementTable.Code].Pick(byId)).Values
        );
        if (order.Length < elements.Count)
        {
            var ring = DepthFirstOrder.Rings(parentPlace).First();
            var codes = ring.Select(at => elements.Codes[byId[at]]);
            throw new StoreException(
                StoreProblem.Damaged,
                $"{path}: elements are parts of one another in a ring: {string.Join(", ", codes)}. "
                    + "Correct parent_id with SQL, or go back to a copy of the file."
            );
        }

        return InOrder(elements, Array.ConvertAll(order, at => byId[at]));
    }

    private static int[] RowsById(Table table)
    {
        var rows = Enumerable.Range(0, table.Count).ToArray();
        for (var row = 1; row < rows.Length; row++)
        {
            if (table.Ids[row] < table.Ids[row - 1])
            {
                Array.Sort([.. table.Ids], rows);
                break;
            }
        }

        return rows;
    }

    private static Table InOrder(Table table, int[] rows)
    {
        for (var row = 0; row < rows.Length; row++)
        {
            if (rows[row] != row)
            {
                return table.InOrder(rows);
            }
        }

        return table;
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
