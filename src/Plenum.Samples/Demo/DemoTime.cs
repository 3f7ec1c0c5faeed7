using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo;

/// <summary>A reporting period of the demo.</summary>
/// <param name="Name">Its key.</param>
/// <param name="End">Its last day.</param>
/// <param name="LastWorkDay">The last working day on or before its end, see <see cref="DemoTime.Site"/>.</param>
internal sealed record DemoPeriod(string Name, DateOnly End, int LastWorkDay);

/// <summary>
/// Calendars and periods of the demo. Months as far as the status date; what lies beyond stands in two long periods,
/// to be cut into months as the work comes nearer.
/// </summary>
internal static class DemoTime
{
    public static readonly DateOnly Start = new(2026, 3, 1);
    public static readonly DateOnly StatusDate = new(2027, 8, 31);

    /// <summary>How many periods have status and cost.</summary>
    public const int Closed = 18;

    private static readonly DateOnly[] _later = [new(2028, 8, 31), new(2028, 12, 31)];

    /// <summary>Days off, and one Saturday worked.</summary>
    public static IReadOnlyDictionary<DateOnly, (bool Working, string Note)> SiteDays { get; } =
        ReadSiteDays();

    /// <summary>Days on which marine works rest, whatever the weekday.</summary>
    public static IReadOnlyList<DateOnly> WinterStop { get; } =
        Enumerable
            .Range(2026, 4)
            .SelectMany(year =>
                Enumerable.Range(0, 32).Select(day => new DateOnly(year, 12, 15).AddDays(day))
            )
            .ToList();

    /// <summary>The project's own calendar, Monday to Friday with the site's holidays, from its start on.</summary>
    public static WorkDays Site { get; } =
        new(
            Start,
            new(2030, 12, 31),
            "1111100",
            SiteDays.ToDictionary(day => day.Key, day => day.Value.Working)
        );

    public static IReadOnlyList<DemoPeriod> Periods { get; } = ReadPeriods();

    public static int StatusWorkDay => Periods[Closed - 1].LastWorkDay;

    /// <summary>The period in which the working day lies, counted from 0.</summary>
    public static int PeriodOf(int workDay)
    {
        var period = 0;
        while (Periods[period].LastWorkDay < workDay)
        {
            period++;
        }
        return period;
    }

    public static DateOnly Date(int workDay) => Site[workDay];

    private static List<DemoPeriod> ReadPeriods()
    {
        var ends = new List<DateOnly>();
        for (var month = 1; month <= Closed; month++)
        {
            ends.Add(Start.AddMonths(month).AddDays(-1));
        }
        ends.AddRange(_later);
        return ends.ConvertAll(end => new DemoPeriod(
            $"P{ends.IndexOf(end) + 1:00}",
            end,
            Site.OnOrBefore(end)
        ));
    }

    private static SortedDictionary<DateOnly, (bool Working, string Note)> ReadSiteDays()
    {
        // Easter Sundays of the years in question.
        DateOnly[] easter =
        [
            new(2026, 4, 5),
            new(2027, 3, 28),
            new(2028, 4, 16),
            new(2029, 4, 1),
            new(2030, 4, 21),
        ];
        var days = new SortedDictionary<DateOnly, (bool, string)>();
        foreach (var sunday in easter)
        {
            days[new(sunday.Year, 1, 1)] = (false, "New Year");
            days[sunday.AddDays(-2)] = (false, "Good Friday");
            days[sunday.AddDays(1)] = (false, "Easter Monday");
            days[new(sunday.Year, 5, 1)] = (false, "May Day");
            days[new(sunday.Year, 12, 24)] = (false, "Christmas Eve");
            days[new(sunday.Year, 12, 25)] = (false, "Christmas Day");
            days[new(sunday.Year, 12, 26)] = (false, "Second Day of Christmas");
            days[new(sunday.Year, 12, 31)] = (false, "New Year's Eve");
        }
        days[new(2027, 6, 12)] = (true, "Saturday worked for the hall crane");
        return days;
    }
}
