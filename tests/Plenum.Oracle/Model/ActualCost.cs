using System.Numerics;

namespace Plenum.Oracle.Model;

/// <summary>Sums of ledger rows and of commitments at a date.</summary>
public static class ActualCost
{
    /// <summary>
    /// What was charged to a package or an account for a cost element in periods that end on or before the date. An
    /// accrual is taken back on the first day of the next period, unless accruals stay as booked.
    /// </summary>
    public static BigInteger Of(Facts facts, string charge, string costElement, DateOnly date)
    {
        var sum = BigInteger.Zero;
        foreach (var booking in facts.Bookings)
        {
            if (
                booking.Charge == charge
                && booking.CostElement == costElement
                && booking.Period.End <= date
            )
            {
                sum += booking.Amount;
                var takenBackOn = booking.Period.End.AddDays(1);
                sum -=
                    booking.Accrual && facts.AccrualsReversed && takenBackOn <= date
                        ? booking.Amount
                        : 0;
            }
        }

        return sum;
    }

    public static BigInteger Of(Facts facts, string charge, DateOnly date) =>
        CostElements
            .All.Select(costElement => Of(facts, charge, costElement, date))
            .Aggregate(BigInteger.Zero, BigInteger.Add);

    /// <summary>Orders dated on or before the date, and those without date; pending changes are apart.</summary>
    public static BigInteger Committed(
        Facts facts,
        Package package,
        string costElement,
        DateOnly date
    )
    {
        var sum = BigInteger.Zero;
        foreach (var commitment in facts.Commitments)
        {
            if (commitment.Package == package.Code && commitment.CostElement == costElement)
            {
                sum += commitment.Date is null || commitment.Date <= date ? commitment.Amount : 0;
            }
        }

        return sum;
    }
}
