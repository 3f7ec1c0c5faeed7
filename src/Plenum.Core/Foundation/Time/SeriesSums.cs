namespace Plenum.Core.Foundation.Time;

/// <summary>Sums bookings that come in any order into a <see cref="PeriodSeries"/>. Time: sorting the bookings.</summary>
public sealed class SeriesSums(int count)
{
    private readonly List<int> series = [];
    private readonly List<int> periods = [];
    private readonly List<long> amounts = [];

    public void Add(int toSeries, int period, long amount)
    {
        series.Add(toSeries);
        periods.Add(period);
        amounts.Add(amount);
    }

    public PeriodSeries Build()
    {
        var start = new int[count + 1];
        foreach (var one in series)
        {
            start[one + 1]++;
        }

        for (var one = 0; one < count; one++)
        {
            start[one + 1] += start[one];
        }

        var place = start.AsSpan(0, count).ToArray();
        var bookedIn = new int[series.Count];
        var booked = new long[series.Count];
        for (var i = 0; i < series.Count; i++)
        {
            var at = place[series[i]]++;
            bookedIn[at] = periods[i];
            booked[at] = amounts[i];
        }

        var result = new PeriodSeries.Builder(count);
        for (var one = 0; one < count; one++)
        {
            var length = start[one + 1] - start[one];
            if (length > 0)
            {
                AddSummed(
                    one,
                    bookedIn.AsSpan(start[one], length),
                    booked.AsSpan(start[one], length),
                    result
                );
            }
        }

        return result.Build();
    }

    private static void AddSummed(
        int one,
        Span<int> bookedIn,
        Span<long> booked,
        PeriodSeries.Builder result
    )
    {
        bookedIn.Sort(booked);
        var total = 0L;
        for (var i = 0; i < booked.Length; i++)
        {
            total += booked[i];
            if (i + 1 == booked.Length || bookedIn[i + 1] != bookedIn[i])
            {
                result.Add(one, bookedIn[i], total);
                total = 0;
            }
        }
    }
}
