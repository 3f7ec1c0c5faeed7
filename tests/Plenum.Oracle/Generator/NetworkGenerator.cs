using System.Globalization;
using Plenum.Oracle.Tables;

namespace Plenum.Oracle.Generator;

/// <summary>
/// Small networks as text tables, from a seed: all link types with lags and leads, several calendars with holidays, date
/// conditions, progress that may be out of sequence, packages that are their own activity. They keep to all rules of an
/// import.
/// </summary>
public sealed class NetworkGenerator
{
    private static readonly string[] Weeks =
    [
        "1111111",
        "1111100",
        "1111110",
        "1010100",
        "0111110",
    ];

    private readonly Dice dice;
    private readonly TextProject text = new();
    private readonly Dictionary<string, (string Week, Dictionary<DateOnly, bool> Days)> calendars =
        new(StringComparer.Ordinal);
    private readonly DateOnly start;
    private readonly string own;
    private readonly List<DateOnly> ends = [];

    private NetworkGenerator(int seed)
    {
        dice = new Dice(seed);
        start = new DateOnly(2026, 3, 2).AddDays(dice.Between(0, 6));
        own = dice.Pick("", "K0", "K1", "K2");
    }

    public static TextProject Project(int seed) => new NetworkGenerator(seed).Make();

    private TextProject Make()
    {
        Setting("code", "N");
        Setting("start", Iso(start));
        if (own.Length > 0)
        {
            Setting("calendar", own);
        }

        if (dice.Chance(60))
        {
            Setting("status_date", Iso(start.AddDays(dice.Between(0, 40))));
        }

        if (dice.Chance(50))
        {
            Setting("progress", dice.Pick("logic_holds", "progress_rules"));
        }

        AddCalendars();
        for (var period = 1; period <= 6; period++)
        {
            ends.Add(start.AddDays((7 * period) - 1));
            text.Add("periods", ("period", Code("T", period)), ("end", Iso(ends[^1])));
        }

        text.Add("elements", ("code", "N"), ("name", "Network"), ("kind", "project"));
        text.Add(
            "elements",
            ("code", "N.0"),
            ("parent", "N"),
            ("name", "Linked work"),
            ("kind", "work_package")
        );
        var codes = AddActivities();
        AddLinks(codes);
        return text;
    }

    private void AddCalendars()
    {
        for (var number = 0; number < 3; number++)
        {
            var code = Code("K", number);
            var week = dice.Pick(Weeks);
            Dictionary<DateOnly, bool> days = [];
            for (var count = dice.Between(0, 5); count > 0; count--)
            {
                days[start.AddDays(dice.Between(-10, 90))] = dice.Chance(25);
            }

            if (dice.Chance(25))
            {
                var stop = start.AddDays(dice.Between(0, 60));
                for (var day = 0; day < 9; day++)
                {
                    days[stop.AddDays(day)] = false;
                }
            }

            calendars[code] = (week, days);
            text.Add("calendars", ("calendar", code), ("working", week));
            foreach (var (day, working) in days)
            {
                text.Add(
                    "calendar_days",
                    ("calendar", code),
                    ("date", Iso(day)),
                    ("working", working ? "1" : "0")
                );
            }
        }
    }

    private List<string> AddActivities()
    {
        List<string> codes = [];
        var count = dice.Between(1, 9);
        for (var number = 0; number < count; number++)
        {
            if (dice.Chance(20))
            {
                codes.Add(AddPackage(number));
            }
            else
            {
                codes.Add(AddActivity(number));
            }
        }

        if (text.Rows("activities").Count == 0)
        {
            codes.Add(AddActivity(count));
        }

        return codes;
    }

    private string AddPackage(int number)
    {
        var code = "N." + Code("", number + 1);
        text.Add(
            "elements",
            ("code", code),
            ("parent", "N"),
            ("name", "Package"),
            ("kind", "work_package")
        );
        var from = start.AddDays(dice.Between(0, 30));
        if (dice.Chance(90))
        {
            text.Add(
                "packages",
                ("package", code),
                ("start", Iso(from)),
                ("finish", Iso(from.AddDays(dice.Between(0, 14))))
            );
        }

        AddProgress("status", "package", code);
        return code;
    }

    private string AddActivity(int number)
    {
        var code = Code("A", number);
        var calendar = dice.Pick("", "", "K0", "K1", "K2");
        var row = text.Add(
            "activities",
            ("activity", code),
            ("package", "N.0"),
            ("duration", Number(dice.Chance(20) ? 0 : dice.Between(1, 9))),
            ("calendar", calendar)
        );
        foreach (
            var condition in new[]
            {
                "start_no_earlier",
                "start_no_later",
                "finish_no_earlier",
                "finish_no_later",
                "start_on",
                "finish_on",
            }
        )
        {
            row[condition] = "";
        }

        AddConditions(row, calendar.Length > 0 ? calendar : own);
        AddProgress("activity_status", "activity", code);
        return code;
    }

    private void AddConditions(TextRow row, string calendar)
    {
        var day = start.AddDays(dice.Between(0, 45));
        switch (dice.Between(1, 20))
        {
            case 1 or 2:
                row["start_no_earlier"] = Iso(day);
                break;
            case 3:
                row["finish_no_earlier"] = Iso(day);
                break;
            case 4:
                row["start_no_later"] = Iso(day);
                break;
            case 5:
                row["finish_no_later"] = Iso(day);
                break;
            case 6:
                row["start_no_earlier"] = Iso(day);
                row["finish_no_later"] = Iso(day.AddDays(dice.Between(0, 12)));
                break;
            case 7:
                row["start_on"] = Iso(OnWorkingDay(day, calendar));
                break;
            case 8:
                row["finish_on"] = Iso(OnWorkingDay(day, calendar));
                break;
        }
    }

    private DateOnly OnWorkingDay(DateOnly day, string calendar)
    {
        var (week, days) = calendar.Length > 0 ? calendars[calendar] : ("1111100", []);
        while (
            days.TryGetValue(day, out var working)
                ? !working
                : week[((int)day.DayOfWeek + 6) % 7] == '0'
        )
        {
            day = day.AddDays(1);
        }

        return day;
    }

    private void AddProgress(string table, string key, string code)
    {
        var begun = dice.Between(0, 12);
        if (begun > 4)
        {
            return;
        }

        var period = dice.Between(0, ends.Count - 1);
        var started = dice.Day(start.AddDays(-2), ends[period]);
        var row = text.Add(
            table,
            (key, code),
            ("period", Code("T", period + 1)),
            ("started", Iso(started)),
            ("finished", ""),
            ("remaining", "")
        );
        switch (begun)
        {
            case 0 or 1:
                row["finished"] = Iso(dice.Day(started, ends[period]));
                return;
            case 2:
                row["remaining"] = Number(dice.Between(0, 8));
                break;
        }

        if (period + 1 < ends.Count && dice.Chance(40))
        {
            var later = text.Add(
                table,
                (key, code),
                ("period", Code("T", period + 2)),
                ("started", dice.Chance(10) ? "-" : ""),
                ("finished", ""),
                ("remaining", dice.Pick("", "-", Number(dice.Between(1, 5))))
            );
            if (later["started"].Length == 0 && dice.Chance(40))
            {
                later["finished"] = Iso(dice.Day(started, ends[period + 1]));
                later["remaining"] = "";
            }
        }
    }

    private void AddLinks(List<string> codes)
    {
        var order = dice.Shuffled(codes.Count);
        var chance = dice.Pick(15, 30, 60);
        for (var to = 1; to < codes.Count; to++)
        {
            for (var from = 0; from < to; from++)
            {
                foreach (var type in new[] { "FS", "SS", "FF", "SF" })
                {
                    if (dice.Chance(type == "FS" ? chance : chance / 3))
                    {
                        text.Add(
                            "links",
                            ("from", codes[order[from]]),
                            ("to", codes[order[to]]),
                            ("type", type == "FS" && dice.Chance(50) ? "" : type),
                            ("lag", dice.Chance(50) ? "" : Number(dice.Between(-4, 6)))
                        );
                    }
                }
            }
        }
    }

    private void Setting(string key, string value) =>
        text.Add("project", ("key", key), ("value", value));

    private static string Code(string letter, int number) => letter + Number(number);

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Iso(DateOnly date) =>
        date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
