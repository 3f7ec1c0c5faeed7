using System.Numerics;

namespace Plenum.Oracle.Model;

/// <summary>
/// Earned value: the budget of a cost element times the package's earned share, rounded half away from zero on the
/// running total.
/// </summary>
public static class EarnedShare
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

    /// <summary>The earned share, 0 to 1. It depends on the cost element only where level of effort follows such a plan.</summary>
    public static Ratio Of(Facts facts, Package package, string costElement, DateOnly date)
    {
        switch (package.Technique)
        {
            case Technique.None:
                return Ratio.Zero;
            case Technique.LevelOfEffort:
                return PlannedShare.Of(facts, package, costElement, date);
            case Technique.Apportioned:
                var basis = facts.Package(package.Base);
                return new Ratio(Value(facts, basis, date), basis.TotalBudget);
        }

        if (Held.Finished(facts, package, date))
        {
            return Ratio.One;
        }

        if (Technique.ShareAtStart(package.Technique) is { } shareAtStart)
        {
            return Held.Started(facts, package, date) ? shareAtStart : Ratio.Zero;
        }

        return package.Technique switch
        {
            Technique.Milestones => ByMilestones(facts, package, date),
            Technique.Percent => (
                Held.Number(Held.Of(facts, package), "percent", date) ?? Ratio.Zero
            ) / Ratio.Of(100),
            Technique.Units => ByUnits(facts, package, date),
            Technique.Items => ByItems(facts, package, date),
            _ => throw new InvalidOperationException(
                $"Technique {package.Technique} is not known."
            ),
        };
    }

    private static Ratio ByMilestones(Facts facts, Package package, DateOnly date)
    {
        var done = Ratio.Zero;
        var all = Ratio.Zero;
        foreach (
            var milestone in facts.Milestones.Where(milestone => milestone.Package == package.Code)
        )
        {
            var reports = facts.MilestoneStatus.Where(report =>
                report.Package == package.Code && report.Part == milestone.Code
            );
            all += milestone.Weight;
            done += Held.Date(reports, "done", date) <= date ? milestone.Weight : Ratio.Zero;
        }

        return done / all;
    }

    private static Ratio ByUnits(Facts facts, Package package, DateOnly date)
    {
        var reports = Held.Of(facts, package).ToList();
        if (Held.Number(reports, "units_done", date) is not { } done)
        {
            return Ratio.Zero;
        }

        var quantity =
            Held.Number(reports, "quantity", date) ?? facts.Element(package.Code).Quantity;
        return Ratio.Min(Ratio.One, done / quantity!);
    }

    private static Ratio ByItems(Facts facts, Package package, DateOnly date)
    {
        var earnedHours = Ratio.Zero;
        var allHours = Ratio.Zero;
        foreach (var item in facts.Items.Where(item => item.Package == package.Code))
        {
            allHours += item.Hours;
            foreach (var step in facts.CreditSteps.Where(step => step.Rule == item.Rule))
            {
                earnedHours +=
                    item.Hours * (step.Percent / Ratio.Of(100)) * StepDone(facts, item, step, date);
            }
        }

        return allHours == Ratio.Zero ? Ratio.Zero : earnedHours / allHours;
    }

    /// <summary>How much of a step is done: the last row up to the date says so; without a quantity, the whole of it.</summary>
    private static Ratio StepDone(Facts facts, Item item, CreditStep step, DateOnly date)
    {
        var last = facts
            .ItemSteps.Where(report =>
                report.Package == item.Package
                && report.Part == item.Code
                && report.Step == step.Code
                && report.Period.End <= date
            )
            .OrderBy(report => report.Period.End)
            .LastOrDefault();
        return last?.Fields["quantity"] switch
        {
            null or "-" => Ratio.Zero,
            "" => Ratio.One,
            var quantity => Ratio.Min(Ratio.One, Ratio.Parse(quantity) / item.Quantity!),
        };
    }
}
