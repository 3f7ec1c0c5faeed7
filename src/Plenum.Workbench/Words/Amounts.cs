using System.Globalization;
using Plenum.Core.Foundation;

namespace Plenum.Workbench.Words;

/// <summary>
/// Shows amounts in one unit for a whole table: units, thousands or millions of the currency, by the size of the
/// whole. Rounded for display only.
/// </summary>
public sealed class Amounts
{
    private const decimal Million = 1_000_000;
    private const decimal Thousand = 1_000;
    private const int SmallestOfAUnit = 100;
    private const int LargestWithDecimals = 10_000;

    private static readonly NumberFormatInfo Format = new()
    {
        NumberGroupSeparator = "\u202F",
        NegativeSign = "\u2212",
    };

    private readonly decimal unit;
    private readonly int decimals;
    private readonly string currencyCode;
    private readonly int currencyDigits;

    public Amounts(decimal whole, Currency currency)
    {
        unit =
            whole >= SmallestOfAUnit * Million ? Million
            : whole >= SmallestOfAUnit * Thousand ? Thousand
            : 1;
        currencyCode = currency.Code;
        currencyDigits = currency.Digits;
        decimals =
            unit == 1 ? currency.Digits
            : whole >= LargestWithDecimals * unit ? 0
            : 1;
        Unit =
            unit == Million ? currency.Code + " million"
            : unit == Thousand ? currency.Code + " thousand"
            : currency.Code;
    }

    /// <summary>What the amounts are in, such as "EUR million".</summary>
    public string Unit { get; }

    public string Amount(decimal? amount) => Number(amount / unit, decimals);

    /// <summary>One decimal more than an amount, always signed.</summary>
    public string Variance(decimal? amount)
    {
        var text = Number(amount / unit, unit == 1 ? decimals : decimals + 1);
        return amount > 0 ? "+" + text : text;
    }

    /// <summary>An index with two decimals.</summary>
    public static string Index(decimal? ratio, int digits = 2) => Number(ratio, digits);

    /// <summary>The amount to the last digit, with its currency.</summary>
    public string Exact(decimal amount) => $"{currencyCode} {Number(amount, currencyDigits)}";

    public static string Percent(decimal? fraction, int digits = 1) =>
        fraction is null ? "–" : Number(fraction * 100, digits) + " %";

    public static string Count(decimal count) => Number(count, 0);

    /// <summary>A count with its word, such as "1 part" or "12 parts".</summary>
    public static string Count(decimal count, string one, string many) =>
        $"{Count(count)} {(count == 1 ? one : many)}";

    public static string Day(DateOnly? date) =>
        date?.ToString("d MMM yyyy", CultureInfo.InvariantCulture) ?? "–";

    /// <summary>The sentence that says for which day an answer holds.</summary>
    public static string At(DateOnly? date) =>
        date is null ? "Before the end of the first period." : $"At {Day(date)}.";

    private static string Number(decimal? number, int digits) =>
        number is { } given
            ? Math.Round(given, digits, MidpointRounding.AwayFromZero)
                .ToString("N" + digits.ToString(CultureInfo.InvariantCulture), Format)
            : "–";
}
