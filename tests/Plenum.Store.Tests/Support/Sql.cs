using Microsoft.Data.Sqlite;

namespace Plenum.Store.Tests.Support;

/// <summary>Another program that works on the file with SQL.</summary>
internal static class Sql
{
    public static SqliteConnection Open(string path)
    {
        var connection = new SqliteConnection(
            new SqliteConnectionStringBuilder
            {
                DataSource = path,
                Pooling = false,
                Mode = SqliteOpenMode.ReadWrite,
            }.ToString()
        );
        connection.Open();
        return connection;
    }

    public static int Run(string path, string sql)
    {
        using var connection = Open(path);
        return Run(connection, sql);
    }

    public static int Run(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteNonQuery();
    }

    /// <summary>The rows of a query, the cells of a row joined by bars.</summary>
    public static List<string> Texts(string path, string sql)
    {
        using var connection = Open(path);
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        using var reader = command.ExecuteReader();
        List<string> rows = [];
        while (reader.Read())
        {
            rows.Add(
                string.Join(
                    '|',
                    Enumerable
                        .Range(0, reader.FieldCount)
                        .Select(column => reader.IsDBNull(column) ? "" : reader.GetString(column))
                )
            );
        }

        return rows;
    }
}
