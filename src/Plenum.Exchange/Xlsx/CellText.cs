using System.Globalization;

namespace Plenum.Exchange.Xlsx;

/// <summary>The text that a CSV file would hold for the value of a sheet's cell.</summary>
internal static class CellText
{
    /// <summary>How many significant digits a spreadsheet keeps and shows of a number.</summary>
    public const int Digits = 15;

    /// <summary>Whole numbers up to 2^53 are exact in a cell.</summary>
    private const double GreatestExactWhole = 9_007_199_254_740_992;

    /// <summary>
    /// Empty for no value. A date becomes 2026-03-31; one with a time keeps the time, so that it is not taken for a date
    /// alone, and so does a time alone. Truth becomes 1 or 0.
    /// </summary>
    public static string Of(object? value) =>
        value switch
        {
            null => string.Empty,
            string text => text,
            double number => Number(number),
            bool truth => truth ? "1" : "0",
            DateTime date => Date(date),
            DateTimeOffset date => date.ToString(
                "yyyy-MM-dd HH:mm:ss zzz",
                CultureInfo.InvariantCulture
            ),
            TimeSpan time => time.ToString("c", CultureInfo.InvariantCulture),
            IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
            _ => value.ToString() ?? string.Empty,
        };

    /// <summary>
    /// The shortest decimal of at most 15 significant digits, without exponent: what the spreadsheet itself shows.
    /// Binary noise behind them (0.30000000000000004 as the sum of 0.1 and 0.2) is left off. Whole numbers that a cell
    /// holds exactly keep all digits.
    /// </summary>
    public static string Number(double number)
    {
        if (double.IsInteger(number) && Math.Abs(number) <= GreatestExactWhole)
        {
            return ((long)number).ToString(CultureInfo.InvariantCulture);
        }

        // d.dddddddddddddd (15 digits) E±ddd
        var scientific = Math.Abs(number).ToString("E14", CultureInfo.InvariantCulture);
        var mark = scientific.IndexOf('E');
        if (mark < 0)
        {
            return number.ToString(CultureInfo.InvariantCulture);
        }

        var digits = $"{scientific[0]}{scientific.AsSpan(2, mark - 2)}".TrimEnd('0');
        var point = 1 + int.Parse(scientific.AsSpan(mark + 1), CultureInfo.InvariantCulture);
        var plain =
            point <= 0 ? $"0.{new string('0', -point)}{digits}"
            : point >= digits.Length ? digits.PadRight(point, '0')
            : $"{digits.AsSpan(0, point)}.{digits.AsSpan(point)}";
        return number < 0 ? "-" + plain : plain;
    }

    private static string Date(DateTime date) =>
        date.ToString(
            date.TimeOfDay == TimeSpan.Zero ? "yyyy-MM-dd"
                : date.Ticks % TimeSpan.TicksPerSecond == 0 ? "yyyy-MM-dd HH:mm:ss"
                : "yyyy-MM-dd HH:mm:ss.FFFFFFF",
            CultureInfo.InvariantCulture
        );
}
