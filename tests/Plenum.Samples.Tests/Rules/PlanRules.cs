using System.Globalization;
using Plenum.Samples.Tests.Reading;

namespace Plenum.Samples.Tests.Rules;

/// <summary>Breakdown, accounts, budgets and baseline hold together.</summary>
internal static class PlanRules
{
    public static void Check(ProjectFiles files, Breaches breaches)
    {
        CheckTree(files, breaches);
        CheckAccounts(files, breaches);
        CheckBudgets(files, breaches);
        CheckPackages(files, breaches);
        CheckMilestonesAndItems(files, breaches);
        CheckLinks(files, breaches);
        CheckLedger(files, breaches);
    }

    public static bool IsPair(string technique, out int first)
    {
        first = 0;
        var parts = technique.Split('/');
        return parts.Length == 2
            && int.TryParse(parts[0], CultureInfo.InvariantCulture, out first)
            && int.TryParse(parts[1], CultureInfo.InvariantCulture, out var second)
            && first + second == 100;
    }

    private static void CheckTree(ProjectFiles files, Breaches breaches)
    {
        breaches.Unless(files.Children[""].Count() == 1, "there must be one root");
        var reached = files.Below(files.Children[""].First()["code"]).Count() + 1;
        breaches.Unless(
            reached == files.Elements.Count,
            $"{reached} of {files.Elements.Count} elements hang on the root"
        );
        foreach (var row in files.Rows("elements"))
        {
            var isPackage = row["kind"] is "work_package" or "planning_package";
            breaches.Unless(
                !isPackage || !files.Children[row["code"]].Any(),
                $"{row}: a package with children"
            );
            breaches.Unless(
                isPackage == files.Packages.ContainsKey(row["code"]),
                $"{row}: kind and packages disagree"
            );
            breaches.Unless(
                row["kind"] == "project" == (row["parent"].Length == 0),
                $"{row}: only the root is the project"
            );
            breaches.Unless(
                !files.Children[row["code"]].Any() || row.Has("split"),
                $"{row}: children without split logic"
            );
            breaches.Unless(
                !row.Has("quantity") || row.Decimal("quantity") > 0,
                $"{row}: quantity"
            );
            TwoDecimals(row, breaches, "allotted", "allotted_hours");
        }
    }

    private static void CheckAccounts(ProjectFiles files, Breaches breaches)
    {
        var elements = files
            .Rows("accounts")
            .Select(row => row["element"])
            .ToHashSet(StringComparer.Ordinal);
        foreach (var row in files.Rows("accounts"))
        {
            var above = files
                .Upwards(row["element"])
                .Skip(1)
                .Any(element => elements.Contains(element["code"]));
            breaches.Unless(!above, $"{row}: an account stands above it");
        }
        foreach (var row in files.Rows("packages").Where(row => row.Has("account")))
        {
            var element = files
                .Rows("accounts")
                .Single(account => account["account"] == row["account"])["element"];
            var holds = files.Upwards(row["package"]).Any(at => at["code"] == element);
            breaches.Unless(holds, $"{row}: its account stands elsewhere");
        }
    }

    private static void CheckBudgets(ProjectFiles files, Breaches breaches)
    {
        foreach (var row in files.Rows("budget").Concat(files.Rows("actuals")))
        {
            TwoDecimals(row, breaches, "amount", "hours");
            breaches.Unless(
                row.Has("currency") == row.Has("rate"),
                $"{row}: currency and rate go together"
            );
            breaches.Unless(
                row["currency"] != "JPY" || row.Decimal("amount") % 1 == 0,
                $"{row}: yen have no decimals"
            );
            breaches.Unless(
                row["cost_element"] == "labour" == row.Has("hours"),
                $"{row}: hours belong to labour"
            );
        }
        var amounts = files
            .Rows("budget_periods")
            .ToLookup(row => row["package"], StringComparer.Ordinal);
        foreach (var (code, package) in files.Packages)
        {
            breaches.Unless(
                package["spread"] == "periods" == amounts.Contains(code),
                $"{package}: spread and amounts by period"
            );
            var rows = amounts[code].ToList();
            breaches.Unless(
                rows.Sum(row => row.Decimal("amount"))
                    == (rows.Count == 0 ? 0 : files.Budgets[code]),
                $"{package}: amounts by period"
            );
            breaches.Unless(
                rows.TrueForAll(row => row.Has("cost_element"))
                    || !rows.Exists(row => row.Has("cost_element")),
                $"{package}: mixed rows"
            );
            foreach (
                var group in rows.Where(row => row.Has("cost_element"))
                    .GroupBy(row => row["cost_element"], StringComparer.Ordinal)
            )
            {
                var budget = files
                    .BudgetLines[code]
                    .Where(row => row["cost_element"] == group.Key)
                    .Sum(ProjectFiles.Converted);
                breaches.Unless(
                    group.Sum(row => row.Decimal("amount")) == budget,
                    $"{package}: {group.Key} by period"
                );
            }
            foreach (var row in rows)
            {
                var touches =
                    files.PeriodStart(row["period"]) <= package.Date("finish")
                    && files.PeriodEnds[row["period"]] >= package.Date("start");
                breaches.Unless(touches, $"{row}: the period does not touch the package");
                TwoDecimals(row, breaches, "amount");
            }
        }
    }

    private static void CheckPackages(ProjectFiles files, Breaches breaches)
    {
        string[] words = ["milestones", "percent", "units", "items", "loe", "apportioned"];
        foreach (var (code, row) in files.Packages)
        {
            var technique = row["technique"];
            breaches.Unless(
                words.Contains(technique) || IsPair(technique, out _),
                $"{row}: technique {technique}"
            );
            breaches.Unless(
                row.Date("start") >= files.Start && row.Date("finish") >= row.Date("start"),
                $"{row}: dates"
            );
            breaches.Unless(
                files.IsWorking(row.Date("start")) && files.IsWorking(row.Date("finish")),
                $"{row}: starts or ends on a day off"
            );
            breaches.Unless(technique == "apportioned" == row.Has("base"), $"{row}: base");
            breaches.Unless(
                technique != "units" || files.Elements[code].Has("quantity"),
                $"{row}: units without quantity"
            );
            var seen = new HashSet<string>(StringComparer.Ordinal) { code };
            for (var at = row; at.Has("base"); at = files.Packages[at["base"]])
            {
                breaches.Unless(files.Budgets[at["base"]] > 0, $"{row}: a base without budget");
                if (!seen.Add(at["base"]))
                {
                    breaches.Unless(false, $"{row}: the bases form a ring");
                    break;
                }
            }
        }
    }

    private static void CheckMilestonesAndItems(ProjectFiles files, Breaches breaches)
    {
        foreach (
            var group in files
                .Rows("milestones")
                .GroupBy(row => row["package"], StringComparer.Ordinal)
        )
        {
            var package = files.Packages[group.Key];
            breaches.Unless(
                package["technique"] == "milestones",
                $"{package}: milestones of another technique"
            );
            breaches.Unless(group.Sum(row => row.Decimal("weight")) == 100, $"{package}: weights");
            foreach (var date in group.Select(row => row.DateOrNone("planned")).OfType<DateOnly>())
            {
                breaches.Unless(
                    date >= package.Date("start") && date <= package.Date("finish"),
                    $"{package}: milestone on {date}"
                );
            }
        }
        var milestones = files
            .Rows("milestones")
            .Select(row => row["package"])
            .ToHashSet(StringComparer.Ordinal);
        var items = files
            .Rows("items")
            .Select(row => row["package"])
            .ToHashSet(StringComparer.Ordinal);
        foreach (var row in files.Packages.Values)
        {
            breaches.Unless(
                row["technique"] != "milestones" || milestones.Contains(row["package"]),
                $"{row}: no milestone"
            );
            breaches.Unless(
                row["technique"] == "items" == items.Contains(row["package"]),
                $"{row}: items"
            );
        }
        foreach (
            var rule in files
                .Rows("credit_steps")
                .GroupBy(row => row["rule"], StringComparer.Ordinal)
        )
        {
            breaches.Unless(rule.Sum(row => row.Decimal("percent")) == 100, $"{rule.Key}: steps");
        }
        var steps = files
            .Rows("credit_steps")
            .Select(row => (row["rule"], row["step"]))
            .ToHashSet();
        var rules = files.Rows("items").ToDictionary(row => row["item"], StringComparer.Ordinal);
        foreach (var row in files.Rows("item_steps"))
        {
            var item = rules[row["item"]];
            breaches.Unless(steps.Contains((item["rule"], row["step"])), $"{row}: no such step");
            breaches.Unless(
                !row.Has("quantity") || row.Decimal("quantity") <= item.Decimal("quantity"),
                $"{row}: more than there is"
            );
        }
    }

    private static void CheckLinks(ProjectFiles files, Breaches breaches)
    {
        var after = files
            .Rows("links")
            .ToLookup(row => row["from"], row => row["to"], StringComparer.Ordinal);
        var waiting = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var row in files.Rows("links"))
        {
            waiting.TryAdd(row["from"], 0);
            waiting[row["to"]] = waiting.GetValueOrDefault(row["to"]) + 1;
        }
        var ready = new Queue<string>(
            waiting.Where(pair => pair.Value == 0).Select(pair => pair.Key)
        );
        var done = 0;
        for (; ready.TryDequeue(out var code); done++)
        {
            foreach (var next in after[code])
            {
                if (--waiting[next] == 0)
                {
                    ready.Enqueue(next);
                }
            }
        }
        breaches.Unless(done == waiting.Count, "the links form a ring");
    }

    /// <summary>Each account holds in the ledger what its packages hold; the baseline and the reserve are the contract.</summary>
    private static void CheckLedger(ProjectFiles files, Breaches breaches)
    {
        var balance = new Dictionary<string, decimal>(StringComparer.Ordinal);
        foreach (var row in files.Rows("postings"))
        {
            TwoDecimals(row, breaches, "amount");
            balance[row["from"]] = balance.GetValueOrDefault(row["from"]) - row.Decimal("amount");
            balance[row["to"]] = balance.GetValueOrDefault(row["to"]) + row.Decimal("amount");
            var holds = row["from"] == "contract" || balance[row["from"]] >= 0;
            breaches.Unless(holds, $"{row}: more is taken than is there");
        }
        var held = files
            .Packages.Keys.GroupBy(code => files.AccountOf[code], StringComparer.Ordinal)
            .ToDictionary(
                group => group.Key,
                group => group.Sum(code => files.Budgets[code]),
                StringComparer.Ordinal
            );
        foreach (var account in files.Rows("accounts").Select(row => row["account"]))
        {
            var distributed = balance.GetValueOrDefault(account);
            var sum = held.GetValueOrDefault(account);
            breaches.Unless(
                distributed == sum,
                $"{account}: {distributed} distributed, {sum} in its packages"
            );
        }
        breaches.Unless(balance.Values.Sum() == 0, "the ledger does not balance");
    }

    public static void TwoDecimals(CsvRow row, Breaches breaches, params string[] columns)
    {
        foreach (var column in columns.Where(row.Has))
        {
            var value = row.Decimal(column);
            breaches.Unless(
                value == Math.Round(value, 2),
                $"{row}: {column} {row[column]} has too many decimals"
            );
        }
    }
}
