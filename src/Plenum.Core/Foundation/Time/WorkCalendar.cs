namespace Plenum.Core.Foundation.Time;

/// <summary>
/// Which days are worked. Working days are numbered without holes: the number of a date is how many working days lie
/// after the fixed origin (1 January 2000) up to and including it, so the working days in a span are a difference of
/// two numbers. Both directions take constant time: inside the span of the dated exceptions by a table, outside it by
/// the weekly pattern. Dates: 1900-01-01 to 2199-12-31.
/// </summary>
public sealed class WorkCalendar
{
    private static readonly int Origin = new DateOnly(2000, 1, 1).DayNumber;

    // working days of the weekly pattern from its Monday up to and including each weekday
    private readonly int[] workedInWeek = new int[7];
    private readonly int[] weekdayOfNth;
    private readonly bool[] pattern;
    private readonly int perWeek;

    // the span of the exceptions: running count of days by which they change the pattern
    private readonly int firstException;
    private readonly int[] shift;
    private readonly int[] dateOfNumber;
    private readonly int firstNumber;

    /// <param name="pattern">Seven marks, Monday first; at least one day is worked, or there is a dated exception.</param>
    /// <param name="exceptions">Dates on which the pattern does not hold, and whether they are worked.</param>
    public WorkCalendar(
        ReadOnlySpan<bool> pattern,
        IReadOnlyDictionary<DateOnly, bool>? exceptions = null
    )
    {
        if (pattern.Length != 7)
        {
            throw new ArgumentException(
                "Seven marks, Monday to Sunday, are expected.",
                nameof(pattern)
            );
        }

        this.pattern = pattern.ToArray();
        weekdayOfNth = new int[pattern.Count(true)];
        for (var day = 0; day < 7; day++)
        {
            if (pattern[day])
            {
                weekdayOfNth[perWeek++] = day;
            }

            workedInWeek[day] = perWeek;
        }

        (firstException, shift) = Shifts(exceptions);
        firstNumber = shift.Length == 0 ? 0 : NumberInPattern(firstException - 1) + 1;
        dateOfNumber = Dates();
    }

    /// <summary>Monday to Friday, without holidays: the calendar of a project that names none.</summary>
    public static WorkCalendar MondayToFriday { get; } =
        new([true, true, true, true, true, false, false]);

    /// <summary>True if at least one weekday is worked; without it the calendar has no end of non-working time.</summary>
    public bool HasWorkingWeekday => perWeek > 0;

    public bool IsWorking(DateOnly date) =>
        NumberAt(date.DayNumber) != NumberAt(date.DayNumber - 1);

    /// <summary>True if every day is worked in both or in none.</summary>
    public bool HasSameDaysAs(WorkCalendar other)
    {
        if (ReferenceEquals(this, other))
        {
            return true;
        }

        var same = pattern.AsSpan().SequenceEqual(other.pattern);
        foreach (var one in new[] { this, other })
        {
            for (var i = 0; same && i < one.shift.Length; i++)
            {
                var date = DateOnly.FromDayNumber(one.firstException + i);
                same = IsWorking(date) == other.IsWorking(date);
            }
        }

        return same;
    }

    /// <summary>Number of the last working day on or before the date.</summary>
    public int NumberOf(DateOnly date) => NumberAt(date.DayNumber);

    /// <summary>Working days in a span, both ends included; 0 when the span is empty.</summary>
    public int WorkingDays(DateOnly from, DateOnly to) =>
        to < from ? 0 : NumberAt(to.DayNumber) - NumberAt(from.DayNumber - 1);

    /// <summary>The date of a working day's number.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number lies outside the range of dates.</exception>
    public DateOnly DateOf(int number) =>
        DateOnly.FromDayNumber(
            DayOfNumber(number)
                ?? throw new ArgumentOutOfRangeException(
                    nameof(number),
                    number,
                    "The calendar has no such working day."
                )
        );

    /// <summary>
    /// Number of the last working day on or before a day, given and counted as whole numbers; days before 1 January 0001
    /// and after the year 9999 are numbered on by the weekly pattern.
    /// </summary>
    public int NumberOfDay(int dayNumber) => NumberAt(dayNumber);

    /// <summary>
    /// The day of a working day's number, as a whole number; null where the calendar has no such working day, because no
    /// weekday is worked and the dated exceptions have come to an end.
    /// </summary>
    public int? DayOfNumber(int number)
    {
        var inSpan = number - firstNumber;
        if (shift.Length > 0 && inSpan >= 0 && inSpan < dateOfNumber.Length)
        {
            return dateOfNumber[inSpan];
        }

        return perWeek == 0
            ? null
            : DateInPattern(
                shift.Length > 0 && inSpan >= dateOfNumber.Length ? number - shift[^1] : number
            );
    }

    private int NumberAt(int dayNumber)
    {
        var number = NumberInPattern(dayNumber);
        var inSpan = dayNumber - firstException;
        if (shift.Length == 0 || inSpan < 0)
        {
            return number;
        }

        return number + shift[Math.Min(inSpan, shift.Length - 1)];
    }

    // 1 January 2000 was a Saturday; day number 0 (1 January 0001) a Monday
    private int NumberInPattern(int dayNumber)
    {
        var week = Math.DivRem(dayNumber, 7, out var weekday);
        if (weekday < 0)
        {
            weekday += 7;
            week--;
        }

        var originWeek = Math.DivRem(Origin, 7, out var originWeekday);
        return ((week - originWeek) * perWeek)
            + workedInWeek[weekday]
            - workedInWeek[originWeekday];
    }

    private int DateInPattern(int number)
    {
        var originWeek = Math.DivRem(Origin, 7, out var originWeekday);
        var sinceMonday = number + workedInWeek[originWeekday] - 1;
        var week = Math.DivRem(sinceMonday, perWeek, out var nth);
        if (nth < 0)
        {
            nth += perWeek;
            week--;
        }

        return ((originWeek + week) * 7) + weekdayOfNth[nth];
    }

    private (int First, int[] Shift) Shifts(IReadOnlyDictionary<DateOnly, bool>? exceptions)
    {
        if (exceptions is null || exceptions.Count == 0)
        {
            return (0, []);
        }

        var first = exceptions.Keys.Min().DayNumber;
        var last = exceptions.Keys.Max().DayNumber;
        var shifts = new int[last - first + 1];
        foreach (var (date, working) in exceptions)
        {
            var usual = pattern[date.DayNumber % 7];
            shifts[date.DayNumber - first] = (working ? 1 : 0) - (usual ? 1 : 0);
        }

        for (var day = 1; day < shifts.Length; day++)
        {
            shifts[day] += shifts[day - 1];
        }

        return (first, shifts);
    }

    private int[] Dates()
    {
        var dates = new List<int>();
        for (var day = 0; day < shift.Length; day++)
        {
            var dayNumber = firstException + day;
            if (NumberAt(dayNumber) != NumberAt(dayNumber - 1))
            {
                dates.Add(dayNumber);
            }
        }

        return [.. dates];
    }
}
