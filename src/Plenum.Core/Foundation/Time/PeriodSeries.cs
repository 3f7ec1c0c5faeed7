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
    /// <param name="count">Number of series.</param>
    /// <param name="expectedChanges">How many changes are expected; more are taken too.</param>
    public sealed class Builder(int count, int expectedChanges = 0)
    {
        private readonly int[] start = new int[count];
        private readonly int[] length = new int[count];
        private int[] period = new int[Math.Max(16, expectedChanges)];
        private long[] change = new long[Math.Max(16, expectedChanges)];
        private int filled;

        /// <summary>Appends a change to the series; its periods must come in ascending order.</summary>
        public void Add(int series, int atPeriod, long by)
        {
            if (by == 0)
            {
                return;
            }

            MakeRoom(1);
            if (length[series] == 0)
            {
                start[series] = filled;
            }

            length[series]++;
            period[filled] = atPeriod;
            change[filled] = by;
            filled++;
        }

        /// <summary>Fills a series that begins at 0 with its running totals at the ends of successive periods.</summary>
        public void AddTotals(int series, int firstPeriod, ReadOnlySpan<long> totals)
        {
            MakeRoom(totals.Length);
            var at = filled;
            var before = 0L;
            for (var i = 0; i < totals.Length; i++)
            {
                // a period without a change is written over by the next
                period[at] = firstPeriod + i;
                change[at] = totals[i] - before;
                at += totals[i] == before ? 0 : 1;
                before = totals[i];
            }

            start[series] = filled;
            length[series] = at - filled;
            filled = at;
        }

        private void MakeRoom(int changes)
        {
            if (filled + changes > period.Length)
            {
                var room = Math.Max(period.Length * 2, filled + changes);
                Array.Resize(ref period, room);
                Array.Resize(ref change, room);
            }
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
            period.AsSpan(start[series], length[series]);

        /// <summary>The series. The builder must not be used afterwards.</summary>
        public PeriodSeries Build()
        {
            if (filled < period.Length - (period.Length / 8))
            {
                Array.Resize(ref period, filled);
                Array.Resize(ref change, filled);
            }

            return new(start, length, period, change);
        }
    }
}
