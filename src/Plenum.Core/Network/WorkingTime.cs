using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Network;

/// <summary>
/// A calendar as the network sees it. An instant is the boundary at which a day begins, given by that day's number
/// (<see cref="DateOnly.DayNumber"/>); the day before ends there. A place in the calendar is the number of working days
/// before an instant: work of d days that begins at place p fills the working days p to p + d − 1 and ends at place p + d.
/// Constant time: by a table in the years in which the network usually lies, by the weekly pattern outside.
/// </summary>
public sealed class WorkingTime
{
    /// <summary>An instant that no date reaches: where a calendar without working weekdays has come to its end.</summary>
    public const int Never = 1 << 28;

    private const int DaysBefore = 4 * 366;
    private const int DaysAfter = 40 * 366;

    private readonly WorkCalendar calendar;
    private readonly int firstInstant;
    private readonly int[] places;
    private readonly int firstPlace;
    private readonly int[] days;

    /// <param name="calendar">The calendar.</param>
    /// <param name="around">The day around which the network lies.</param>
    public WorkingTime(WorkCalendar calendar, int around)
    {
        this.calendar = calendar;
        firstInstant = around - DaysBefore;
        places = new int[DaysBefore + DaysAfter];
        for (var i = 0; i < places.Length; i++)
        {
            places[i] = calendar.NumberOfDay(firstInstant + i - 1);
        }

        firstPlace = places[0];
        days = new int[places[^1] - firstPlace];
        for (var i = 0; i < places.Length - 1; i++)
        {
            if (places[i + 1] != places[i])
            {
                days[places[i] - firstPlace] = firstInstant + i;
            }
        }
    }

    /// <summary>Working days before an instant, counted from a fixed origin.</summary>
    public int PlaceOf(int instant)
    {
        var i = instant - firstInstant; // unchecked below: what lies before the table becomes a number beyond it
        return unchecked((uint)i) < (uint)places.Length
            ? places[i]
            : calendar.NumberOfDay(instant - 1);
    }

    /// <summary>The instant at which the working day at a place begins; <see cref="Never"/> or −<see cref="Never"/> if there is none.</summary>
    public int BeginOf(int place)
    {
        var i = place - firstPlace;
        return unchecked((uint)i) < (uint)days.Length ? days[i] : BeginBeyond(place);
    }

    /// <summary>The instant at which work ends that has filled all working days before a place.</summary>
    public int EndOf(int place) => BeginOf(place - 1) + 1;

    /// <summary>
    /// Goes working days on from an instant, to the end of the last of them; or back, to the beginning of the last of
    /// them. No days: the instant itself, whether it lies in a working day or not.
    /// </summary>
    public int Go(int instant, int workDays) =>
        workDays == 0 ? instant
        : workDays > 0 ? EndOf(PlaceOf(instant) + workDays)
        : BeginOf(PlaceOf(instant) + workDays);

    /// <summary>The place of the first end of a working day on or after an instant.</summary>
    public int FirstEndFrom(int instant) => PlaceOf(instant - 1) + 1;

    /// <summary>The place of the last working day that begins on or before an instant.</summary>
    public int LastBeginTo(int instant) => PlaceOf(instant + 1) - 1;

    /// <summary>True if the day that begins at an instant is worked.</summary>
    public bool IsWorking(int day) => PlaceOf(day + 1) != PlaceOf(day);

    private int BeginBeyond(int place) =>
        calendar.DayOfNumber(place + 1) ?? (place < firstPlace ? -Never : Never);
}
