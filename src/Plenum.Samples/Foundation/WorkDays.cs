namespace Plenum.Samples.Foundation;

/// <summary>
/// The working days of one calendar from a first day on, numbered from 0, so that planning is counting.
/// </summary>
internal sealed class WorkDays
{
    private readonly DateOnly _first;
    private readonly List<DateOnly> _dates = [];

    /// <summary>For each day from the first: how many working days lie before it.</summary>
    private readonly List<int> _before = [];

    /// <summary>Counts the working days between two dates, both included.</summary>
    /// <param name="first">The first day that is counted.</param>
    /// <param name="last">The last one.</param>
    /// <param name="pattern">Seven marks, Monday to Sunday, 1 for a working day.</param>
    /// <param name="exceptions">Days that are working (true) or not (false) against the pattern.</param>
    public WorkDays(
        DateOnly first,
        DateOnly last,
        string pattern,
        IReadOnlyDictionary<DateOnly, bool> exceptions
    )
    {
        _first = first;
        for (var day = first; day <= last; day = day.AddDays(1))
        {
            _before.Add(_dates.Count);
            var weekday = ((int)day.DayOfWeek + 6) % 7;
            if (exceptions.TryGetValue(day, out var working) ? working : pattern[weekday] == '1')
            {
                _dates.Add(day);
            }
        }
    }

    public int Count => _dates.Count;

    public DateOnly this[int workDay] => _dates[workDay];

    /// <summary>The number of the first working day on or after the date.</summary>
    public int OnOrAfter(DateOnly date) => _before[date.DayNumber - _first.DayNumber];

    /// <summary>The number of the last working day on or before the date; -1 when there is none.</summary>
    public int OnOrBefore(DateOnly date) => OnOrAfter(date.AddDays(1)) - 1;
}
