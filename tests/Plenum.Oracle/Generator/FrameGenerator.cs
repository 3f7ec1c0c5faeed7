using System.Globalization;

namespace Plenum.Oracle.Generator;

/// <summary>Makes up the project's own settings, its calendar and its periods.</summary>
internal static class FrameGenerator
{
    private static readonly string[] CalendarNames = ["site", "yard"];

    public static void AddTo(Draft draft)
    {
        var dice = draft.Dice;
        draft.Currency = dice.Pick("EUR", "EUR", "USD", "JPY", "KWD", "NOK");
        Set(draft, "code", "P-" + dice.Between(1, 999));
        Set(draft, "name", "Tank farm, second \"stage\"");
        Set(draft, "currency", draft.Currency);
        AddPeriods(draft);
        draft.HasStart = dice.Chance(75);
        if (draft.HasStart)
        {
            Set(draft, "start", Draft.Iso(draft.FirstDay));
        }

        AddCalendars(draft);
        if (dice.Chance(60))
        {
            Set(draft, "accruals", dice.Pick("reversed", "as_booked"));
        }

        draft.PeriodsReported = dice.Chance(10) ? 0 : dice.Between(1, draft.Periods.Count);
        if (dice.Chance(70))
        {
            Set(draft, "status_date", Draft.Iso(StatusDate(draft)));
        }
    }

    private static void Set(Draft draft, string key, string value) =>
        draft.Text.Add("project", ("key", key), ("value", value));

    private static void AddPeriods(Draft draft)
    {
        var dice = draft.Dice;
        var begin = new DateOnly(2025, 1, 1).AddDays(dice.Between(0, 500));
        var usual = dice.Pick(5, 7, 14, 28, 30);
        var count = dice.Between(1, 12);
        for (var number = 1; number <= count; number++)
        {
            var days = dice.Chance(60) ? usual : dice.Between(1, 45);
            var end = begin.AddDays(days - 1);
            var code = number.ToString(CultureInfo.InvariantCulture);
            draft.Periods.Add(new DraftPeriod("M" + code, begin, end));
            draft.Text.Add("periods", ("period", "M" + code), ("end", Draft.Iso(end)));
            begin = end.AddDays(1);
        }
    }

    private static DateOnly StatusDate(Draft draft)
    {
        var usual =
            draft.PeriodsReported == 0
                ? draft.FirstDay
                : draft.Periods[draft.PeriodsReported - 1].End;
        return draft.Dice.Chance(60)
            ? usual
            : draft.Dice.Day(draft.FirstDay, draft.LastDay.AddDays(20));
    }

    private static void AddCalendars(Draft draft)
    {
        var dice = draft.Dice;
        var exceptions = new Dictionary<DateOnly, bool>();
        foreach (var name in CalendarNames.Take(dice.Between(0, 2)))
        {
            var working = dice.Pick(
                "1111100",
                "1111110",
                "1111111",
                "1010101",
                "0000011",
                "0111001",
                "1000000"
            );
            draft.Text.Add("calendars", ("calendar", name), ("working", working), ("name", ""));
            exceptions.Clear();
            for (var i = dice.Between(0, 25); i > 0; i--)
            {
                var date = dice.Day(draft.FirstDay.AddDays(-5), draft.LastDay.AddDays(40));
                exceptions[date] = dice.Chance(30);
            }

            foreach (var (date, isWorking) in exceptions)
            {
                draft.Text.Add(
                    "calendar_days",
                    ("calendar", name),
                    ("date", Draft.Iso(date)),
                    ("working", isWorking ? "1" : "0"),
                    ("note", isWorking ? "shift" : "holiday")
                );
            }

            if (draft.Text.Setting("calendar").Length == 0 && dice.Chance(70))
            {
                draft.Calendar = new Model.Calendar(working, exceptions.ToDictionary());
                Set(draft, "calendar", name);
            }
        }
    }
}
