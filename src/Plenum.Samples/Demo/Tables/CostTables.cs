using System.Globalization;
using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo.Tables;

/// <summary>actuals, commitments.</summary>
internal static class CostTables
{
    private const int Last = DemoTime.Closed - 1;

    /// <summary>How many working days before its start work is ordered.</summary>
    private const int OrderedAhead = 20;

    public static void Write(DemoPlan plan, Ledger ledger, TableFolder tables, ulong seed)
    {
        var actuals = tables.Open(
            "actuals",
            "document",
            "line",
            "charge",
            "period",
            "cost_element",
            "kind",
            "amount",
            "hours",
            "currency",
            "rate"
        );
        foreach (var row in ledger.Rows)
        {
            actuals
                .Text(row.Document)
                .Whole(row.Line)
                .Text(row.Charge)
                .Text(DemoTime.Periods[row.Period].Name)
                .Text(row.CostElement)
                .Text(row.IsAccrual ? "accrual" : "invoiced");
            PackageTables.WriteForeign(actuals, row.Amount, row.Currency, row.Hours);
        }
        var commitments = tables.Open(
            "commitments",
            "order",
            "line",
            "package",
            "cost_element",
            "amount",
            "pending",
            "supplier",
            "date"
        );
        foreach (var component in plan.Components)
        {
            WriteOrders(
                commitments,
                component,
                ledger,
                new SeededRandom(seed, "orders " + component.Code)
            );
        }
    }

    private static void WriteOrders(
        TableWriter table,
        Component component,
        Ledger ledger,
        SeededRandom random
    )
    {
        var supplier = string.Create(
            CultureInfo.InvariantCulture,
            $"Supplier {"ABCDEFGH"[random.Below(8)]}-{random.Between(11, 48)}"
        );
        var line = 0;
        foreach (var package in component.Packages.Where(CostMix.IsOrdered))
        {
            var start = Math.Min(package.Start, package.Progress.Start) - OrderedAhead;
            if (start > DemoTime.StatusWorkDay - 1 || package.Budget == 0)
            {
                continue;
            }
            var date = DemoTime.Date(Math.Max(0, start));
            var share = random.Between(0.5, 0.95);
            var hasPending = package.Progress.IsOpen && random.Chance(9);
            foreach (var budget in package.Lines)
            {
                var spent = ledger.Spent.GetValueOrDefault((package, budget.CostElement));
                table
                    .Text("PO-" + component.Code)
                    .Whole(++line)
                    .Text(package.Code)
                    .Text(budget.CostElement)
                    .Hundredths(Committed(package, budget, spent, share))
                    .HundredthsOrEmpty(hasPending ? budget.Converted / 40 / 100_00 * 100_00 : null)
                    .Text(supplier)
                    .DateOrEmpty(package.Index % 41 == 7 ? null : date)
                    .EndRow();
            }
        }
    }

    /// <summary>
    /// Between what is spent and what is expected at completion, so that neither is a finding, but for the packages
    /// in which more is planted as spent than was ordered.
    /// </summary>
    private static long Committed(Package package, BudgetLine line, long spent, double share)
    {
        if (DemoProject.SpentBeyondOrder.Contains(package.Code))
        {
            return spent * 93 / 100;
        }
        if (DemoProject.StaleEstimates.Contains(package.Code))
        {
            return spent;
        }
        var remaining = package.Progress.IsFinished
            ? 0
            : package.Progress.StillToCome[Last]
                ?? (package.Budget * (1 - Progress.EarnedShare(package, Last)));
        return spent + (long)(remaining * share * line.Converted / package.Budget);
    }
}
