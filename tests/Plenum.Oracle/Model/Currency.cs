using System.Numerics;

namespace Plenum.Oracle.Model;

/// <summary>Minor units of the currencies that generated projects and examples use (ISO 4217).</summary>
public static class Currency
{
    public static int Digits(string currency) =>
        currency switch
        {
            "JPY" or "KRW" or "ISK" => 0,
            "EUR" or "USD" or "GBP" or "CHF" or "NOK" => 2,
            "KWD" or "BHD" or "TND" => 3,
            _ => throw new ArgumentException(
                $"Currency {currency} is not in the list.",
                nameof(currency)
            ),
        };

    /// <summary>An amount in major units as minor units; more decimals than the currency has are an error.</summary>
    public static BigInteger MinorUnits(string amount, string currency)
    {
        var minor = Ratio.Parse(amount) * Ratio.Of(BigInteger.Pow(10, Digits(currency)));
        return minor.Denominator.IsOne
            ? minor.Numerator
            : throw new FormatException($"{amount} has more decimals than {currency}.");
    }

    /// <summary>
    /// An amount of another currency in minor units of the project's: amount x rate, where the rate is the price of
    /// one major unit of the row's currency in the project's currency; rounded once, half away from zero.
    /// </summary>
    public static BigInteger Converted(
        string amount,
        string currency,
        string rate,
        string projectCurrency
    )
    {
        if (currency.Length == 0 || currency == projectCurrency)
        {
            return MinorUnits(amount, projectCurrency);
        }

        var major =
            new Ratio(MinorUnits(amount, currency), BigInteger.Pow(10, Digits(currency)))
            * Ratio.Parse(rate);
        return (major * Ratio.Of(BigInteger.Pow(10, Digits(projectCurrency)))).RoundHalfAway();
    }
}
