using Plenum.Core.Foundation.Tables;
using Plenum.Store.Sqlite;

namespace Plenum.Store.Rows;

/// <summary>Writes what a command changed in one table, inside a transaction that is open.</summary>
internal static class TableWriter
{
    private const int RowsBetweenReports = 8_192;

    /// <summary>So many new rows, and more of them than rows that stay, are faster without indexes that are made after.</summary>
    private const int Bulk = 20_000;

    /// <param name="database">The file.</param>
    /// <param name="before">The table that is stored.</param>
    /// <param name="after">The table that is to be stored.</param>
    /// <param name="change">The rows, by id, in which the two differ.</param>
    /// <param name="reportRows">Told after every few thousand rows how many more were written; may cancel by throwing.</param>
    public static void Write(
        Database database,
        Table before,
        Table after,
        TableChange change,
        Action<int> reportRows
    )
    {
        var stored = StoreLayout.Of(change.Definition);
        var (renamed, updated) = ByKey(before, after, change.Updated);
        Delete(database, stored, change.Removed, reportRows);
        // Keys may have changed places: rows with a new key are taken out before any of them is put back.
        Delete(database, stored, renamed, static _ => { });
        Put(database, stored, stored.Update, after, updated, reportRows);
        Put(database, stored, stored.Insert, after, renamed, reportRows);
        if (change.Added.Count >= Bulk && change.Added.Count * 2L > after.Count)
        {
            var indexes = IndexesOf(database, change.Definition.Name);
            indexes.ForEach(index => database.Execute($"DROP INDEX \"{index.Name}\""));
            Put(database, stored, stored.Insert, after, change.Added, reportRows);
            indexes.ForEach(index => database.Execute(index.Sql));
        }
        else
        {
            Put(database, stored, stored.Insert, after, change.Added, reportRows);
        }
    }

    private static (IReadOnlyList<int> Renamed, IReadOnlyList<int> Others) ByKey(
        Table before,
        Table after,
        IReadOnlyList<int> updated
    )
    {
        List<int> renamed = [];
        List<int> others = [];
        foreach (var id in updated)
        {
            var (old, now) = (before.RowOf(id), after.RowOf(id));
            if (old < 0 || now < 0)
            {
                throw Missing(after.Definition, id);
            }

            var same = after.Definition.Keys.All(key => before[key].SameAt(old, after[key], now));
            (same ? others : renamed).Add(id);
        }

        return (renamed, others);
    }

    private static void Delete(
        Database database,
        StoredTable stored,
        IReadOnlyList<int> ids,
        Action<int> reportRows
    )
    {
        if (ids.Count == 0)
        {
            return;
        }

        using var statement = database.Prepare(stored.Delete);
        ForEach(
            ids,
            reportRows,
            id =>
            {
                statement.Bind(1, (long)id);
                statement.Run();
                if (statement.Changed() != 1)
                {
                    throw Missing(stored.Definition, id);
                }
            }
        );
    }

    private static void Put(
        Database database,
        StoredTable stored,
        string sql,
        Table after,
        IReadOnlyList<int> ids,
        Action<int> reportRows
    )
    {
        if (ids.Count == 0)
        {
            return;
        }

        var binders = BindersOf(stored, after);
        using var statement = database.Prepare(sql);
        ForEach(
            ids,
            reportRows,
            id =>
            {
                var row = after.RowOf(id);
                if (row < 0)
                {
                    throw Missing(stored.Definition, id);
                }

                statement.Bind(1, (long)id);
                foreach (var binder in binders)
                {
                    binder.Bind(statement, row);
                }

                statement.Run();
                if (statement.Changed() != 1)
                {
                    throw Missing(stored.Definition, id);
                }
            }
        );
    }

    private static CellBinder[] BindersOf(StoredTable stored, Table table)
    {
        var binders = new CellBinder[stored.Columns.Count + 1];
        var parameter = 2;
        for (var column = 0; column < stored.Columns.Count; column++)
        {
            binders[column] = CellBinder.Of(
                stored.Columns[column],
                parameter,
                table.ColumnAt(column)
            );
            parameter += stored.Columns[column].Parts.Count;
        }

        binders[^1] = new OwnFieldsBinder(parameter, table.OwnFields);
        return binders;
    }

    private static void ForEach(IReadOnlyList<int> ids, Action<int> reportRows, Action<int> row)
    {
        for (var i = 0; i < ids.Count; i++)
        {
            row(ids[i]);
            if ((i + 1) % RowsBetweenReports == 0)
            {
                reportRows(RowsBetweenReports);
            }
        }

        reportRows(ids.Count % RowsBetweenReports);
    }

    private static List<(string Name, string Sql)> IndexesOf(Database database, string table)
    {
        List<(string, string)> indexes = [];
        using var statement = database.Prepare(
            "SELECT name, sql FROM sqlite_schema WHERE type = 'index' AND sql IS NOT NULL AND tbl_name = ?1"
        );
        statement.Bind(1, table);
        while (statement.Step())
        {
            indexes.Add((statement.String(0)!, statement.String(1)!));
        }

        return indexes;
    }

    private static ArgumentException Missing(TableDefinition table, int id) =>
        new($"The change names row {id} of {table.Name}, which is not there.", nameof(id));
}
