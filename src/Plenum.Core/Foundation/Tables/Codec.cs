namespace Plenum.Core.Foundation.Tables;

/// <summary>Turns a word of a closed set into a small number and back.</summary>
public abstract class Codec
{
    /// <summary>What is expected, in words, for a person whose word was not understood.</summary>
    public abstract string Expected { get; }

    public abstract bool TryParse(ReadOnlySpan<char> text, out int value);

    public abstract string Format(int value);
}

/// <summary>A list of words; the number is the place in the list. Case does not matter on the way in.</summary>
public sealed class WordCodec(params string[] words) : Codec
{
    public IReadOnlyList<string> Words => words;

    public override string Expected { get; } = "one of " + string.Join(", ", words);

    public override bool TryParse(ReadOnlySpan<char> text, out int value)
    {
        for (value = 0; value < words.Length; value++)
        {
            if (text.Equals(words[value], StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }

    public override string Format(int value) => words[value];
}

/// <summary>A currency code of ISO 4217.</summary>
public sealed class CurrencyCodec : Codec
{
    public static readonly CurrencyCodec Instance = new();

    public override string Expected => "a currency code of ISO 4217, such as EUR";

    public override bool TryParse(ReadOnlySpan<char> text, out int value)
    {
        var found = Currency.TryParse(text, out var currency);
        value = currency.Number;
        return found;
    }

    public override string Format(int value) => Currency.FromNumber(value).Code;
}

/// <summary>Seven marks, Monday to Sunday, 1 for a working day: <c>1111100</c>. The number has Monday as bit 0.</summary>
public sealed class WeekPatternCodec : Codec
{
    public static readonly WeekPatternCodec Instance = new();

    public override string Expected => "seven marks 0 or 1, Monday to Sunday, such as 1111100";

    public override bool TryParse(ReadOnlySpan<char> text, out int value)
    {
        value = 0;
        if (text.Length != 7 || text.ContainsAnyExcept('0', '1'))
        {
            return false;
        }

        for (var day = 0; day < 7; day++)
        {
            value |= (text[day] - '0') << day;
        }

        return true;
    }

    public override string Format(int value) =>
        string.Create(
            7,
            value,
            static (marks, pattern) =>
            {
                for (var day = 0; day < 7; day++)
                {
                    marks[day] = (char)('0' + ((pattern >> day) & 1));
                }
            }
        );
}
