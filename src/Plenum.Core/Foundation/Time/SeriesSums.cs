using System.Runtime.InteropServices;

namespace Plenum.Core.Foundation.Time;

/// <summary>
/// Sums bookings that come in any order into a <see cref="PeriodSeries"/>. Time: in the number of bookings, series and
/// periods.
/// </summary>
/// <param name="count">Number of series.</param>
/// <param name="periodCount">Number of periods.</param>
/// <param name="expected">How many bookings are expected; more are taken too.</param>
public sealed class SeriesSums(int count, int periodCount, int expected)
{
    private readonly List<Booking> bookings = new(expected);

    public void Add(int toSeries, int period, long amount) =>
        bookings.Add(new Booking(toSeries, period, amount));

    /// <summary>The sums. Nothing may be added afterwards.</summary>
    public PeriodSeries Build()
    {
        // both sorts keep the order of equals, so that within a series the periods ascend
        var sorted = CollectionsMarshal.AsSpan(bookings);
        var byPeriod = new Booking[sorted.Length];
        Sort(sorted, byPeriod, periodCount, bySeries: false);
        Sort(byPeriod, sorted, count, bySeries: true);
        var result = new PeriodSeries.Builder(count, sorted.Length);
        var total = 0L;
        for (var i = 0; i < sorted.Length; i++)
        {
            total += sorted[i].Amount;
            if (i + 1 == sorted.Length || !sorted[i + 1].IsBookedLike(sorted[i]))
            {
                result.Add(sorted[i].Series, sorted[i].Period, total);
                total = 0;
            }
        }

        return result.Build();
    }

    private static void Sort(ReadOnlySpan<Booking> from, Span<Booking> to, int keys, bool bySeries)
    {
        var place = new int[keys + 1];
        foreach (ref readonly var booking in from)
        {
            place[(bySeries ? booking.Series : booking.Period) + 1]++;
        }

        for (var key = 0; key < keys; key++)
        {
            place[key + 1] += place[key];
        }

        foreach (ref readonly var booking in from)
        {
            to[place[bySeries ? booking.Series : booking.Period]++] = booking;
        }
    }

    private readonly record struct Booking(int Series, int Period, long Amount)
    {
        public bool IsBookedLike(in Booking other) =>
            Series == other.Series && Period == other.Period;
    }
}
