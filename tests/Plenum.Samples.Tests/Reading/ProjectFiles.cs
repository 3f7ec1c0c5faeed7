using System.Globalization;

namespace Plenum.Samples.Tests.Reading;

/// <summary>A project read from its folder, with the look-ups that checks need.</summary>
internal sealed class ProjectFiles
{
    private static readonly string[] _names =
    [
        "project",
        "calendars",
        "calendar_days",
        "periods",
        "scope_revisions",
        "scope",
        "scope_wordings",
        "scope_phrases",
        "queries",
        "trace",
        "units",
        "people",
        "part_types",
        "work_sets",
        "elements",
        "not_needed",
        "register",
        "accounts",
        "delegations",
        "groups",
        "group_members",
        "packages",
        "budget",
        "budget_periods",
        "milestones",
        "items",
        "credit_steps",
        "estimate",
        "activities",
        "links",
        "status",
        "activity_status",
        "milestone_status",
        "item_steps",
        "actuals",
        "commitments",
        "changes",
        "postings",
    ];

    private readonly Dictionary<string, CsvTable> _tables;
    private readonly HashSet<DateOnly> _off = [];
    private readonly HashSet<DateOnly> _on = [];
    private readonly string _pattern;

    public ProjectFiles(string folder)
    {
        _tables = _names.ToDictionary(
            name => name,
            name => CsvTable.Read(Path.Combine(folder, name + ".csv")),
            StringComparer.Ordinal
        );
        Settings = Rows("project")
            .ToDictionary(row => row["key"], row => row["value"], StringComparer.Ordinal);
        Elements = Rows("elements").ToDictionary(row => row["code"], StringComparer.Ordinal);
        Children = Rows("elements").ToLookup(row => row["parent"], StringComparer.Ordinal);
        Packages = Rows("packages").ToDictionary(row => row["package"], StringComparer.Ordinal);
        PeriodEnds = Rows("periods")
            .ToDictionary(row => row["period"], row => row.Date("end"), StringComparer.Ordinal);
        Periods = PeriodEnds.Keys.OrderBy(period => PeriodEnds[period]).ToList();
        BudgetLines = Rows("budget").ToLookup(row => row["package"], StringComparer.Ordinal);
        Budgets = Packages.Keys.ToDictionary(
            code => code,
            code => BudgetLines[code].Sum(Converted),
            StringComparer.Ordinal
        );
        var calendar = Settings["calendar"];
        _pattern = Rows("calendars").Single(row => row["calendar"] == calendar)["working"];
        foreach (var day in Rows("calendar_days").Where(row => row["calendar"] == calendar))
        {
            (day["working"] == "1" ? _on : _off).Add(day.Date("date"));
        }
        AccountOf = Packages.Keys.ToDictionary(code => code, FindAccount, StringComparer.Ordinal);
    }

    public static IReadOnlyList<string> TableNames => _names;

    public Dictionary<string, string> Settings { get; }
    public Dictionary<string, CsvRow> Elements { get; }
    public ILookup<string, CsvRow> Children { get; }
    public Dictionary<string, CsvRow> Packages { get; }
    public Dictionary<string, DateOnly> PeriodEnds { get; }
    public List<string> Periods { get; }
    public ILookup<string, CsvRow> BudgetLines { get; }

    /// <summary>By package, in the project's currency.</summary>
    public Dictionary<string, decimal> Budgets { get; }

    /// <summary>By package; empty where no account holds it.</summary>
    public Dictionary<string, string> AccountOf { get; }

    public DateOnly StatusDate =>
        DateOnly.ParseExact(Settings["status_date"], "yyyy-MM-dd", CultureInfo.InvariantCulture);

    public DateOnly Start =>
        DateOnly.ParseExact(Settings["start"], "yyyy-MM-dd", CultureInfo.InvariantCulture);

    public List<CsvRow> Rows(string table) => _tables[table].Rows;

    public CsvTable Table(string table) => _tables[table];

    /// <summary>The row's amount in the project's currency, rounded once, half away from zero.</summary>
    public static decimal Converted(CsvRow row) =>
        row.Has("rate")
            ? Math.Round(
                row.Decimal("amount") * row.Decimal("rate"),
                2,
                MidpointRounding.AwayFromZero
            )
            : row.Decimal("amount");

    /// <summary>The element and all above it, the element first.</summary>
    public IEnumerable<CsvRow> Upwards(string code)
    {
        for (var at = code; at.Length > 0; at = Elements[at]["parent"])
        {
            yield return Elements[at];
        }
    }

    public IEnumerable<CsvRow> Below(string code) =>
        Children[code].SelectMany(child => Below(child["code"]).Prepend(child));

    /// <summary>Budget of all packages at and below an element.</summary>
    public decimal BudgetOf(string code) =>
        Budgets.GetValueOrDefault(code)
        + Below(code).Sum(row => Budgets.GetValueOrDefault(row["code"]));

    public bool IsWorking(DateOnly day) =>
        !_off.Contains(day) && (_on.Contains(day) || _pattern[((int)day.DayOfWeek + 6) % 7] == '1');

    public int WorkingDays(DateOnly from, DateOnly to)
    {
        var days = 0;
        for (var day = from; day <= to; day = day.AddDays(1))
        {
            days += IsWorking(day) ? 1 : 0;
        }
        return days;
    }

    /// <summary>The first day of a period.</summary>
    public DateOnly PeriodStart(string period)
    {
        var at = Periods.IndexOf(period);
        return at == 0 ? Start : PeriodEnds[Periods[at - 1]].AddDays(1);
    }

    public string UnitOf(string package) =>
        Upwards(package).Select(row => row["unit"]).FirstOrDefault(unit => unit.Length > 0, "");

    private string FindAccount(string package)
    {
        if (Packages[package].Has("account"))
        {
            return Packages[package]["account"];
        }
        var byElement = Rows("accounts").ToLookup(row => row["element"], StringComparer.Ordinal);
        var holder = Upwards(package).FirstOrDefault(row => byElement.Contains(row["code"]));
        if (holder is null)
        {
            return "";
        }
        var accounts = byElement[holder["code"]].ToList();
        var unit = UnitOf(package);
        return accounts.Find(row => row["unit"] == unit)?["account"]
            ?? (accounts.Count == 1 ? accounts[0]["account"] : "");
    }
}
