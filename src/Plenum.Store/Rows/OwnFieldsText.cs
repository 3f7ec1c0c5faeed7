using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Plenum.Core.Foundation.Tables;
using Plenum.Store.Sqlite;

namespace Plenum.Store.Rows;

/// <summary>Binds the columns of the user's own as one JSON object of texts; NULL where a row has none.</summary>
internal sealed class OwnFieldsBinder(int parameter, IReadOnlyDictionary<string, TextColumn> fields)
    : CellBinder
{
    private static readonly JsonWriterOptions Plain = new()
    {
        // Letters of every language stay readable; the text is never put into a page as it is.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private readonly (JsonEncodedText Heading, TextColumn Column)[] columns =
    [
        .. fields
            .OrderBy(field => field.Key, StringComparer.Ordinal)
            .Select(field => (JsonEncodedText.Encode(field.Key, Plain.Encoder), field.Value)),
    ];

    private readonly ArrayBufferWriter<byte> buffer = new(256);

    public override void Bind(Statement statement, int row)
    {
        if (columns.Length == 0 || Array.TrueForAll(columns, field => field.Column.IsMissing(row)))
        {
            statement.BindNull(parameter);
            return;
        }

        buffer.ResetWrittenCount();
        using var json = new Utf8JsonWriter(buffer, Plain);
        json.WriteStartObject();
        foreach (var (heading, column) in columns)
        {
            if (column.Values[row] is { } text)
            {
                json.WriteString(heading, text);
            }
        }

        json.WriteEndObject();
        json.Flush();
        statement.Bind(parameter, buffer.WrittenSpan);
    }
}

/// <summary>Takes the JSON objects of a table apart into one column for each heading.</summary>
internal sealed class OwnFieldsReader(TextPool texts)
{
    private readonly Dictionary<string, List<string?>> fields = new(StringComparer.Ordinal);

    /// <summary>Reads the object of a row; false if it is no JSON object of texts and numbers.</summary>
    public bool Read(ReadOnlySpan<byte> json, int row)
    {
        var reader = new Utf8JsonReader(json);
        try
        {
            if (!reader.Read() || reader.TokenType != JsonTokenType.StartObject)
            {
                return false;
            }

            while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
            {
                var heading = reader.GetString()!;
                reader.Read();
                string? value;
                switch (reader.TokenType)
                {
                    case JsonTokenType.String:
                        value = texts.Of(reader.GetString()!);
                        break;
                    case JsonTokenType.Number:
                        value = Encoding.UTF8.GetString(reader.ValueSpan);
                        break;
                    case JsonTokenType.Null:
                        continue;
                    default:
                        return false;
                }

                if (!fields.TryGetValue(heading, out var column))
                {
                    column = [];
                    fields.Add(heading, column);
                }

                while (column.Count < row)
                {
                    column.Add(null);
                }

                if (column.Count > row)
                {
                    return false; // a heading twice in one row
                }

                column.Add(value);
            }

            return reader.TokenType == JsonTokenType.EndObject && !reader.Read();
        }
        catch (JsonException)
        {
            return false;
        }
    }

    public Dictionary<string, TextColumn> Build(int rows)
    {
        var built = new Dictionary<string, TextColumn>(StringComparer.Ordinal);
        foreach (var (heading, column) in fields)
        {
            while (column.Count < rows)
            {
                column.Add(null);
            }

            built.Add(heading, new TextColumn([.. column]));
        }

        return built;
    }
}
