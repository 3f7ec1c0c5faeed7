namespace Plenum.Core.Network.Live;

/// <summary>
/// How many activities finish at each instant, so that the latest is known without asking all. Instants outside the range of
/// dates count at its ends. Memory: a number for each day between the first and the last.
/// </summary>
internal sealed class FinishCounts
{
    /// <summary>Beyond the last instant that has a date before it.</summary>
    public static readonly int Beyond = DateOnly.MaxValue.DayNumber + 2;

    private int[] counts = [];
    private int first;
    private int latest = -1;

    /// <summary>The latest instant; null if nothing is counted.</summary>
    public int? Latest => latest < 0 ? null : latest + first;

    public void Add(int instant)
    {
        var at = PlaceOf(instant);
        counts[at]++;
        latest = Math.Max(latest, at);
    }

    public void Remove(int instant)
    {
        counts[PlaceOf(instant)]--;
        while (latest >= 0 && counts[latest] == 0)
        {
            latest--;
        }
    }

    private int PlaceOf(int instant)
    {
        instant = Math.Clamp(instant, 0, Beyond);
        if (counts.Length == 0)
        {
            first = instant;
        }

        if (instant < first || instant - first >= counts.Length)
        {
            Widen(instant);
        }

        return instant - first;
    }

    private void Widen(int instant)
    {
        const int Room = 1_000;
        var from = Math.Min(first, Math.Max(0, instant - Room));
        var to = Math.Max(first + counts.Length, instant + Room);
        var wider = new int[to - from];
        counts.CopyTo(wider, first - from);
        latest = latest < 0 ? latest : latest + first - from;
        counts = wider;
        first = from;
    }
}
