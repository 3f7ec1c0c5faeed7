using Plenum.Core.Forecast;

namespace Plenum.Core.Tests.Forecast;

/// <summary>
/// Twelve months planned, fifteen taken: Lipke, "Schedule is Different", The Measurable News 2003, notional late-finish
/// project (series from memory); ES and SPI(t) computed with the formulas of Lipke and Henderson 2006.
/// </summary>
public class EarnedScheduleTests
{
    private static readonly long[] Planned =
    [
        105,
        200,
        515,
        845,
        1175,
        1475,
        1805,
        2135,
        2435,
        2665,
        2760,
        2823,
        2823,
        2823,
        2823,
    ];

    private static readonly long[] Earned =
    [
        95,
        180,
        470,
        770,
        1065,
        1315,
        1610,
        1900,
        2150,
        2275,
        2425,
        2555,
        2695,
        2770,
        2823,
    ];

    [Theory]
    [InlineData(1, "0.9048", "0.9048")]
    [InlineData(2, "1.7895", "0.8947")]
    [InlineData(3, "2.8571", "0.9524")]
    [InlineData(9, "8.0500", "0.8944")]
    [InlineData(10, "8.4667", "0.8467")]
    [InlineData(13, "10.3158", "0.7935")]
    [InlineData(14, "11.1587", "0.7971")]
    [InlineData(15, "12.0000", "0.8000")]
    public void A_late_project_keeps_its_delay_in_earned_schedule(
        int month,
        string periods,
        string performance
    )
    {
        var schedule = EarnedSchedule.At(Changes(Planned), Changes(Earned), month - 1);
        Assert.Equal(
            Number(periods),
            Math.Round(schedule.Periods!.Value, 4, MidpointRounding.AwayFromZero)
        );
        Assert.Equal(
            Number(performance),
            Math.Round(schedule.SchedulePerformance!.Value, 4, MidpointRounding.AwayFromZero)
        );
    }

    [Fact]
    public void Time_stops_in_the_period_in_which_everything_planned_was_first_earned()
    {
        var schedule = EarnedSchedule.At([10, 10, 0, 0], [0, 10, 10, 0], 3);
        Assert.Equal(2m, schedule.Periods);
        Assert.Equal(3, schedule.AtPeriods);
    }

    [Fact]
    public void A_row_without_a_plan_has_no_earned_schedule()
    {
        var schedule = EarnedSchedule.At([0, 0], [0, 0], 1);
        Assert.Null(schedule.Periods);
        Assert.Null(schedule.AtPeriods);
        Assert.Null(schedule.SchedulePerformance);
    }

    [Fact]
    public void Before_its_first_period_a_row_has_no_time_performance()
    {
        var schedule = EarnedSchedule.At([0, 0, 10], [0, 5, 0], 1);
        Assert.Equal(0.5m, schedule.Periods);
        Assert.Equal(0, schedule.AtPeriods);
        Assert.Null(schedule.SchedulePerformance);
    }

    private static long[] Changes(long[] totals) =>
        [.. totals.Select((total, month) => total - (month == 0 ? 0 : totals[month - 1]))];

    private static decimal Number(string text) =>
        decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
