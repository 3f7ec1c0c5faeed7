namespace Plenum.Oracle.Network;

/// <summary>
/// A calendar that is walked day by day. An instant is the day that begins there; a finish on a day is the instant of the
/// day after it.
/// </summary>
public sealed class DayWalk(string week, IReadOnlyDictionary<DateOnly, bool> exceptions)
{
    public bool IsWorking(DateOnly day) =>
        exceptions.TryGetValue(day, out var working)
            ? working
            : week[((int)day.DayOfWeek + 6) % 7] == '1';

    /// <summary>Working days of a span, both ends counted.</summary>
    public int DaysIn(DateOnly first, DateOnly last)
    {
        var count = 0;
        for (var day = first; day <= last; day = day.AddDays(1))
        {
            count += IsWorking(day) ? 1 : 0;
        }

        return count;
    }

    /// <summary>Working days between two instants; negative when the second is the earlier.</summary>
    public int DaysBetween(DateOnly from, DateOnly to) =>
        from <= to ? DaysIn(from, to.AddDays(-1)) : -DaysIn(to, from.AddDays(-1));

    /// <summary>
    /// Working days on from an instant, to the end of the last; or back, to the beginning of the last.
    /// </summary>
    public DateOnly Walk(DateOnly instant, int days)
    {
        while (days > 0)
        {
            days -= IsWorking(instant) ? 1 : 0;
            instant = instant.AddDays(1);
        }

        while (days < 0)
        {
            instant = instant.AddDays(-1);
            days += IsWorking(instant) ? 1 : 0;
        }

        return instant;
    }
}
