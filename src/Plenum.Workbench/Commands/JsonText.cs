using System.Globalization;
using System.Text;
using System.Text.Json;
using Plenum.Core.Foundation;

namespace Plenum.Workbench.Commands;

/// <summary>Reads text as JSON (RFC 8259), and says in words where it is none.</summary>
internal static class JsonText
{
    private const string OneObject =
        "one JSON object a line, such as {\"command\": \"renumber\", \"id\": \"03\"}; or undo, or redo";

    /// <exception cref="EditException">
    /// It is no JSON, an object has a field twice, or a text has half of a character.
    /// </exception>
    public static JsonDocument Parse(string text)
    {
        try
        {
            var document = JsonDocument.Parse(text);
            CheckTexts(document.RootElement);
            return document;
        }
        catch (JsonException wrong)
        {
            throw new EditException(
                $"This is no JSON: {Where(text, (int)(wrong.BytePositionInLine ?? 0))}.",
                OneObject
            );
        }
    }

    private static string Where(string text, int bytes)
    {
        var utf8 = Encoding.UTF8.GetBytes(text);
        var place = Encoding.UTF8.GetCharCount(utf8, 0, Math.Min(bytes, utf8.Length));
        while (place > 0 && place < text.Length && char.IsLetter(text[place - 1]))
        {
            // a word is named whole
            place--;
        }

        return place >= text.Length
            ? $"\"{InputErrors.Shorten(text)}\" ends too early"
            : string.Create(
                CultureInfo.InvariantCulture,
                $"\"{InputErrors.Shorten(text.AsSpan(place))}\" from character {place + 1} on is not understood"
            );
    }

    private static void CheckTexts(JsonElement json)
    {
        if (json.ValueKind == JsonValueKind.Array)
        {
            foreach (var item in json.EnumerateArray())
            {
                CheckTexts(item);
            }
        }
        else if (json.ValueKind == JsonValueKind.Object)
        {
            HashSet<string> seen = new(StringComparer.Ordinal);
            foreach (var field in json.EnumerateObject())
            {
                var name = Whole(() => field.Name);
                if (!seen.Add(name))
                {
                    throw new EditException(
                        $"The field {InputErrors.Shorten(name)} stands twice.",
                        "each field once"
                    );
                }

                CheckTexts(field.Value);
            }
        }
        else if (json.ValueKind == JsonValueKind.String)
        {
            Whole(() => json.GetString()!);
        }
    }

    /// <summary>An escape such as \ud800 that has no other half makes no character (RFC 8259 section 8.2).</summary>
    private static string Whole(Func<string> read)
    {
        try
        {
            return read();
        }
        catch (InvalidOperationException)
        {
            throw new EditException(
                "A text has half of a character: \\ud800 to \\udfff stand in pairs.",
                "whole characters"
            );
        }
    }
}
