using System.Numerics;

namespace Plenum.Oracle.Model;

/// <summary>Cost still to come of a package, per cost element.</summary>
public static class Remaining
{
    /// <summary>
    /// A reported cost to come less what was booked in later periods, not below zero, divided like the work that
    /// remains; without a report nothing for a finished package, else the budget of the work that remains.
    /// </summary>
    public static IReadOnlyDictionary<string, BigInteger> Of(
        Facts facts,
        Package package,
        DateOnly date
    )
    {
        var work = CostElements.All.ToDictionary(
            costElement => costElement,
            costElement =>
                package.Budget[costElement] - EarnedShare.Value(facts, package, costElement, date),
            StringComparer.Ordinal
        );
        if (Held.Field(Held.Of(facts, package), "etc", date) is { } report)
        {
            var reported = (
                Ratio.Parse(report.Text) * Ratio.Of(BigInteger.Pow(10, facts.CurrencyDigits))
            ).Numerator;
            var bookedLater =
                ActualCost.Of(facts, package.Code, date)
                - ActualCost.Of(facts, package.Code, report.Period.End);
            return Divided(BigInteger.Max(0, reported - bookedLater), work, package.Budget);
        }

        return Held.Finished(facts, package, date)
            ? CostElements.All.ToDictionary(
                costElement => costElement,
                _ => BigInteger.Zero,
                StringComparer.Ordinal
            )
            : work;
    }

    /// <summary>Before the first period's end nothing is reported and nothing earned: the whole budget.</summary>
    public static IReadOnlyDictionary<string, BigInteger> AtTheBeginning(Package package) =>
        package.Budget;

    /// <summary>
    /// Divides an amount by the cumulative method in the order of the cost elements: like the work that remains,
    /// like the budget where none remains, and without budget all of it is other cost.
    /// </summary>
    public static IReadOnlyDictionary<string, BigInteger> Divided(
        BigInteger amount,
        IReadOnlyDictionary<string, BigInteger> work,
        IReadOnlyDictionary<string, BigInteger> budget
    )
    {
        var weights = Sum(work).IsZero ? budget : work;
        if (Sum(weights).IsZero)
        {
            weights = CostElements.All.ToDictionary(
                costElement => costElement,
                costElement => costElement == CostElements.Other ? BigInteger.One : BigInteger.Zero,
                StringComparer.Ordinal
            );
        }

        var all = Sum(weights);
        var parts = new Dictionary<string, BigInteger>(StringComparer.Ordinal);
        var weightSoFar = BigInteger.Zero;
        var givenSoFar = BigInteger.Zero;
        foreach (var costElement in CostElements.All)
        {
            weightSoFar += weights[costElement];
            var upToHere = new Ratio(amount * weightSoFar, all).RoundHalfAway();
            parts[costElement] = upToHere - givenSoFar;
            givenSoFar = upToHere;
        }

        return parts;
    }

    private static BigInteger Sum(IReadOnlyDictionary<string, BigInteger> parts) =>
        parts.Values.Aggregate(BigInteger.Zero, BigInteger.Add);
}
