using System.Globalization;
using Plenum.Oracle.Model;

namespace Plenum.Oracle.Generator;

/// <summary>Makes up budgets, baseline dates, techniques and spreads of the packages.</summary>
internal static class PlanGenerator
{
    private static readonly string[] Techniques =
    [
        "0/100",
        "50/50",
        "25/75",
        "60/40",
        "100/0",
        Technique.Milestones,
        Technique.Milestones,
        Technique.Percent,
        Technique.Percent,
        Technique.Percent,
        Technique.Units,
        Technique.Units,
        Technique.Items,
        Technique.Items,
        Technique.LevelOfEffort,
        Technique.LevelOfEffort,
        Technique.Apportioned,
        Technique.Apportioned,
        Technique.None,
    ];

    public static void AddTo(Draft draft)
    {
        AddRules(draft);
        foreach (var package in draft.Packages)
        {
            AddBudget(draft, package);
        }

        foreach (var package in draft.Packages)
        {
            AddPackage(draft, package);
        }
    }

    private static void AddBudget(Draft draft, DraftPackage package)
    {
        var dice = draft.Dice;
        var magnitude = dice.Pick(3, 100, 10_000, 2_000_000, 2_000_000, 40_000_000);
        magnitude = dice.Chance(1) ? 2_000_000_000 : magnitude;
        foreach (var costElement in CostElements.All)
        {
            if (dice.Chance(55))
            {
                continue;
            }

            var row = draft.Text.Add(
                "budget",
                ("package", package.Code),
                ("cost_element", costElement)
            );
            package.Budget[costElement] = draft.SetAmount(
                row,
                dice.Chance(8) ? 0 : dice.Between(1, magnitude)
            );
            row["hours"] = costElement == "labour" && dice.Chance(70) ? draft.Hours(900) : "";
        }
    }

    private static void AddPackage(Draft draft, DraftPackage package)
    {
        var dice = draft.Dice;
        if (dice.Chance(5))
        {
            // No row: a package by its kind alone, without dates and technique.
            return;
        }

        SetDates(draft, package);
        package.Technique = dice.Pick(Techniques);
        if (package.Element.Kind == "planning_package")
        {
            package.Technique = dice.Pick(
                Technique.None,
                Technique.Percent,
                Technique.LevelOfEffort
            );
        }

        var basis = package.Technique == Technique.Apportioned ? Basis(draft, package) : "";
        package.Technique =
            package.Technique == Technique.Apportioned && basis.Length == 0
                ? "0/100"
                : package.Technique;
        var spread = dice.Pick("", "even", "falling", "rising", "s_shaped", "periods");
        spread = spread == "periods" && !AddPeriodAmounts(draft, package) ? "s_shaped" : spread;
        draft.Text.Add(
            "packages",
            ("package", package.Code),
            ("account", NamedAccount(draft, package)),
            ("technique", package.Technique),
            ("base", basis),
            ("spread", spread),
            ("start", package.Start is { } start ? Draft.Iso(start) : ""),
            ("finish", package.Finish is { } finish ? Draft.Iso(finish) : "")
        );
        switch (package.Technique)
        {
            case Technique.Milestones:
                AddMilestones(draft, package);
                break;
            case Technique.Items:
                AddItems(draft, package);
                break;
        }
    }

    private static void SetDates(Draft draft, DraftPackage package)
    {
        var dice = draft.Dice;
        var span = draft.LastDay.DayNumber - draft.FirstDay.DayNumber;
        var start = dice.Chance(6)
            ? draft.LastDay.AddDays(dice.Between(1, 30))
            : dice.Day(draft.FirstDay, draft.LastDay);
        var finish = start.AddDays(
            dice.Pick(0, dice.Between(0, 4), dice.Between(0, 30), dice.Between(0, span))
        );
        if (dice.Chance(5))
        {
            // A plan that has no working day in it, where the calendar has such a day.
            start = Enumerable
                .Range(0, 14)
                .Select(start.AddDays)
                .FirstOrDefault(day => !draft.Calendar.IsWorkingDay(day), start);
            finish = start;
            finish = draft.Calendar.IsWorkingDay(finish.AddDays(1)) ? finish : finish.AddDays(1);
        }

        package.Start = dice.Chance(8) ? null : start;
        package.Finish = dice.Chance(package.Start is null ? 80 : 3) ? null : finish;
    }

    /// <summary>A package with budget that does not depend on this one: any that comes earlier in the list.</summary>
    private static string Basis(Draft draft, DraftPackage package)
    {
        var earlier = draft
            .Packages.TakeWhile(other => other != package)
            .Where(other => other.TotalBudget > 0)
            .ToList();
        var apportioned = earlier.FindAll(other => other.Technique == Technique.Apportioned);
        if (apportioned.Count > 0 && draft.Dice.Chance(40))
        {
            earlier = apportioned;
        }

        return earlier.Count > 0 ? draft.Dice.Pick<DraftPackage>(earlier).Code : "";
    }

    private static string NamedAccount(Draft draft, DraftPackage package)
    {
        var possible = draft.Accounts.FindAll(account =>
            package.Element.SelfAndAncestors().Contains(account.Element)
        );
        return possible.Count > 0 && draft.Dice.Chance(30)
            ? draft.Dice.Pick<(string Code, DraftElement)>(possible).Code
            : "";
    }

    /// <summary>Spreads the budget over the periods that the package touches; false where that cannot be.</summary>
    private static bool AddPeriodAmounts(Draft draft, DraftPackage package)
    {
        var dice = draft.Dice;
        var touched = draft
            .Periods.Where(period => period.Begin <= package.Finish && period.End >= package.Start)
            .ToList();
        if (touched.Count == 0 || package.TotalBudget == 0)
        {
            return false;
        }

        if (dice.Chance(50))
        {
            AddAmounts(draft, package, touched, package.TotalBudget, "");
            return true;
        }

        foreach (var (costElement, amount) in package.Budget)
        {
            AddAmounts(draft, package, touched, (long)amount, costElement);
        }

        return true;
    }

    private static void AddAmounts(
        Draft draft,
        DraftPackage package,
        List<DraftPeriod> periods,
        long amount,
        string costElement
    )
    {
        var parts = draft.Dice.Parts(amount, periods.Count);
        for (var i = 0; i < periods.Count; i++)
        {
            if (parts[i] != 0)
            {
                draft.Text.Add(
                    "budget_periods",
                    ("package", package.Code),
                    ("period", periods[i].Code),
                    ("amount", draft.Money(parts[i])),
                    ("cost_element", costElement)
                );
            }
        }
    }

    private static void AddMilestones(Draft draft, DraftPackage package)
    {
        var dice = draft.Dice;
        var count = dice.Between(1, 5);
        for (var number = 1; number <= count; number++)
        {
            var weight =
                number > 1 && dice.Chance(10)
                    ? "0"
                    : dice.Pick("1", "20", "12.5", "0.333", "33.34", "7");
            var dated = package.Start is not null && package.Finish is not null && dice.Chance(75);
            draft.Text.Add(
                "milestones",
                ("package", package.Code),
                ("milestone", "MS" + number.ToString(CultureInfo.InvariantCulture)),
                ("weight", weight),
                (
                    "planned",
                    dated ? Draft.Iso(dice.Day(package.Start!.Value, package.Finish!.Value)) : ""
                )
            );
        }
    }

    private static void AddItems(Draft draft, DraftPackage package)
    {
        var dice = draft.Dice;
        var withoutHours = dice.Chance(8);
        var count = dice.Between(1, 5);
        for (var number = 1; number <= count; number++)
        {
            draft.Text.Add(
                "items",
                ("package", package.Code),
                ("item", "I" + number.ToString(CultureInfo.InvariantCulture)),
                ("name", "Line " + number.ToString(CultureInfo.InvariantCulture)),
                ("quantity", dice.Chance(60) ? draft.Decimal(dice.Between(1, 20_000), 2) : ""),
                ("hours", withoutHours || dice.Chance(8) ? "0" : draft.Hours(200)),
                ("rule", dice.Pick("piping", "cable"))
            );
        }
    }

    private static void AddRules(Draft draft)
    {
        AddRule(draft, "piping", draft.Dice.Between(1, 4));
        AddRule(draft, "cable", draft.Dice.Between(1, 3));
    }

    /// <summary>Steps whose percents, with up to two decimals, add to 100.</summary>
    private static void AddRule(Draft draft, string rule, int steps)
    {
        var parts = draft.Dice.Parts(10_000 - (100 * steps), steps);
        for (var step = 0; step < steps; step++)
        {
            draft.Text.Add(
                "credit_steps",
                ("rule", rule),
                ("step", "S" + step.ToString(CultureInfo.InvariantCulture)),
                ("percent", draft.Decimal(parts[step] + 100, 2)),
                ("order", step.ToString(CultureInfo.InvariantCulture))
            );
        }
    }
}
