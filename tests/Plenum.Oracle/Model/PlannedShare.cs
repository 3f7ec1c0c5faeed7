using System.Numerics;

namespace Plenum.Oracle.Model;

/// <summary>
/// Planned value: the budget of a cost element times the package's planned share, rounded half away from zero on
/// the running total.
/// </summary>
public static class PlannedShare
{
    public static BigInteger Value(
        Facts facts,
        Package package,
        string costElement,
        DateOnly date
    ) =>
        (
            Ratio.Of(package.Budget[costElement]) * Of(facts, package, costElement, date)
        ).RoundHalfAway();

    public static BigInteger Value(Facts facts, Package package, DateOnly date) =>
        CostElements
            .All.Select(costElement => Value(facts, package, costElement, date))
            .Aggregate(BigInteger.Zero, BigInteger.Add);

    /// <summary>The planned share, 0 to 1. It depends on the cost element only where amounts per period are given by it.</summary>
    public static Ratio Of(Facts facts, Package package, string costElement, DateOnly date)
    {
        if (package.Technique == Technique.Apportioned)
        {
            var basis = facts.Package(package.Base);
            return new Ratio(Value(facts, basis, date), basis.TotalBudget);
        }

        if (package.Start is not { } start || package.Finish is not { } finish || date < start)
        {
            return Ratio.Zero;
        }

        if (date >= finish)
        {
            return Ratio.One;
        }

        if (Technique.ShareAtStart(package.Technique) is { } shareAtStart)
        {
            return shareAtStart;
        }

        return package.Technique == Technique.Milestones
            ? ByMilestones(facts, package, finish, date)
            : BySpread(facts, package, costElement, start, finish, date);
    }

    private static Ratio ByMilestones(Facts facts, Package package, DateOnly finish, DateOnly date)
    {
        var planned = Ratio.Zero;
        var all = Ratio.Zero;
        foreach (
            var milestone in facts.Milestones.Where(milestone => milestone.Package == package.Code)
        )
        {
            all += milestone.Weight;
            planned += (milestone.Planned ?? finish) <= date ? milestone.Weight : Ratio.Zero;
        }

        return planned / all;
    }

    private static Ratio BySpread(
        Facts facts,
        Package package,
        string costElement,
        DateOnly start,
        DateOnly finish,
        DateOnly date
    )
    {
        // without a technique the plan is even, whatever the spread
        var spread = package.Technique.Length == 0 ? "even" : package.Spread;
        if (spread == "periods")
        {
            return ByPeriodAmounts(facts, package, costElement, date);
        }

        var all = facts.Calendar.WorkingDays(start, finish);
        if (all == 0)
        {
            return Ratio.Zero;
        }

        var x = new Ratio(facts.Calendar.WorkingDays(start, date), all);
        return spread switch
        {
            "even" => x,
            "falling" => Ratio.One - ((Ratio.One - x) * (Ratio.One - x)),
            "rising" => x * x,
            "s_shaped" => x * x * (Ratio.Of(3) - (Ratio.Of(2) * x)),
            _ => throw new InvalidOperationException($"Spread {spread} is not known."),
        };
    }

    private static Ratio ByPeriodAmounts(
        Facts facts,
        Package package,
        string costElement,
        DateOnly date
    )
    {
        var rows = facts.PeriodAmounts.Where(row => row.Package == package.Code).ToList();
        var byCostElement = rows.Exists(row => row.CostElement != "");
        var budget = byCostElement ? package.Budget[costElement] : package.TotalBudget;
        if (budget.IsZero)
        {
            return Ratio.Zero;
        }

        var soFar = BigInteger.Zero;
        foreach (var row in rows)
        {
            var counts =
                row.Period.End <= date && (!byCostElement || row.CostElement == costElement);
            soFar += counts ? row.Amount : 0;
        }

        return new Ratio(soFar, budget);
    }
}
