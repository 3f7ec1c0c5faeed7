using System.Globalization;
using System.Numerics;
using Plenum.Oracle.Model;
using Plenum.Oracle.Tables;

namespace Plenum.Oracle.Examples;

/// <summary>
/// A published (or, where the source says so, constructed) figure. <paramref name="Value"/> is the text as it was
/// published, with its number of digits; null where the measure is undefined; a date for <c>forecast_finish</c>.
/// </summary>
public sealed record Expectation(string By, string Row, DateOnly At, string Measure, string? Value)
{
    private int Decimals =>
        Value!.Contains('.', StringComparison.Ordinal)
            ? Value.Length - Value.IndexOf('.', StringComparison.Ordinal) - 1
            : 0;

    /// <summary>
    /// Whether an amount agrees: the published figure, rounded to the currency's minor units where it has more
    /// digits, is exactly the amount.
    /// </summary>
    public bool AgreesWithMoney(BigInteger? minorUnits, int currencyDigits)
    {
        if (Value is null || minorUnits is not { } amount)
        {
            return Value is null && minorUnits is null;
        }

        return Ratio.Parse(Value).Rounded(currencyDigits)
            == new Ratio(amount, BigInteger.Pow(10, currencyDigits));
    }

    /// <summary>Whether a ratio agrees: rounded to the digits that were published it is the published figure.</summary>
    public bool AgreesWithRatio(Ratio? ratio)
    {
        if (Value is null || ratio is null)
        {
            return Value is null && ratio is null;
        }

        return Ratio.Parse(Value) == ratio.Rounded(Decimals);
    }

    /// <summary>Whether a date agrees.</summary>
    public bool AgreesWithDate(DateOnly? date) =>
        Value is null
            ? date is null
            : date == DateOnly.ParseExact(Value, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>Whether the row of an exact answer agrees.</summary>
    public bool AgreesWith(Row row, int currencyDigits)
    {
        if (Measure == "forecast_finish")
        {
            return AgreesWithDate(row.ForecastFinish);
        }

        return Model.Row.MoneyMeasures.Contains(Measure, StringComparer.Ordinal)
            ? AgreesWithMoney(row.Money(Measure), currencyDigits)
            : AgreesWithRatio(row.Ratio(Measure));
    }
}

/// <summary>An example: where it comes from, the project that says it in tables, and the figures it must give.</summary>
public sealed record WorkedExample(
    string Name,
    string Source,
    TextProject Project,
    IReadOnlyList<Expectation> Expected
)
{
    public override string ToString() => Name;
}
