using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo.Tables;

/// <summary>estimate: what the budgets were made from, near them but not equal to them.</summary>
internal static class EstimateTables
{
    public static void Write(DemoPlan plan, TableFolder tables, ulong seed)
    {
        var estimate = tables.Open(
            "estimate",
            "package",
            "cost_element",
            "line",
            "quantity",
            "unit",
            "hours_per_unit",
            "rate",
            "amount",
            "low",
            "likely",
            "high",
            "class",
            "basis",
            "base_date",
            "currency"
        );
        foreach (var package in plan.Packages)
        {
            var random = new SeededRandom(seed, "estimate " + package.Code);
            if (random.Chance(4) || package.Budget == 0)
            {
                continue;
            }
            foreach (var line in package.Lines)
            {
                estimate.Text(package.Code).Text(line.CostElement).Whole(1);
                var wanted = (long)(line.Converted * random.Between(0.9, 1.06));
                var amount = WriteQuantities(estimate, package, line, wanted);
                var (low, high) = RangeOf(package, random);
                estimate
                    .Hundredths(amount)
                    .Hundredths(amount * low / 100)
                    .Hundredths(amount)
                    .Hundredths(amount * high / 100)
                    .Whole(ClassOf(package))
                    .Text(BasisOf(line, random))
                    .Date(new DateOnly(2026, 1, 15).AddDays(random.Below(60)))
                    .Empty()
                    .EndRow();
            }
        }
    }

    /// <summary>Quantity, unit, hours per unit and rate, so that they multiply to the amount that is returned.</summary>
    private static long WriteQuantities(
        TableWriter estimate,
        Package package,
        BudgetLine line,
        long wanted
    )
    {
        var quantity = Math.Max(1, package.Quantity ?? package.Component.Type.Quantity);
        var unit = package.Component.Type.QuantityUnit;
        if (line.CostElement == "labour")
        {
            var rate = CostMix.HourlyRate(package);
            var hoursPerUnit = Math.Max(1, wanted * 100 / rate / quantity);
            estimate.Whole(quantity).Text(unit).Hundredths(hoursPerUnit).Hundredths(rate);
            return quantity * hoursPerUnit * rate / 100;
        }
        var unitRate = Math.Max(1, wanted / quantity);
        estimate.Whole(quantity).Text(unit).Empty().Hundredths(unitRate);
        return quantity * unitRate;
    }

    private static (int Low, int High) RangeOf(Package package, SeededRandom random) =>
        ClassOf(package) switch
        {
            2 => (random.Between(92, 96), random.Between(106, 112)),
            3 => (random.Between(86, 92), random.Between(112, 125)),
            _ => (random.Between(78, 86), random.Between(125, 150)),
        };

    private static int ClassOf(Package package) =>
        package.Step.Facet switch
        {
            "procurement" => 2,
            "commissioning" => 4,
            _ => package.Component.Account.Unit == "MAR" ? 4 : 3,
        };

    private static string BasisOf(BudgetLine line, SeededRandom random) =>
        line.CostElement switch
        {
            "labour" => random.Chance(70) ? "norm" : "past project",
            "equipment" or "subcontract" => random.Chance(60) ? "quotation" : "past project",
            _ => "own",
        };
}
