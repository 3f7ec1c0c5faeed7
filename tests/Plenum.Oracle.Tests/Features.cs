using Plenum.Oracle.Model;
using Plenum.Oracle.Tables;

namespace Plenum.Oracle.Tests;

/// <summary>Names what a generated project uses.</summary>
internal static class Features
{
    private static readonly string[] Spreads = ["even", "falling", "rising", "s_shaped"];
    private static readonly string[] StatusFields =
    [
        "started",
        "finished",
        "percent",
        "units_done",
        "quantity",
        "etc",
    ];

    public static IReadOnlyList<string> All { get; } =
    [
        .. Spreads.Select(spread => $"spread {spread} under way"),
        .. StatusFields.Select(field => $"{field} reported"),
        .. StatusFields.Select(field => $"{field} withdrawn"),
        "technique a/b under way",
        "milestones done",
        "milestone withdrawn",
        "milestone without planned date",
        "milestones in a package without dates",
        "weight with decimals",
        "item step whole",
        "item step in part",
        "item step withdrawn",
        "items without hours",
        "apportioned",
        "apportioned chain",
        "level of effort",
        "no technique",
        "package without row",
        "amounts per period",
        "amounts per period and cost element",
        "no dates",
        "only one date",
        "start after the last period",
        "no working day between start and finish",
        "one day",
        "zero budget",
        "several cost elements",
        "remaining reported without budget",
        "cost to come reported and package finished",
        "units without quantity in the breakdown",
        "budget in another currency",
        "cost in another currency",
        "project in yen",
        "project in dinar",
        "accruals reversed",
        "accruals as booked",
        "credit",
        "charge to an account",
        "commitment undated",
        "commitment pending",
        "holiday",
        "working weekend",
        "no calendar named",
        "no project start",
        "no status date",
        "no accounts",
        "account above account",
        "two accounts on one element",
        "account on a package",
        "account named",
        "package without account",
        "package without account where accounts lie above",
        "account by unit among several",
        "unit tree",
        "group under group",
        "package in no group",
        "undistributed",
        "allowances",
        "postings back from undistributed",
        "planning package",
        "childless branch",
        "order of sisters",
        "one period",
        "status rows in disorder",
    ];

    public static IEnumerable<string> Of(TextProject project, Facts facts) =>
        [
            .. OfPlans(project, facts),
            .. OfStatus(facts),
            .. OfCost(project, facts),
            .. OfStructure(project, facts),
        ];

    private static IEnumerable<string> OfPlans(TextProject project, Facts facts)
    {
        foreach (var package in facts.Packages)
        {
            var row = project
                .Rows("packages")
                .SingleOrDefault(row => row["package"] == package.Code);
            var underWay = facts.Periods.Any(period =>
                period.End >= package.Start && period.End < package.Finish
            );
            var spreads =
                package.Technique
                is Technique.Percent
                    or Technique.Units
                    or Technique.Items
                    or Technique.LevelOfEffort;
            var days = package is { Start: { } s, Finish: { } f }
                ? facts.Calendar.WorkingDays(s, f)
                : -1;
            yield return underWay && spreads ? $"spread {package.Spread} under way" : "";
            yield return underWay && Technique.ShareAtStart(package.Technique) is not null
                ? "technique a/b under way"
                : "";
            yield return package.Technique == Technique.Apportioned ? "apportioned" : "";
            yield return package.Technique == Technique.LevelOfEffort ? "level of effort" : "";
            yield return package.Technique.Length == 0 && row is not null ? "no technique" : "";
            yield return row is null ? "package without row" : "";
            yield return row is not null && package.Start is null && package.Finish is null
                ? "no dates"
                : "";
            yield return package.Start is null != package.Finish is null ? "only one date" : "";
            yield return package.Start > facts.Periods[^1].End ? "start after the last period" : "";
            yield return days == 0 ? "no working day between start and finish" : "";
            yield return package.Start is not null && package.Start == package.Finish
                ? "one day"
                : "";
            yield return package.TotalBudget.IsZero ? "zero budget" : "";
            yield return package.Budget.Values.Count(amount => amount > 0) > 1
                ? "several cost elements"
                : "";
            if (package.Technique == Technique.Apportioned)
            {
                yield return facts.Package(package.Base).Technique == Technique.Apportioned
                    ? "apportioned chain"
                    : "";
            }

            if (package.Technique == Technique.Milestones && package.Start is null)
            {
                yield return "milestones in a package without dates";
            }
        }

        foreach (var amount in facts.PeriodAmounts)
        {
            yield return amount.CostElement.Length == 0
                ? "amounts per period"
                : "amounts per period and cost element";
        }

        foreach (var milestone in facts.Milestones)
        {
            yield return milestone.Planned is null ? "milestone without planned date" : "";
            yield return milestone.Weight.Denominator.IsOne ? "" : "weight with decimals";
        }

        foreach (var items in facts.Items.GroupBy(item => item.Package, StringComparer.Ordinal))
        {
            yield return items.All(item => item.Hours == Ratio.Zero) ? "items without hours" : "";
        }
    }

    private static IEnumerable<string> OfStatus(Facts facts)
    {
        foreach (var report in facts.Status)
        {
            foreach (var field in StatusFields.Where(report.Fields.Has))
            {
                yield return report.Fields[field] == "-"
                    ? $"{field} withdrawn"
                    : $"{field} reported";
            }

            var package = facts.Package(report.Package);
            var costToCome = report.Fields["etc"] is not "" and not "-";
            yield return costToCome && package.TotalBudget.IsZero
                ? "remaining reported without budget"
                : "";
            yield return costToCome && Held.Finished(facts, package, report.Period.End)
                ? "cost to come reported and package finished"
                : "";
            yield return report.Fields.Has("units_done")
            && facts.Element(package.Code).Quantity is null
                ? "units without quantity in the breakdown"
                : "";
        }

        foreach (var rows in facts.Status.GroupBy(report => report.Package, StringComparer.Ordinal))
        {
            var numbers = rows.Select(report => report.Period.Number).ToList();
            yield return numbers.Order().SequenceEqual(numbers) ? "" : "status rows in disorder";
        }

        foreach (var report in facts.MilestoneStatus)
        {
            yield return report.Fields["done"] == "-" ? "milestone withdrawn" : "milestones done";
        }

        foreach (var report in facts.ItemSteps)
        {
            yield return report.Fields["quantity"] switch
            {
                "" => "item step whole",
                "-" => "item step withdrawn",
                _ => "item step in part",
            };
        }
    }

    private static IEnumerable<string> OfCost(TextProject project, Facts facts)
    {
        var currency = project.Setting("currency");
        yield return currency == "JPY" ? "project in yen" : "";
        yield return currency == "KWD" ? "project in dinar" : "";
        yield return project.Rows("budget").Any(row => row.Has("rate"))
            ? "budget in another currency"
            : "";
        yield return project.Rows("actuals").Any(row => row.Has("rate"))
            ? "cost in another currency"
            : "";
        if (
            facts.Bookings.Any(booking =>
                booking.Accrual && booking.Period.Number < facts.Periods.Count
            )
        )
        {
            yield return facts.AccrualsReversed ? "accruals reversed" : "accruals as booked";
        }

        yield return facts.Bookings.Any(booking => booking.Amount < 0) ? "credit" : "";
        yield return facts.Bookings.Any(booking =>
            facts.Accounts.Any(account => account.Code == booking.Charge)
        )
            ? "charge to an account"
            : "";
        yield return facts.Commitments.Any(commitment => commitment.Date is null)
            ? "commitment undated"
            : "";
        yield return project.Rows("commitments").Any(row => row.Has("pending"))
            ? "commitment pending"
            : "";
        yield return project.Rows("postings").Any(row => row["to"] == "undistributed")
            ? "undistributed"
            : "";
        yield return project.Rows("postings").Any(row => row["to"] == "allowances")
            ? "allowances"
            : "";
        yield return project.Rows("postings").Any(row => row["from"] == "undistributed")
            ? "postings back from undistributed"
            : "";
    }

    private static IEnumerable<string> OfStructure(TextProject project, Facts facts)
    {
        foreach (var (date, working) in facts.Calendar.Exceptions)
        {
            var usual = new Calendar(
                facts.Calendar.Working,
                new Dictionary<DateOnly, bool>()
            ).IsWorkingDay(date);
            yield return usual && !working ? "holiday" : "";
            yield return !usual && working ? "working weekend" : "";
        }

        yield return project.Setting("calendar").Length == 0 ? "no calendar named" : "";
        yield return facts.Start is null ? "no project start" : "";
        yield return facts.StatusDate is null ? "no status date" : "";
        yield return facts.Periods.Count == 1 ? "one period" : "";
        yield return facts.Accounts.Count == 0 ? "no accounts" : "";
        foreach (var account in facts.Accounts)
        {
            var others = facts.Accounts.Where(other => other != account).ToList();
            yield return facts.Element(account.Element).IsPackage ? "account on a package" : "";
            yield return others.Exists(other => other.Element == account.Element)
                ? "two accounts on one element"
                : "";
            yield return others.Exists(other =>
                other.Element != account.Element && facts.LiesWithin(other.Element, account.Element)
            )
                ? "account above account"
                : "";
        }

        foreach (var package in facts.Packages)
        {
            var account = AccountOf.Package(facts, package);
            var above = facts.Accounts.Any(one => facts.LiesWithin(package.Code, one.Element));
            yield return package.NamedAccount.Length > 0 ? "account named" : "";
            yield return account is null && facts.Accounts.Count > 0
                ? "package without account"
                : "";
            yield return account is null && above
                ? "package without account where accounts lie above"
                : "";
            yield return package.NamedAccount.Length == 0
            && account is not null
            && facts.Accounts.Count(one => one.Element == account.Element) > 1
                ? "account by unit among several"
                : "";
            yield return facts.Element(package.Code).Kind == "planning_package"
                ? "planning package"
                : "";
            yield return facts.Groupings.Keys.Any(grouping =>
                !facts.GroupOf.ContainsKey((grouping, package.Code))
            )
                ? "package in no group"
                : "";
        }

        yield return facts.Units.Any(unit => unit.Parent.Length > 0) ? "unit tree" : "";
        yield return facts.Groupings.Values.Any(groups =>
            groups.Any(group => group.Parent.Length > 0)
        )
            ? "group under group"
            : "";
        yield return facts.Elements.Any(element =>
            element.Kind == "branch" && !facts.Elements.Any(child => child.Parent == element.Code)
        )
            ? "childless branch"
            : "";
        yield return project.Rows("elements").Any(row => row.Has("order"))
            ? "order of sisters"
            : "";
    }
}
