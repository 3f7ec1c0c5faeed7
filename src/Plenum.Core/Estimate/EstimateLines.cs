using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Estimate;

/// <summary>What follows from the fields of one estimate line.</summary>
public static class EstimateLines
{
    /// <summary>
    /// The amount of a line in minor units of its own currency: the one that is given; else quantity × hours per unit ×
    /// rate where hours per unit are given, else quantity × rate, rounded once, half away from zero.
    /// <see cref="Cell.NoLong"/> where a factor is missing. Example: 14 segments at 219.33 h and 94 an hour are
    /// 288 638.28.
    /// </summary>
    /// <exception cref="OverflowException">It does not fit.</exception>
    public static long Amount(Table lines, int row, Currency project) =>
        lines.Longs(EstimateTable.Amount)[row] is var given && Cell.IsGiven(given)
            ? given
            : Product(lines, row, project);

    /// <summary>
    /// What quantity and rate make, whether an amount is given or not; <see cref="Cell.NoLong"/> where a factor is
    /// missing.
    /// </summary>
    /// <exception cref="OverflowException">It does not fit.</exception>
    public static long Product(Table lines, int row, Currency project) =>
        Product(
            lines.Decimals(EstimateTable.Quantity)[row],
            lines.Decimals(EstimateTable.HoursPerUnit)[row],
            lines.Decimals(EstimateTable.Rate)[row],
            CurrencyOf(lines, row, project)
        );

    /// <summary>True if the amount follows from quantity and rate, and is not given.</summary>
    public static bool IsComputed(Table lines, int row) =>
        !Cell.IsGiven(lines.Longs(EstimateTable.Amount)[row]);

    /// <summary>
    /// Hours of a line in hundredths: quantity × hours per unit, rounded once, half away from zero;
    /// <see cref="Cell.NoLong"/> where one of them is missing.
    /// </summary>
    /// <exception cref="OverflowException">They do not fit.</exception>
    public static long Hours(Table lines, int row)
    {
        var quantity = lines.Decimals(EstimateTable.Quantity)[row];
        var hours = lines.Decimals(EstimateTable.HoursPerUnit)[row];
        return Cell.IsGiven(quantity) && Cell.IsGiven(hours)
            ? (
                ExactFraction.Of(quantity) * ExactFraction.Of(hours) * new ExactFraction(100, 1)
            ).RoundHalfAwayFromZero()
            : Cell.NoLong;
    }

    /// <summary>The line's currency; the project's where it names none.</summary>
    public static Currency CurrencyOf(Table lines, int row, Currency project) =>
        lines.Ints(EstimateTable.Currency)[row] is var number && Cell.IsGiven(number)
            ? Currency.FromNumber(number)
            : project;

    private static long Product(
        decimal quantity,
        decimal hoursPerUnit,
        decimal rate,
        Currency currency
    )
    {
        if (!Cell.IsGiven(quantity) || !Cell.IsGiven(rate))
        {
            return Cell.NoLong;
        }

        var product = ExactFraction.Of(quantity) * ExactFraction.Of(rate);
        if (Cell.IsGiven(hoursPerUnit))
        {
            product *= ExactFraction.Of(hoursPerUnit);
        }

        return (
            product * new ExactFraction((long)Math.Pow(10, currency.Digits), 1)
        ).RoundHalfAwayFromZero();
    }
}
