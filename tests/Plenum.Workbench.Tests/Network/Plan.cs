using System.Globalization;
using Plenum.Core;
using Plenum.Oracle.Tables;
using Plenum.Workbench.Questions;
using Plenum.Workbench.Tests.Oracle;

namespace Plenum.Workbench.Tests.Network;

/// <summary>
/// A plan as text tables, for tests to read like plans: activities, links, progress. It starts on Monday 5 January 2026, works
/// Monday to Friday, and its weekly periods T1 to T40 end on Sundays.
/// </summary>
internal sealed class Plan
{
    public static readonly DateOnly Start = new(2026, 1, 5);

    private readonly TextProject text = new();

    public Plan(string? statusDate = null, string? progress = null, string? start = "2026-01-05")
    {
        Setting("code", "J");
        if (start is not null)
        {
            Setting("start", start);
        }

        if (statusDate is not null)
        {
            Setting("status_date", statusDate);
        }

        if (progress is not null)
        {
            Setting("progress", progress);
        }

        for (var week = 1; week <= 40; week++)
        {
            text.Add(
                "periods",
                ("period", "T" + week.ToString(CultureInfo.InvariantCulture)),
                ("end", Iso(Start.AddDays((7 * week) - 1)))
            );
        }

        text.Add("elements", ("code", "J"), ("parent", ""), ("name", "Job"));
        text.Add("elements", ("code", "J.1"), ("parent", "J"), ("name", "Work"));
    }

    public Plan Setting(string key, string value)
    {
        text.Add("project", ("key", key), ("value", value));
        return this;
    }

    public Plan Calendar(string code, string week, params (string Date, bool Working)[] days)
    {
        text.Add("calendars", ("calendar", code), ("working", week));
        foreach (var (date, working) in days)
        {
            text.Add(
                "calendar_days",
                ("calendar", code),
                ("date", date),
                ("working", working ? "1" : "0")
            );
        }

        return this;
    }

    /// <summary>A package with baseline dates, or without if none are given, of a technique.</summary>
    public Plan Package(
        string code,
        string? start = null,
        string? finish = null,
        string technique = "percent",
        string budget = ""
    )
    {
        text.Add("elements", ("code", code), ("parent", "J"), ("name", "Package " + code));
        text.Add(
            "packages",
            ("package", code),
            ("technique", technique),
            ("start", start ?? ""),
            ("finish", finish ?? "")
        );
        if (budget.Length > 0)
        {
            text.Add("budget", ("package", code), ("cost_element", "labour"), ("amount", budget));
        }

        return this;
    }

    /// <param name="code">Its code, and its name.</param>
    /// <param name="duration">Working days.</param>
    /// <param name="conditions">Columns of the table with their values.</param>
    public Plan Activity(
        string code,
        int duration,
        params (string Column, string Value)[] conditions
    )
    {
        var row = text.Add(
            "activities",
            ("activity", code),
            ("package", "J.1"),
            ("name", "Activity " + code),
            ("duration", duration.ToString(CultureInfo.InvariantCulture))
        );
        foreach (var (column, value) in conditions)
        {
            row[column] = value;
        }

        return this;
    }

    public Plan Link(string from, string to, string type = "FS", int lag = 0)
    {
        text.Add(
            "links",
            ("from", from),
            ("to", to),
            ("type", type),
            ("lag", lag.ToString(CultureInfo.InvariantCulture))
        );
        return this;
    }

    /// <summary>Progress of an activity, or of a package that is its own.</summary>
    public Plan Report(
        string code,
        int week,
        string? started = null,
        string? finished = null,
        int? remaining = null
    )
    {
        var isActivity = text.Rows("activities").Any(row => row["activity"] == code);
        text.Add(
            isActivity ? "activity_status" : "status",
            (isActivity ? "activity" : "package", code),
            ("period", "T" + week.ToString(CultureInfo.InvariantCulture)),
            ("started", started ?? ""),
            ("finished", finished ?? ""),
            ("remaining", remaining?.ToString(CultureInfo.InvariantCulture) ?? "")
        );
        return this;
    }

    public Project Import() => Answers.Import(text);

    public NetworkAnswer Ask() => new NetworkQuestion().Ask(Import());

    /// <summary>The activity of a code.</summary>
    public ActivityRow Of(string code) => Ask().Activities.Single(row => row.Code == code);

    /// <summary>The codes of which a rule of the audit finds something.</summary>
    public IEnumerable<string> Found(string rule) =>
        new CheckQuestion(rule).Ask(Import()).Findings.Select(finding => finding.Code);

    public static DateOnly Day(int month, int day) => new(2026, month, day);

    public static string Iso(DateOnly date) =>
        date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
