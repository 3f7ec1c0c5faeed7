using System.Numerics;

namespace Plenum.Oracle.Model;

/// <summary>Earned schedule, actual time and the forecast finish of a row, in the row's own periods.</summary>
public sealed record EarnedSchedule(
    Ratio? Es,
    int? AtPeriods,
    Ratio? SpiT,
    DateOnly? ForecastFinish
)
{
    public static EarnedSchedule Nothing { get; } = new(null, null, null, null);

    /// <summary>Of a row that plans and earns as given.</summary>
    /// <param name="facts">The project's periods and start.</param>
    /// <param name="planned">The row's planned value, number i at the end of period i.</param>
    /// <param name="earned">The row's earned value, likewise.</param>
    /// <param name="now">The number of the period at whose end the answer is given; 0 before the first.</param>
    public static EarnedSchedule Of(
        Facts facts,
        IReadOnlyList<BigInteger> planned,
        IReadOnlyList<BigInteger> earned,
        int now
    )
    {
        // The row's periods: the first is the first with planned value. PV_0 is zero.
        var first = 1;
        while (first < planned.Count && planned[first].IsZero)
        {
            first++;
        }

        if (first >= planned.Count)
        {
            return Nothing;
        }

        List<BigInteger> pv = [BigInteger.Zero, .. planned.Skip(first)];
        var last = pv[^1];
        var duration = pv.IndexOf(last);
        var es = Reached(pv, duration, earned[now]);
        var time = ActualTime(earned, last, first, now);
        var spiT = Ratio.Quotient(es, Ratio.Of(time));
        return new EarnedSchedule(es, time, spiT, Finish(facts, first, duration, spiT));
    }

    private static Ratio Reached(List<BigInteger> pv, int duration, BigInteger earned)
    {
        if (earned >= pv[^1])
        {
            return Ratio.Of(duration);
        }

        var whole = pv.FindLastIndex(value => value <= earned);
        return Ratio.Of(whole) + new Ratio(earned - pv[whole], pv[whole + 1] - pv[whole]);
    }

    /// <summary>The row's periods up to now, or up to the period in which earned value first reached the last planned value.</summary>
    private static int ActualTime(
        IReadOnlyList<BigInteger> earned,
        BigInteger last,
        int first,
        int now
    )
    {
        for (var period = 1; period <= now; period++)
        {
            if (earned[period] >= last)
            {
                return Math.Max(0, period - first + 1);
            }
        }

        return Math.Max(0, now - first + 1);
    }

    /// <summary>
    /// The day on which planned duration / SPI(t) periods are over; null where the length of the first period would
    /// be needed and the project has no start, and for a day after the year 9999.
    /// </summary>
    private static DateOnly? Finish(Facts facts, int first, int duration, Ratio? spiT)
    {
        if (
            facts.Periods[first - 1].Begin is null
            || Ratio.Quotient(Ratio.Of(duration), spiT) is not { } periods
        )
        {
            return null;
        }

        var whole = periods.Floor();
        var rest = periods - Ratio.Of(whole);
        if (rest == Ratio.Zero)
        {
            return Day(facts, first, whole, days => days);
        }

        return Day(facts, first, whole + 1, days => (rest * Ratio.Of(days)).Ceiling());
    }

    /// <summary>A day of the row's nth period; its number within the period comes from the period's length in days.</summary>
    private static DateOnly? Day(
        Facts facts,
        int first,
        BigInteger n,
        Func<BigInteger, BigInteger> dayOfPeriod
    )
    {
        var number = first + n - 1;
        var lastPeriod = facts.Periods[^1];
        BigInteger begin;
        BigInteger days;
        if (number <= lastPeriod.Number)
        {
            var period = facts.Periods[(int)number - 1];
            days = Length(period);
            begin = period.Begin!.Value.DayNumber;
        }
        else
        {
            days = Length(lastPeriod);
            begin = lastPeriod.End.DayNumber + 1 + (days * (number - lastPeriod.Number - 1));
        }

        var day = begin + dayOfPeriod(days) - 1;
        return day > DateOnly.MaxValue.DayNumber ? null : DateOnly.FromDayNumber((int)day);
    }

    private static int Length(Period period) =>
        period.End.DayNumber - period.Begin!.Value.DayNumber + 1;
}
