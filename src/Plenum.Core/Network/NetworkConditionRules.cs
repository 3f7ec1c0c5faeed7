using System.Globalization;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Network;

/// <summary>What must hold for the date conditions of activities.</summary>
public static class NetworkConditionRules
{
    /// <summary>Pairs of which the second date must not lie before the first.</summary>
    private static readonly (ColumnDefinition Earlier, ColumnDefinition Later)[] InOrder =
    [
        (ActivityTable.StartNoEarlier, ActivityTable.StartNoLater),
        (ActivityTable.StartNoEarlier, ActivityTable.FinishNoLater),
        (ActivityTable.FinishNoEarlier, ActivityTable.FinishNoLater),
        (ActivityTable.StartNoEarlier, ActivityTable.StartOn),
        (ActivityTable.StartNoEarlier, ActivityTable.FinishOn),
        (ActivityTable.FinishNoEarlier, ActivityTable.FinishOn),
        (ActivityTable.StartOn, ActivityTable.StartNoLater),
        (ActivityTable.StartOn, ActivityTable.FinishNoLater),
        (ActivityTable.StartOn, ActivityTable.FinishOn),
        (ActivityTable.FinishOn, ActivityTable.FinishNoLater),
    ];

    /// <summary>
    /// Conditions of one activity do not contradict each other; an on date is a working day of the activity's calendar; what
    /// is required is not required before the project starts.
    /// </summary>
    /// <param name="activities">The activities.</param>
    /// <param name="projectStart">First day of the project, where it is given.</param>
    /// <param name="calendarOfRow">The calendar of each activity's row.</param>
    /// <param name="faults">Receives what is wrong.</param>
    public static void Check(
        Table activities,
        DateOnly? projectStart,
        Func<int, WorkCalendar> calendarOfRow,
        IRowFaults faults
    )
    {
        var required = activities.Ints(ActivityTable.RequiredBy);
        for (var row = 0; row < activities.Count; row++)
        {
            CheckOrder(activities, row, faults);
            CheckOnDates(activities, row, calendarOfRow, faults);
            if (
                required[row] != Cell.NoInt
                && projectStart is { } start
                && required[row] < start.DayNumber
            )
            {
                faults.Add(
                    activities,
                    row,
                    ActivityTable.RequiredBy,
                    "a date on or after the project's start",
                    $"{activities.Codes[row]} is required by {Day(required[row])}, before the project starts on {Day(start.DayNumber)}"
                );
            }
        }
    }

    private static void CheckOrder(Table activities, int row, IRowFaults faults)
    {
        foreach (var (earlier, later) in InOrder)
        {
            var first = activities.Ints(earlier)[row];
            var second = activities.Ints(later)[row];
            if (first != Cell.NoInt && second != Cell.NoInt && second < first)
            {
                faults.Add(
                    activities,
                    row,
                    later,
                    $"a date on or after {earlier.Name}",
                    $"the conditions of {activities.Codes[row]} contradict each other: {later.Name} {Day(second)} lies before {earlier.Name} {Day(first)}"
                );
            }
        }
    }

    private static void CheckOnDates(
        Table activities,
        int row,
        Func<int, WorkCalendar> calendarOfRow,
        IRowFaults faults
    )
    {
        var startOn = activities.Ints(ActivityTable.StartOn)[row];
        var finishOn = activities.Ints(ActivityTable.FinishOn)[row];
        if (startOn == Cell.NoInt && finishOn == Cell.NoInt)
        {
            return;
        }

        var calendar = calendarOfRow(row);
        var startIsWorked = IsWorked(ActivityTable.StartOn, startOn);
        var finishIsWorked = IsWorked(ActivityTable.FinishOn, finishOn);
        if (!startIsWorked || !finishIsWorked || startOn == Cell.NoInt || finishOn < startOn)
        {
            return;
        }

        var days = calendar.NumberOfDay(finishOn) - calendar.NumberOfDay(startOn - 1);
        var duration = activities.Ints(ActivityTable.Duration)[row];
        if (days != duration && !(duration == 0 && startOn == finishOn))
        {
            faults.Add(
                activities,
                row,
                ActivityTable.FinishOn,
                "dates that are as far apart as the duration, or only one of them",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"the conditions of {activities.Codes[row]} contradict each other: from {Day(startOn)} to {Day(finishOn)} are {days} working days, and the duration is {duration}"
                )
            );
        }

        bool IsWorked(ColumnDefinition column, int day)
        {
            if (day == Cell.NoInt || calendar.IsWorking(DateOnly.FromDayNumber(day)))
            {
                return true;
            }

            faults.Add(
                activities,
                row,
                column,
                "a working day of the activity's calendar",
                $"{Day(day)} is not a working day in the calendar of {activities.Codes[row]}"
            );
            return false;
        }
    }

    private static string Day(int day) =>
        DateOnly.FromDayNumber(day).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
