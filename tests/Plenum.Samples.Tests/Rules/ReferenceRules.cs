using Plenum.Samples.Tests.Reading;

namespace Plenum.Samples.Tests.Rules;

/// <summary>Keys are unique and every reference names something that exists.</summary>
internal static class ReferenceRules
{
    private static readonly (string Table, string[] Key)[] _keys =
    [
        ("project", ["key"]),
        ("calendars", ["calendar"]),
        ("calendar_days", ["calendar", "date"]),
        ("periods", ["period"]),
        ("scope_revisions", ["revision"]),
        ("scope", ["item"]),
        ("scope_wordings", ["item", "revision"]),
        ("scope_phrases", ["item", "phrase"]),
        ("queries", ["query"]),
        ("trace", ["item", "element", "phrase"]),
        ("units", ["unit"]),
        ("people", ["person"]),
        ("part_types", ["part_type"]),
        ("work_sets", ["part_type", "activity"]),
        ("elements", ["code"]),
        ("not_needed", ["element", "activity"]),
        ("register", ["entry"]),
        ("accounts", ["account"]),
        ("groups", ["grouping", "group"]),
        ("group_members", ["grouping", "package"]),
        ("packages", ["package"]),
        ("budget", ["package", "cost_element"]),
        ("budget_periods", ["package", "period", "cost_element"]),
        ("milestones", ["package", "milestone"]),
        ("items", ["package", "item"]),
        ("credit_steps", ["rule", "step"]),
        ("estimate", ["package", "cost_element", "line"]),
        ("activities", ["activity"]),
        ("links", ["from", "to", "type"]),
        ("status", ["package", "period"]),
        ("activity_status", ["activity", "period"]),
        ("milestone_status", ["package", "milestone", "period"]),
        ("item_steps", ["item", "package", "step", "period"]),
        ("actuals", ["document", "line"]),
        ("commitments", ["order", "line"]),
        ("changes", ["change"]),
        ("postings", ["change", "posting"]),
    ];

    private static readonly (
        string Table,
        string Column,
        string Target,
        string Key
    )[] _references =
    [
        ("calendar_days", "calendar", "calendars", "calendar"),
        ("scope", "parent", "scope", "item"),
        ("scope", "revision", "scope_revisions", "revision"),
        ("scope", "withdrawn", "scope_revisions", "revision"),
        ("scope_wordings", "item", "scope", "item"),
        ("scope_wordings", "revision", "scope_revisions", "revision"),
        ("scope_phrases", "item", "scope", "item"),
        ("queries", "item", "scope", "item"),
        ("trace", "item", "scope", "item"),
        ("trace", "element", "elements", "code"),
        ("units", "parent", "units", "unit"),
        ("people", "unit", "units", "unit"),
        ("work_sets", "part_type", "part_types", "part_type"),
        ("elements", "parent", "elements", "code"),
        ("elements", "part_type", "part_types", "part_type"),
        ("elements", "person", "people", "person"),
        ("elements", "unit", "units", "unit"),
        ("not_needed", "element", "elements", "code"),
        ("register", "element", "elements", "code"),
        ("register", "owner", "people", "person"),
        ("accounts", "element", "elements", "code"),
        ("accounts", "unit", "units", "unit"),
        ("accounts", "manager", "people", "person"),
        ("group_members", "package", "packages", "package"),
        ("packages", "package", "elements", "code"),
        ("packages", "account", "accounts", "account"),
        ("packages", "base", "packages", "package"),
        ("budget", "package", "packages", "package"),
        ("budget_periods", "package", "packages", "package"),
        ("budget_periods", "period", "periods", "period"),
        ("milestones", "package", "packages", "package"),
        ("items", "package", "packages", "package"),
        ("estimate", "package", "packages", "package"),
        ("activities", "package", "packages", "package"),
        ("activities", "calendar", "calendars", "calendar"),
        ("status", "package", "packages", "package"),
        ("status", "period", "periods", "period"),
        ("status", "by", "people", "person"),
        ("activity_status", "activity", "activities", "activity"),
        ("activity_status", "period", "periods", "period"),
        ("milestone_status", "period", "periods", "period"),
        ("item_steps", "period", "periods", "period"),
        ("actuals", "period", "periods", "period"),
        ("commitments", "package", "packages", "package"),
        ("postings", "change", "changes", "change"),
        ("changes", "decided_by", "people", "person"),
    ];

    public static void Check(ProjectFiles files, Breaches breaches)
    {
        foreach (var (table, key) in _keys)
        {
            var seen = new HashSet<string>(StringComparer.Ordinal);
            foreach (var row in files.Rows(table))
            {
                breaches.Unless(
                    seen.Add(KeyOf(row, key)),
                    $"{row}: {KeyOf(row, key)} stands twice"
                );
                breaches.Unless(key[0] is "phrase" || row.Has(key[0]), $"{row}: no {key[0]}");
            }
        }
        foreach (var (table, column, target, key) in _references)
        {
            var known = files
                .Rows(target)
                .Select(row => row[key])
                .ToHashSet(StringComparer.Ordinal);
            foreach (var row in files.Rows(table).Where(row => row.Has(column)))
            {
                breaches.Unless(
                    known.Contains(row[column]),
                    $"{row}: {column} {row[column]} is not in {target}"
                );
            }
        }
        CheckPairs(
            files,
            breaches,
            "group_members",
            ["grouping", "group"],
            "groups",
            ["grouping", "group"]
        );
        CheckPairs(
            files,
            breaches,
            "milestone_status",
            ["package", "milestone"],
            "milestones",
            ["package", "milestone"]
        );
        CheckPairs(
            files,
            breaches,
            "item_steps",
            ["package", "item"],
            "items",
            ["package", "item"]
        );
        CheckLinksAndCharges(files, breaches);
        CheckWords(files, breaches);
    }

    private static void CheckPairs(
        ProjectFiles files,
        Breaches breaches,
        string table,
        string[] columns,
        string target,
        string[] keys
    )
    {
        var known = files
            .Rows(target)
            .Select(row => KeyOf(row, keys))
            .ToHashSet(StringComparer.Ordinal);
        foreach (var row in files.Rows(table))
        {
            breaches.Unless(
                known.Contains(KeyOf(row, columns)),
                $"{row}: {KeyOf(row, columns)} is not in {target}"
            );
        }
    }

    /// <summary>A package with activities is linked by them; one without by its own code. Charges name either.</summary>
    private static void CheckLinksAndCharges(ProjectFiles files, Breaches breaches)
    {
        var withActivities = files
            .Rows("activities")
            .Select(row => row["package"])
            .ToHashSet(StringComparer.Ordinal);
        var ends = files
            .Rows("activities")
            .Select(row => row["activity"])
            .ToHashSet(StringComparer.Ordinal);
        ends.UnionWith(files.Packages.Keys.Where(code => !withActivities.Contains(code)));
        foreach (var row in files.Rows("links"))
        {
            breaches.Unless(
                ends.Contains(row["from"]) && ends.Contains(row["to"]),
                $"{row}: no such activity"
            );
            breaches.Unless(row["from"] != row["to"], $"{row}: a link to itself");
        }
        var accounts = files
            .Rows("accounts")
            .Select(row => row["account"])
            .ToHashSet(StringComparer.Ordinal);
        string[] places = ["contract", "reserve", "undistributed", "allowances"];
        foreach (var row in files.Rows("actuals"))
        {
            var charge = row["charge"];
            breaches.Unless(
                files.Packages.ContainsKey(charge) != accounts.Contains(charge),
                $"{row}: charge {charge}"
            );
        }
        foreach (var row in files.Rows("postings"))
        {
            breaches.Unless(
                places.Contains(row["from"]) || accounts.Contains(row["from"]),
                $"{row}: from"
            );
            breaches.Unless(
                places.Contains(row["to"]) || accounts.Contains(row["to"]),
                $"{row}: to"
            );
            breaches.Unless(
                row["from"] != row["to"] && row.Decimal("amount") > 0,
                $"{row}: moves nothing"
            );
        }
    }

    private static void CheckWords(ProjectFiles files, Breaches breaches)
    {
        Among(
            "scope",
            "kind",
            "deliverable",
            "requirement",
            "exclusion",
            "assumption",
            "constraint",
            "acceptance"
        );
        Among("elements", "kind", "project", "branch", "work_package", "planning_package");
        Among("register", "kind", "opportunity", "constraint", "risk", "interface");
        Among("packages", "spread", "even", "falling", "rising", "s_shaped", "periods");
        Among("links", "type", "FS", "SS", "FF", "SF");
        Among("actuals", "kind", "invoiced", "accrual");
        foreach (var table in (string[])["budget", "actuals", "commitments", "estimate"])
        {
            Among(table, "cost_element", "labour", "material", "equipment", "subcontract", "other");
        }

        void Among(string table, string column, params string[] words)
        {
            foreach (var row in files.Rows(table))
            {
                breaches.Unless(words.Contains(row[column]), $"{row}: {column} \"{row[column]}\"");
            }
        }
    }

    private static string KeyOf(CsvRow row, string[] key) =>
        string.Join(" / ", key.Select(column => row[column]));
}
