using System.Globalization;
using Plenum.Oracle.Tables;

namespace Plenum.Oracle.Network;

/// <summary>An activity as the tables give it, with the progress that holds at the status date.</summary>
public sealed record Activity(
    string Code,
    int Duration,
    DayWalk Calendar,
    DateOnly? StartNoEarlier,
    DateOnly? StartNoLater,
    DateOnly? FinishNoEarlier,
    DateOnly? FinishNoLater,
    DateOnly? StartOn,
    DateOnly? FinishOn,
    DateOnly? Started,
    DateOnly? Finished,
    int? Remaining
)
{
    public bool IsFinished => Finished is not null;

    public bool IsUnderWay => Started is not null && Finished is null;

    /// <summary>A date that an on condition gives; a start on a date means nothing once work has begun.</summary>
    public bool IsFixed =>
        !IsFinished && ((StartOn is not null && Started is null) || FinishOn is not null);
}

/// <summary>A link between two activities of the list.</summary>
public sealed record Link(int From, int To, string Type, int Lag)
{
    public bool LeavesFinish => Type[0] == 'F';

    public bool LeadsToStart => Type[1] == 'S';
}

/// <summary>A network read from text tables, by docs/files.md, without the engine.</summary>
public sealed class NetworkFacts
{
    public NetworkFacts(TextProject text)
    {
        Start = Date(text.Setting("start"))!.Value;
        StatusDate = Date(text.Setting("status_date"));
        LogicHolds = text.Setting("progress") != "progress_rules";
        var calendars = text.Rows("calendars")
            .ToDictionary(
                row => row["calendar"],
                row => new DayWalk(
                    row["working"],
                    text.Rows("calendar_days")
                        .Where(day => day["calendar"] == row["calendar"])
                        .ToDictionary(day => Date(day["date"])!.Value, day => day["working"] == "1")
                ),
                StringComparer.Ordinal
            );
        var own = text.Setting("calendar") is { Length: > 0 } named
            ? calendars[named]
            : new DayWalk("1111100", new Dictionary<DateOnly, bool>());
        List<Activity> activities = [];
        foreach (var row in text.Rows("activities"))
        {
            var progress = Progress(text, "activity_status", "activity", row["activity"]);
            activities.Add(
                new Activity(
                    row["activity"],
                    Whole(row["duration"])!.Value,
                    row.Has("calendar") ? calendars[row["calendar"]] : own,
                    Date(row["start_no_earlier"]),
                    Date(row["start_no_later"]),
                    Date(row["finish_no_earlier"]),
                    Date(row["finish_no_later"]),
                    Date(row["start_on"]),
                    Date(row["finish_on"]),
                    Date(progress("started")),
                    Date(progress("finished")),
                    Whole(progress("remaining"))
                )
            );
        }

        foreach (var element in text.Rows("elements").Where(row => row["kind"] == "work_package"))
        {
            var code = element["code"];
            if (text.Rows("activities").Any(row => row["package"] == code))
            {
                continue;
            }

            var row = text.Rows("packages").SingleOrDefault(row => row["package"] == code);
            var progress = Progress(text, "status", "package", code);
            var isDated = row?.Has("start") == true && row.Has("finish");
            activities.Add(
                new Activity(
                    code,
                    isDated
                        ? own.DaysIn(Date(row!["start"])!.Value, Date(row["finish"])!.Value)
                        : 0,
                    own,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    Date(progress("started")),
                    Date(progress("finished")),
                    Whole(progress("remaining"))
                )
            );
        }

        Activities = activities;
        Links =
        [
            .. text.Rows("links")
                .Select(row => new Link(
                    IndexOf(row["from"]),
                    IndexOf(row["to"]),
                    row.Has("type") ? row["type"] : "FS",
                    Whole(row["lag"]) ?? 0
                )),
        ];
    }

    public DateOnly Start { get; }

    public DateOnly? StatusDate { get; }

    public bool LogicHolds { get; }

    public IReadOnlyList<Activity> Activities { get; }

    public IReadOnlyList<Link> Links { get; }

    /// <summary>The first day on which work that is not done can be done.</summary>
    public DateOnly FirstOpenDay =>
        StatusDate is { } date && date >= Start ? date.AddDays(1) : Start;

    /// <summary>
    /// The working days that are still to be done: what was reported; else the duration less the working days since the
    /// actual start, at least one; a milestone has none.
    /// </summary>
    public int Work(Activity activity)
    {
        if (activity.Remaining is { } reported)
        {
            return reported;
        }

        return activity.Started is { } started && activity.Duration > 0
            ? Math.Max(1, activity.Duration - activity.Calendar.DaysIn(started, StatusDate!.Value))
            : activity.Duration;
    }

    /// <summary>Whether a link asks anything of its successor.</summary>
    public bool IsActive(Link link)
    {
        var from = Activities[link.From];
        var to = Activities[link.To];
        if (to.IsFinished)
        {
            return false;
        }

        var waits = LogicHolds || !to.IsUnderWay || from.IsFinished;
        return waits || !link.LeadsToStart;
    }

    private static DateOnly? Date(string text) =>
        text.Length == 0
            ? null
            : DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static int? Whole(string text) =>
        text.Length == 0 ? null : int.Parse(text, CultureInfo.InvariantCulture);

    private int IndexOf(string code)
    {
        var index = 0;
        while (Activities[index].Code != code)
        {
            index++;
        }

        return index;
    }

    /// <summary>The fields that hold at the status date; each from the last row that gives it, a hyphen takes it back.</summary>
    private Func<string, string> Progress(TextProject text, string table, string key, string code)
    {
        var rows = text.Rows(table)
            .Where(row => row[key] == code)
            .Select(row =>
                (
                    Row: row,
                    End: Date(
                        text.Rows("periods").Single(period => period["period"] == row["period"])[
                            "end"
                        ]
                    )!.Value
                )
            )
            .Where(row => row.End <= StatusDate)
            .OrderBy(row => row.End)
            .Select(row => row.Row)
            .ToList();
        return field =>
            rows.LastOrDefault(row => row.Has(field)) is { } row && row[field] != "-"
                ? row[field]
                : "";
    }
}
