using System.Globalization;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Exchange.Import;

/// <summary>Turns the text of a cell into the stored value. Exact: nothing is rounded, nothing is guessed.</summary>
internal static class CellParser
{
    private const int MostDecimalDigits = 28;

    /// <summary>A whole number with an optional minus sign.</summary>
    public static bool TryWhole(ReadOnlySpan<char> text, out long value) =>
        long.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out value)
        && !text.StartsWith("+", StringComparison.Ordinal);

    /// <summary>
    /// A decimal number with a point as a whole count of its smallest unit: with two decimals, 12.5 is 1 250. False
    /// with more decimals than that, an exponent, thousands marks, or out of the range of 64 bits.
    /// </summary>
    public static bool TryScaled(ReadOnlySpan<char> text, int decimals, out long value)
    {
        value = 0;
        var negative = text.Length > 0 && text[0] == '-';
        var at = negative ? 1 : 0;
        var digits = 0;
        var afterPoint = -1;
        for (; at < text.Length; at++)
        {
            var mark = text[at];
            if (mark == '.' && afterPoint < 0)
            {
                afterPoint = 0;
                continue;
            }

            if (!char.IsAsciiDigit(mark) || (afterPoint >= 0 && ++afterPoint > decimals))
            {
                return false;
            }

            if (value > (long.MaxValue - 9) / 10)
            {
                return false;
            }

            value = (value * 10) + (mark - '0');
            digits++;
        }

        if (digits == 0 || afterPoint == 0)
        {
            return false;
        }

        for (var place = Math.Max(0, afterPoint); place < decimals; place++)
        {
            if (value > long.MaxValue / 10)
            {
                return false;
            }

            value *= 10;
        }

        value = negative ? -value : value;
        return true;
    }

    /// <summary>An exact decimal number of at most 28 digits.</summary>
    public static bool TryDecimal(ReadOnlySpan<char> text, out decimal value)
    {
        value = 0;
        var digits = 0;
        foreach (var mark in text)
        {
            digits += char.IsAsciiDigit(mark) ? 1 : 0;
        }

        var read =
            digits is > 0 and <= MostDecimalDigits
            && text[0] != '+'
            && text[^1] != '.'
            && decimal.TryParse(
                text,
                NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture,
                out value
            );
        // 872.90 and 872.9 are the same number and are kept the same
        value = Ratio.Normal(value);
        return read;
    }

    /// <summary>A date such as 2026-03-31.</summary>
    public static bool TryDate(ReadOnlySpan<char> text, out DateOnly date)
    {
        date = default;
        if (text.Length != 10 || text[4] != '-' || text[7] != '-')
        {
            return false;
        }

        var year = Digits(text[..4]);
        var month = Digits(text[5..7]);
        var day = Digits(text[8..]);
        if (year < 1 || month is < 1 or > 12 || day < 1 || day > DateTime.DaysInMonth(year, month))
        {
            return false;
        }

        date = new DateOnly(year, month, day);
        return true;
    }

    /// <summary>A code is kept as it is, but must not begin or end with a space nor hold control characters.</summary>
    public static bool IsCode(ReadOnlySpan<char> text)
    {
        if (char.IsWhiteSpace(text[0]) || char.IsWhiteSpace(text[^1]))
        {
            return false;
        }

        foreach (var mark in text)
        {
            if (char.IsControl(mark))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>What a column expects, in words.</summary>
    public static string Expected(ColumnDefinition column, Currency currency)
    {
        var expected = column.Kind switch
        {
            CellKind.Text => "text",
            CellKind.Code => "a code without spaces at its ends",
            CellKind.Whole => string.Create(
                CultureInfo.InvariantCulture,
                $"a whole number from {column.Least} to {column.Greatest}"
            ),
            CellKind.Decimal when column.Least >= 0 =>
                "a number with a decimal point, such as 12.5, not below 0, at most 28 digits",
            CellKind.Decimal => "a number with a decimal point, such as 12.5, at most 28 digits",
            CellKind.Money => ExpectedMoney(column, currency),
            CellKind.Hours when column.Least >= 0 =>
                "hours such as 12.5, not below 0, at most 2 decimals, at most 100000000000",
            CellKind.Hours => "hours such as 12.5, at most 2 decimals, at most 100000000000",
            CellKind.Percent => "per cent from 0 to 100, at most 2 decimals",
            CellKind.Date => "a date such as 2026-03-31",
            CellKind.Flag => "0 or 1",
            CellKind.Word => column.Codec!.Expected,
            _ => column.Codec is null ? $"the code of {column.Called}" : column.Called!,
        };
        return column.IsWithdrawable ? expected + ", or - to take it back" : expected;
    }

    /// <summary>The complaint about a code that no row has.</summary>
    public static string Unknown(ColumnDefinition column, ReadOnlySpan<char> code) =>
        $"\"{InputErrors.Shorten(code)}\" does not exist, "
        + (column.Codec is null ? $"the code of {column.Called}" : column.Called)
        + " expected: correct it, or bring its row along";

    private static string ExpectedMoney(ColumnDefinition column, Currency currency)
    {
        var example = currency.Digits == 0 ? "1234" : "1234." + new string('5', currency.Digits);
        var decimals =
            currency.Digits == 0 ? "without decimals" : $"with at most {currency.Digits} decimals";
        var sign = column.Least >= 0 ? ", not negative" : "";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"an amount such as {example} {decimals}{sign}, at most {currency.ToMajorUnits(column.Greatest)}"
        );
    }

    private static int Digits(ReadOnlySpan<char> text)
    {
        var number = 0;
        foreach (var mark in text)
        {
            if (!char.IsAsciiDigit(mark))
            {
                return -1;
            }

            number = (number * 10) + (mark - '0');
        }

        return number;
    }
}
