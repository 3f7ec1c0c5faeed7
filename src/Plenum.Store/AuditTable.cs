using System.Buffers;
using System.Globalization;
using System.Text.Json;
using Plenum.Core.Foundation.Tables;
using Plenum.Store.Sqlite;

namespace Plenum.Store;

/// <summary>Reads and writes the audit record.</summary>
internal static class AuditTable
{
    private const string TimeFormat = "yyyy-MM-dd'T'HH:mm:ss.fff'Z'";

    public static void Add(
        Database database,
        AuditEntry entry,
        DateTimeOffset at,
        long revision,
        IReadOnlyList<TableChange> changes
    )
    {
        using var statement = database.Prepare(
            "INSERT INTO audit (at, person, command, reason, change, revision, counts) "
                + "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)"
        );
        statement.Bind(1, at.UtcDateTime.ToString(TimeFormat, CultureInfo.InvariantCulture));
        statement.Bind(2, entry.Person);
        statement.Bind(3, entry.Command);
        statement.Bind(4, entry.Reason);
        statement.Bind(5, entry.Change);
        statement.Bind(6, revision);
        statement.Bind(7, CountsOf(changes));
        statement.Run();
    }

    /// <summary>The last records, newest first.</summary>
    public static List<AuditRecord> Last(Database database, int count)
    {
        List<AuditRecord> records = [];
        using var statement = database.Prepare(
            "SELECT id, at, person, command, reason, change, revision, counts FROM audit ORDER BY id DESC LIMIT ?1"
        );
        statement.Bind(1, (long)count);
        while (statement.Step())
        {
            if (
                !DateTimeOffset.TryParseExact(
                    statement.String(1),
                    TimeFormat,
                    CultureInfo.InvariantCulture,
                    DateTimeStyles.AssumeUniversal,
                    out var at
                ) || ReadCounts(statement.Utf8(7)) is not { } counts
            )
            {
                throw new StoreException(
                    StoreProblem.Damaged,
                    $"Table audit, row with id {statement.Long(0)}: its time or its counts cannot be understood. "
                        + "Correct it with SQL, or go back to a copy of the file."
                );
            }

            records.Add(
                new AuditRecord(
                    statement.Long(0),
                    at,
                    new AuditEntry(
                        statement.String(2)!,
                        statement.String(3)!,
                        statement.String(4),
                        statement.String(5)
                    ),
                    statement.Long(6),
                    counts
                )
            );
        }

        return records;
    }

    private static byte[] CountsOf(IReadOnlyList<TableChange> changes)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using var json = new Utf8JsonWriter(buffer);
        json.WriteStartObject();
        foreach (var change in changes.Where(change => change.Count > 0))
        {
            json.WriteStartObject(change.Definition.Name);
            json.WriteNumber("added", change.Added.Count);
            json.WriteNumber("updated", change.Updated.Count);
            json.WriteNumber("removed", change.Removed.Count);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        json.Flush();
        return buffer.WrittenSpan.ToArray();
    }

    private static Dictionary<string, RowCounts>? ReadCounts(ReadOnlySpan<byte> utf8)
    {
        try
        {
            var reader = new Utf8JsonReader(utf8);
            using var json = JsonDocument.ParseValue(ref reader);
            return json
                .RootElement.EnumerateObject()
                .ToDictionary(
                    table => table.Name,
                    table => new RowCounts(
                        table.Value.GetProperty("added").GetInt32(),
                        table.Value.GetProperty("updated").GetInt32(),
                        table.Value.GetProperty("removed").GetInt32()
                    ),
                    StringComparer.Ordinal
                );
        }
        catch (Exception error)
            when (error
                    is JsonException
                        or InvalidOperationException
                        or KeyNotFoundException
                        or FormatException
            )
        {
            return null;
        }
    }
}
