using System.Runtime.InteropServices;

namespace Plenum.Core.Foundation.Time;

/// <summary>
/// Amounts of many series (packages by cost element) over periods, kept as what changes in a period. A series that
/// has nothing costs eight bytes.
/// </summary>
public sealed class PeriodSeries
{
    private readonly int[] start;
    private readonly int[] length;
    private readonly int[] period;
    private readonly long[] change;

    private PeriodSeries(int[] start, int[] length, int[] period, long[] change)
    {
        this.start = start;
        this.length = length;
        this.period = period;
        this.change = change;
    }

    public int Count => start.Length;

    /// <summary>Periods in which a series changes, ascending.</summary>
    public ReadOnlySpan<int> PeriodsOf(int series) => period.AsSpan(start[series], length[series]);

    /// <summary>By how much it changes in each of <see cref="PeriodsOf"/>.</summary>
    public ReadOnlySpan<long> ChangesOf(int series) => change.AsSpan(start[series], length[series]);

    /// <summary>Running total of a series at a period's end; 0 before the first.</summary>
    public long At(int series, int atPeriod)
    {
        var total = 0L;
        var end = start[series] + length[series];
        for (var i = start[series]; i < end && period[i] <= atPeriod; i++)
        {
            total += change[i];
        }

        return total;
    }

    /// <summary>Adds what changes in each period to an array with one place for each period.</summary>
    public void AddChangesTo(int series, Span<long> byPeriod)
    {
        var end = start[series] + length[series];
        for (var i = start[series]; i < end; i++)
        {
            byPeriod[period[i]] += change[i];
        }
    }

    /// <summary>Fills a <see cref="PeriodSeries"/>; series may be filled in any order, each once.</summary>
    public sealed class Builder(int count)
    {
        private readonly int[] start = new int[count];
        private readonly int[] length = new int[count];
        private readonly List<int> period = [];
        private readonly List<long> change = [];

        /// <summary>Appends a change to the series; its periods must come in ascending order.</summary>
        public void Add(int series, int atPeriod, long by)
        {
            if (by == 0)
            {
                return;
            }

            if (length[series] == 0)
            {
                start[series] = period.Count;
            }

            length[series]++;
            period.Add(atPeriod);
            change.Add(by);
        }

        /// <summary>Running total of a series that is complete already.</summary>
        public long At(int series, int atPeriod)
        {
            var total = 0L;
            for (
                var i = start[series];
                i < start[series] + length[series] && period[i] <= atPeriod;
                i++
            )
            {
                total += change[i];
            }

            return total;
        }

        /// <summary>Periods in which a complete series changes.</summary>
        public ReadOnlySpan<int> PeriodsOf(int series) =>
            CollectionsMarshal.AsSpan(period).Slice(start[series], length[series]);

        public PeriodSeries Build() => new(start, length, [.. period], [.. change]);
    }
}
