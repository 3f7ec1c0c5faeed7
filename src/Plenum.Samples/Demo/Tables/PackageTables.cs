using System.Globalization;
using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo.Tables;

/// <summary>packages, budget, budget_periods, milestones, items, credit_steps.</summary>
internal static class PackageTables
{
    public static void Write(DemoPlan plan, TableFolder tables)
    {
        var packages = tables.Open(
            "packages",
            "package",
            "account",
            "technique",
            "base",
            "spread",
            "start",
            "finish"
        );
        var budget = tables.Open(
            "budget",
            "package",
            "cost_element",
            "amount",
            "hours",
            "currency",
            "rate"
        );
        var periods = tables.Open("budget_periods", "package", "period", "amount", "cost_element");
        var milestones = tables.Open("milestones", "package", "milestone", "weight", "planned");
        var items = tables.Open("items", "package", "item", "name", "quantity", "hours", "rule");
        foreach (var package in plan.Packages)
        {
            // Most packages find their account by element and unit; the cranes' name it.
            var named = package.Component.Type.Key == "crane";
            packages
                .Text(package.Code)
                .Text(named ? package.Component.Account.Code : "")
                .Text(package.Technique)
                .Text(package.Base?.Code)
                .Text(package.Spread)
                .Date(DemoTime.Date(package.Start))
                .Date(DemoTime.Date(package.Finish))
                .EndRow();
            WriteBudget(budget, package);
            if (package.Spread == "periods")
            {
                WritePeriods(periods, package);
            }
            for (var i = 0; i < package.Milestones.Count; i++)
            {
                var (name, weight, planned) = package.Milestones[i];
                var isLast = i == package.Milestones.Count - 1;
                milestones
                    .Text(package.Code)
                    .Text(name)
                    .Whole(weight)
                    .DateOrEmpty(isLast && package.Index % 7 == 0 ? null : DemoTime.Date(planned))
                    .EndRow();
            }
            foreach (var item in package.Items)
            {
                items
                    .Text(package.Code)
                    .Text(item.Code)
                    .Text(item.Name)
                    .WholeOrEmpty(item.Quantity == 1 ? null : item.Quantity)
                    .Whole(item.Hours)
                    .Text(package.CreditRule)
                    .EndRow();
            }
        }
        var steps = tables.Open("credit_steps", "rule", "step", "percent", "order");
        foreach (var (rule, ruleSteps) in CreditRules.All)
        {
            for (var i = 0; i < ruleSteps.Count; i++)
            {
                steps
                    .Text(rule)
                    .Text(ruleSteps[i].Step)
                    .Whole(ruleSteps[i].Percent)
                    .Whole(i + 1)
                    .EndRow();
            }
        }
    }

    private static void WriteBudget(TableWriter budget, Package package)
    {
        foreach (var line in package.Lines)
        {
            budget.Text(package.Code).Text(line.CostElement);
            WriteForeign(budget, line.Amount, line.Currency, line.Hours);
        }
    }

    /// <summary>Ends the row with amount, hours, currency and rate.</summary>
    public static void WriteForeign(
        TableWriter table,
        long amount,
        ForeignCurrency? currency,
        long? hours
    )
    {
        if (currency is { HasMinorUnits: false })
        {
            table.Whole(amount / 100);
        }
        else
        {
            table.Hundredths(amount);
        }
        table
            .HundredthsOrEmpty(hours)
            .Text(currency?.Code)
            .Text(currency?.Rate.ToString(CultureInfo.InvariantCulture))
            .EndRow();
    }

    /// <summary>Amounts by period, of the whole budget or of each cost element, by the rounded running total.</summary>
    private static void WritePeriods(TableWriter periods, Package package)
    {
        var byElement = package.Index % 2 == 0;
        var parts = byElement
            ? package.Lines.Select(line => (line.CostElement, line.Converted))
            : [("", package.Budget)];
        foreach (var (element, amount) in parts)
        {
            long given = 0;
            for (
                var period = DemoTime.PeriodOf(package.Start);
                period <= DemoTime.PeriodOf(package.Finish);
                period++
            )
            {
                var share = Techniques.PlannedShare(package, DemoTime.Periods[period].LastWorkDay);
                var upTo = share >= 1 ? amount : (long)(amount * share);
                periods
                    .Text(package.Code)
                    .Text(DemoTime.Periods[period].Name)
                    .Hundredths(upTo - given)
                    .Text(element)
                    .EndRow();
                given = upTo;
            }
        }
    }
}
