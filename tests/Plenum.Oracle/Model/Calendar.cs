namespace Plenum.Oracle.Model;

/// <summary>
/// Working days: seven marks from Monday to Sunday, and dated exceptions. A project that names no calendar works
/// Monday to Friday.
/// </summary>
public sealed record Calendar(string Working, IReadOnlyDictionary<DateOnly, bool> Exceptions)
{
    public static Calendar MondayToFriday { get; } =
        new("1111100", new Dictionary<DateOnly, bool>());

    public bool IsWorkingDay(DateOnly date) =>
        Exceptions.TryGetValue(date, out var working)
            ? working
            : Working[((int)date.DayOfWeek + 6) % 7] == '1';

    /// <summary>The working days from one date to another, both counted.</summary>
    public int WorkingDays(DateOnly first, DateOnly last)
    {
        var count = 0;
        for (var date = first; date <= last; date = date.AddDays(1))
        {
            count += IsWorkingDay(date) ? 1 : 0;
        }

        return count;
    }
}
