using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Forecast;

/// <summary>
/// Earned schedule of a row, in periods of its own: period 1 is the first in which it has planned value. ES is the
/// time at which the plan had earned what is earned now: with PV(N) ≤ EV &lt; PV(N+1), ES = N + (EV − PV(N)) ÷
/// (PV(N+1) − PV(N)); once everything planned is earned, the period in which the plan was complete. Source: Lipke and
/// Henderson, Earned Schedule Training, 2006; SPI(t) = ES ÷ AT, forecast = planned duration ÷ SPI(t).
/// </summary>
/// <param name="Whole">Whole periods of ES.</param>
/// <param name="Part">Numerator of its fraction.</param>
/// <param name="Of">Denominator of its fraction, positive.</param>
/// <param name="ActualPeriods">
/// AT: periods of the row up to the date, or up to the one in which everything planned was first earned.
/// </param>
/// <param name="PlannedPeriods">Periods until the plan is complete.</param>
/// <param name="FirstPeriod">Index of the row's period 1.</param>
public readonly record struct EarnedSchedule(
    int Whole,
    long Part,
    long Of,
    int ActualPeriods,
    int PlannedPeriods,
    int FirstPeriod
)
{
    /// <summary>False for a row that never has planned value.</summary>
    public bool HasPlan => PlannedPeriods > 0;

    /// <summary>ES in periods; no value for a row without a plan.</summary>
    public decimal? Periods => HasPlan ? Whole + ((decimal)Part / Of) : null;

    /// <summary>AT in periods; no value for a row without a plan.</summary>
    public int? AtPeriods => HasPlan ? ActualPeriods : null;

    /// <summary>SPI(t) = ES ÷ AT; no value before the row's first period has ended.</summary>
    public decimal? SchedulePerformance =>
        HasPlan && ActualPeriods > 0 ? Periods / ActualPeriods : null;

    /// <param name="plannedChanges">Changes of planned value in each period.</param>
    /// <param name="earnedChanges">Changes of earned value in each period.</param>
    /// <param name="period">Index of the period at whose end it is taken; −1 before the first.</param>
    public static EarnedSchedule At(
        ReadOnlySpan<long> plannedChanges,
        ReadOnlySpan<long> earnedChanges,
        int period
    )
    {
        var first = plannedChanges.IndexOfAnyExcept(0L);
        if (first < 0)
        {
            return default;
        }

        var last = plannedChanges.LastIndexOfAnyExcept(0L);
        var planned = Sum(plannedChanges);
        var earned = Sum(earnedChanges[..(period + 1)]);
        var plannedPeriods = last - first + 1;
        var passed = Math.Max(
            0,
            Math.Min(FirstReached(earnedChanges, planned), period) - first + 1
        );
        if (earned >= planned)
        {
            return new EarnedSchedule(plannedPeriods, 0, 1, passed, plannedPeriods, first);
        }

        var whole = 0;
        var before = 0L;
        while (before + plannedChanges[first + whole] <= earned)
        {
            before += plannedChanges[first + whole];
            whole++;
        }

        return new EarnedSchedule(
            whole,
            earned - before,
            plannedChanges[first + whole],
            passed,
            plannedPeriods,
            first
        );
    }

    /// <summary>
    /// The date on which the work ends if it goes on at this pace: planned duration ÷ SPI(t) periods after the row's
    /// first period began, read within the days of the period in which it falls; beyond the last period, further ones
    /// as long as the last. No value without SPI(t), where the first period has no beginning, or after the year 9999.
    /// </summary>
    public DateOnly? ForecastFinish(PeriodTimeline periods)
    {
        if (
            !HasPlan
            || ActualPeriods == 0
            || (Whole == 0 && Part == 0)
            || periods.Begin(FirstPeriod) is null
        )
        {
            return null;
        }

        var earned = new ExactFraction(((System.Numerics.BigInteger)Whole * Of) + Part, Of);
        var duration =
            new ExactFraction((System.Numerics.BigInteger)PlannedPeriods * ActualPeriods, 1)
            / earned;
        if (duration.Numerator / duration.Denominator > DateOnly.MaxValue.DayNumber)
        {
            return null;
        }

        var wholePeriods = duration.Floor();
        var rest = duration + new ExactFraction(-wholePeriods, 1);
        return rest.Numerator.IsZero
            ? EndOf(periods, FirstPeriod + wholePeriods - 1)
            : Within(periods, FirstPeriod + wholePeriods, rest);
    }

    private static long Sum(ReadOnlySpan<long> changes)
    {
        var total = 0L;
        foreach (var change in changes)
        {
            total += change;
        }

        return total;
    }

    private static int FirstReached(ReadOnlySpan<long> earnedChanges, long planned)
    {
        var earned = 0L;
        for (var period = 0; period < earnedChanges.Length; period++)
        {
            earned += earnedChanges[period];
            if (earned >= planned)
            {
                return period;
            }
        }

        return earnedChanges.Length;
    }

    private static DateOnly? EndOf(PeriodTimeline periods, long index)
    {
        if (index < periods.Count)
        {
            return periods.End((int)index);
        }

        return LengthOfLast(periods) is { } days
            ? AddDays(periods.End(periods.Count - 1), (index - periods.Count + 1) * days)
            : null;
    }

    private static DateOnly? Within(PeriodTimeline periods, long index, ExactFraction part)
    {
        var begin =
            index < periods.Count ? periods.Begin((int)index)
            : EndOf(periods, index - 1) is { } before ? AddDays(before, 1)
            : null;
        var days =
            index < periods.Count
                ? periods.End((int)index).DayNumber - begin!.Value.DayNumber + 1
                : LengthOfLast(periods);
        if (begin is null || days is null)
        {
            return null;
        }

        // the day on which the instant falls: a part of a day counts as that day
        var day = -(new ExactFraction(-days.Value, 1) * part).Floor();
        return AddDays(begin.Value, day - 1);
    }

    private static int? LengthOfLast(PeriodTimeline periods) =>
        periods.Begin(periods.Count - 1) is { } begin
            ? periods.End(periods.Count - 1).DayNumber - begin.DayNumber + 1
            : null;

    private static DateOnly? AddDays(DateOnly date, long days) =>
        date.DayNumber + days is var number && number <= DateOnly.MaxValue.DayNumber
            ? DateOnly.FromDayNumber((int)number)
            : null;
}
