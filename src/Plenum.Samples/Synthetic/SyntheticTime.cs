using System.Globalization;
using Plenum.Samples.Foundation;

namespace Plenum.Samples.Synthetic;

/// <summary>Months, calendar and status date of every synthetic project.</summary>
internal static class SyntheticTime
{
    public const int Periods = 40;

    /// <summary>How many periods have status and cost.</summary>
    public const int Closed = 26;

    public static readonly DateOnly Start = new(2026, 1, 1);

    public static IReadOnlyDictionary<DateOnly, bool> Holidays { get; } =
        Enumerable
            .Range(2026, 4)
            .SelectMany(year =>
                new DateOnly[]
                {
                    new(year, 1, 1),
                    new(year, 5, 1),
                    new(year, 12, 25),
                    new(year, 12, 26),
                }
            )
            .ToDictionary(day => day, _ => false);

    public static WorkDays Site { get; } = new(Start, new(2029, 12, 31), "1111100", Holidays);

    /// <summary>The last working day of each period.</summary>
    public static IReadOnlyList<int> LastWorkDay { get; } =
        Enumerable.Range(0, Periods).Select(period => Site.OnOrBefore(End(period))).ToList();

    public static IReadOnlyList<string> Names { get; } =
        Enumerable
            .Range(1, Periods)
            .Select(number => string.Create(CultureInfo.InvariantCulture, $"P{number:00}"))
            .ToList();

    public static int StatusWorkDay => LastWorkDay[Closed - 1];

    private static readonly int[] _periodOf = MakePeriods();

    public static DateOnly End(int period) => Start.AddMonths(period + 1).AddDays(-1);

    /// <summary>The period (from 0) of a working day of the project.</summary>
    public static int PeriodOf(int workDay) => _periodOf[workDay];

    private static int[] MakePeriods()
    {
        var periods = new int[LastWorkDay[^1] + 1];
        var period = 0;
        for (var day = 0; day < periods.Length; day++)
        {
            period += day > LastWorkDay[period] ? 1 : 0;
            periods[day] = period;
        }
        return periods;
    }
}
