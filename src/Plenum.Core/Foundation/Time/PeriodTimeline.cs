using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Foundation.Time;

/// <summary>
/// The reporting periods in the order of their ends. The first begins at the project's start, each other on the day
/// after the one before. A period is meant by its index, from 0; −1 stands for "before the first".
/// </summary>
public sealed class PeriodTimeline
{
    private readonly DateOnly[] ends;
    private readonly int[] endDays;
    private readonly int[] indexOfId;

    public PeriodTimeline(Table periods, DateOnly? projectStart)
    {
        var endOfRow = periods.Ints(PeriodTable.End).ToArray();
        int[] order = [.. Enumerable.Range(0, periods.Count).OrderBy(row => endOfRow[row])];
        ends = Array.ConvertAll(order, row => DateOnly.FromDayNumber(Math.Max(0, endOfRow[row])));
        endDays = Array.ConvertAll(ends, end => end.DayNumber);
        Codes = Array.ConvertAll(order, row => periods.Codes[row]!);
        Ids = Array.ConvertAll(order, row => periods.Ids[row]);
        Start = projectStart;
        indexOfId = new int[Count == 0 ? 1 : Ids.Max() + 1];
        indexOfId.AsSpan().Fill(-1);
        for (var index = 0; index < Count; index++)
        {
            indexOfId[Ids[index]] = index;
        }
    }

    public int Count => ends.Length;

    public IReadOnlyList<string> Codes { get; }

    public IReadOnlyList<int> Ids { get; }

    /// <summary>The project's start, where one is given.</summary>
    public DateOnly? Start { get; }

    public DateOnly End(int index) => ends[index];

    /// <summary>First day of a period; null for the first period of a project without a start.</summary>
    public DateOnly? Begin(int index) => index == 0 ? Start : ends[index - 1].AddDays(1);

    /// <summary>The index of a period's id.</summary>
    public int IndexOf(int periodId) => indexOfId[periodId];

    /// <summary>The last period that ends on or before a date; −1 if none does.</summary>
    public int LastEndedBy(DateOnly date)
    {
        var found = Array.BinarySearch(endDays, date.DayNumber);
        return found >= 0 ? found : ~found - 1;
    }

    /// <summary>The first period that ends on or after a date; <see cref="Count"/> if none does.</summary>
    public int FirstEndingFrom(DateOnly date)
    {
        var found = Array.BinarySearch(endDays, date.DayNumber);
        return found >= 0 ? found : ~found;
    }

    /// <summary>How many periods a span of days touches.</summary>
    public int Spanned(int startDay, int finishDay) =>
        FirstEndingFrom(DateOnly.FromDayNumber(finishDay))
        - FirstEndingFrom(DateOnly.FromDayNumber(startDay))
        + 1;

    /// <summary>The same for every day from the first period's end to the last, to be looked up without a search.</summary>
    public int[] FirstEndingFromEach()
    {
        var periods = new int[Count == 0 ? 0 : endDays[^1] - endDays[0] + 1];
        var period = 0;
        for (var day = 0; day < periods.Length; day++)
        {
            period += endDays[0] + day > endDays[period] ? 1 : 0;
            periods[day] = period;
        }

        return periods;
    }
}
