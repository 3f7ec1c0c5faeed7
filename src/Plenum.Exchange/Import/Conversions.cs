using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Exchange.Import;

/// <summary>
/// Fills in the amount in the project's currency: once, at the row, rounded half away from zero. A row in another
/// currency needs a rate; a row in the project's currency needs none.
/// </summary>
public static class Conversions
{
    /// <summary>Sums of converted amounts are checked for the whole project; this only keeps one within range.</summary>
    private const long GreatestConverted = 100_000_000_000_000_000;

    /// <param name="table">The table.</param>
    /// <param name="change">Its rows that have changed.</param>
    /// <param name="project">The project's currency.</param>
    /// <param name="isUnpriced">Whether the row of an id has a currency or rate that was not understood and reported.</param>
    /// <param name="faults">Receives rows that cannot be converted.</param>
    public static Table Apply(
        Table table,
        TableChange change,
        Currency project,
        Func<int, bool> isUnpriced,
        IRowFaults faults
    )
    {
        if (table.Definition.Conversion is not { } conversion || change.Count == 0)
        {
            return table;
        }

        var converted = (NumberColumnBuilder<long>)table[conversion.Converted].ToBuilder(0);
        foreach (var id in change.Updated.Concat(change.Added))
        {
            var row = table.RowOf(id);
            converted[row] = isUnpriced(id)
                ? Cell.NoLong
                : Convert(table, row, conversion, project, faults);
        }

        return table.With(conversion.Converted, converted.Build());
    }

    private static long Convert(
        Table table,
        int row,
        Conversion conversion,
        Currency project,
        IRowFaults faults
    )
    {
        var amount = table.Longs(conversion.Amount)[row];
        var currencyNumber = table.Ints(conversion.Currency)[row];
        var rate = table.Decimals(conversion.Rate)[row];
        if (!Cell.IsGiven(amount))
        {
            return Cell.NoLong;
        }

        var currency = Cell.IsGiven(currencyNumber) ? Currency.FromNumber(currencyNumber) : project;
        if (currency == project)
        {
            if (Cell.IsGiven(rate) && rate != 1)
            {
                faults.Add(
                    table,
                    row,
                    conversion.Rate,
                    "no rate, or 1, for an amount in the project's currency",
                    $"a rate stands beside an amount in {project}, the project's currency"
                );
            }

            return amount;
        }

        if (!Cell.IsGiven(rate) || rate == 0)
        {
            faults.Add(
                table,
                row,
                conversion.Rate,
                $"how many {project} one {currency} is",
                $"an amount in {currency} needs a rate"
            );
            return Cell.NoLong;
        }

        try
        {
            var money = new ForeignMoney(amount, currency).At(rate, project).MinorUnits;
            if (Math.Abs(money) <= GreatestConverted)
            {
                return money;
            }
        }
        catch (OverflowException)
        {
            // reported below like any amount that is too large
        }

        faults.Add(
            table,
            row,
            conversion.Rate,
            "a rate with which the amount stays in range",
            $"the amount is too large in {project}"
        );
        return Cell.NoLong;
    }
}
