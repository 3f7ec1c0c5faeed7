using System.Globalization;

namespace Plenum.Core.Foundation;

/// <summary>Says amounts in sentences: with a space for thousands and the currency's code behind.</summary>
public sealed class MoneyText(Currency currency)
{
    private static readonly NumberFormatInfo Format = new()
    {
        NumberGroupSeparator = "\u202F",
        NumberDecimalSeparator = ".",
        NegativeSign = "\u2212",
    };

    /// <summary>Such as "1 234.50 EUR".</summary>
    public string Of(long minorUnits) =>
        currency.ToMajorUnits(minorUnits).ToString("N" + currency.Digits, Format)
        + " "
        + currency.Code;

    /// <summary>A part of a whole as per cent with one decimal, such as "7.0 %".</summary>
    public static string Percent(long part, long whole) =>
        whole == 0 ? "\u2013" : (100m * part / whole).ToString("N1", Format) + " %";
}
