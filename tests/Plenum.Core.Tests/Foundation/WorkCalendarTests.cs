using CsCheck;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Tests.Foundation;

public class WorkCalendarTests
{
    private static readonly DateOnly First = new(1995, 1, 1);

    private static readonly Gen<(bool[] Pattern, Dictionary<DateOnly, bool> Exceptions)> Calendars =
        Gen.Select(
            Gen.Bool.Array[7].Where(pattern => pattern.Contains(true)),
            Gen.Select(Gen.Int[0, 9_000], Gen.Bool).List[0, 30],
            (pattern, days) =>
            {
                Dictionary<DateOnly, bool> exceptions = [];
                foreach (var (day, working) in days)
                {
                    exceptions[First.AddDays(day)] = working;
                }

                return (pattern, exceptions);
            }
        );

    [Fact]
    public void Working_days_in_a_span_are_those_that_a_walk_over_the_days_counts() =>
        Gen.Select(Calendars, Gen.Int[0, 9_000], Gen.Int[0, 400])
            .Sample(
                (calendar, from, length) =>
                {
                    var work = new WorkCalendar(calendar.Pattern, calendar.Exceptions);
                    var start = First.AddDays(from);
                    var counted = Enumerable
                        .Range(0, length)
                        .Count(day => IsWorked(calendar, start.AddDays(day)));
                    return work.WorkingDays(start, start.AddDays(length - 1)) == counted;
                }
            );

    [Fact]
    public void Number_and_date_of_a_working_day_lead_back_to_each_other() =>
        Gen.Select(Calendars, Gen.Int[0, 9_000])
            .Sample(
                (calendar, day) =>
                {
                    var work = new WorkCalendar(calendar.Pattern, calendar.Exceptions);
                    var date = First.AddDays(day);
                    return !work.IsWorking(date) || work.DateOf(work.NumberOf(date)) == date;
                }
            );

    [Fact]
    public void A_calendar_without_exceptions_follows_its_week_alone()
    {
        var work = WorkCalendar.MondayToFriday;
        Assert.True(work.IsWorking(new DateOnly(2026, 3, 2)));
        Assert.False(work.IsWorking(new DateOnly(2026, 3, 1)));
        Assert.Equal(22, work.WorkingDays(new DateOnly(2026, 3, 1), new DateOnly(2026, 3, 31)));
    }

    [Fact]
    public void A_span_that_ends_before_it_begins_has_no_working_day() =>
        Assert.Equal(
            0,
            WorkCalendar.MondayToFriday.WorkingDays(
                new DateOnly(2026, 3, 3),
                new DateOnly(2026, 3, 2)
            )
        );

    private static bool IsWorked(
        (bool[] Pattern, Dictionary<DateOnly, bool> Exceptions) calendar,
        DateOnly date
    ) =>
        calendar.Exceptions.TryGetValue(date, out var working)
            ? working
            : calendar.Pattern[((int)date.DayOfWeek + 6) % 7];
}
