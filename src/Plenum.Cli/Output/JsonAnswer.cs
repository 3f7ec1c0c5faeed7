using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Plenum.Cli.Output;

/// <summary>Writes one JSON document: numbers as numbers, dates as ISO text, undefined ratios as null.</summary>
internal static class JsonAnswer
{
    private const int RatioDigits = 6;

    /// <summary>Writes an object; <paramref name="fill"/> fills it.</summary>
    public static void Write(TextWriter output, Action<Utf8JsonWriter> fill)
    {
        using var stream = new TextWriterStream(output);
        using (
            var json = new Utf8JsonWriter(
                stream,
                new JsonWriterOptions
                {
                    Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
                    Indented = false,
                }
            )
        )
        {
            json.WriteStartObject();
            fill(json);
            json.WriteEndObject();
        }

        stream.Flush();
        output.WriteLine();
    }

    public static void Date(this Utf8JsonWriter json, string name, DateOnly? date) =>
        json.WriteString(name, date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));

    public static void Money(this Utf8JsonWriter json, string name, decimal? amount)
    {
        if (amount is { } given)
        {
            json.WriteNumber(name, given);
        }
        else
        {
            json.WriteNull(name);
        }
    }

    /// <summary>A ratio to six significant digits, or null.</summary>
    public static void Ratio(this Utf8JsonWriter json, string name, decimal? ratio) =>
        json.Money(
            name,
            ratio is { } given ? Core.Foundation.Ratio.Significant(given, RatioDigits) : null
        );

    public static void Number(this Utf8JsonWriter json, string name, int? number)
    {
        if (number is { } given)
        {
            json.WriteNumber(name, given);
        }
        else
        {
            json.WriteNull(name);
        }
    }
}
