using System.Globalization;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Foundation.Time;

/// <summary>What must hold for reporting periods.</summary>
public static class TimeRules
{
    /// <summary>Every calendar has a working day: in its week, or as a dated exception.</summary>
    public static void CheckCalendars(Table calendars, Table days, IRowFaults faults)
    {
        HashSet<int> withWorkedDay = [];
        for (var row = 0; row < days.Count; row++)
        {
            if (days.Ints(CalendarDayTable.Working)[row] == 1)
            {
                withWorkedDay.Add(days.Ints(CalendarDayTable.Calendar)[row]);
            }
        }

        for (var row = 0; row < calendars.Count; row++)
        {
            if (
                calendars.Ints(CalendarTable.Working)[row] == 0
                && !withWorkedDay.Contains(calendars.Ids[row])
            )
            {
                faults.Add(
                    calendars,
                    row,
                    CalendarTable.Working,
                    "a week with a working day, or dated days that are worked",
                    $"calendar {calendars.Codes[row]} has no working day"
                );
            }
        }
    }

    public static void Check(Table periods, DateOnly? projectStart, IRowFaults faults)
    {
        var ends = periods.Ints(PeriodTable.End).ToArray();
        int[] order = [.. Enumerable.Range(0, ends.Length).OrderBy(row => ends[row])];
        for (var i = 1; i < order.Length; i++)
        {
            if (ends[order[i]] == ends[order[i - 1]])
            {
                faults.Add(
                    periods,
                    order[i],
                    PeriodTable.End,
                    "an end of its own for each period",
                    $"period {periods.Codes[order[i]]} ends on the same day as period {periods.Codes[order[i - 1]]}"
                );
            }
        }

        if (order.Length > 0 && projectStart is { } start && ends[order[0]] < start.DayNumber)
        {
            faults.Add(
                periods,
                order[0],
                PeriodTable.End,
                "an end on or after the project's start",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"period {periods.Codes[order[0]]} ends before the project starts on {start:yyyy-MM-dd}"
                )
            );
        }
    }
}
