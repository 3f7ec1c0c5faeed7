using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Network;

/// <summary>
/// What a network is computed from, by activity and by link. Days are day numbers, <see cref="Cell.NoInt"/> where none
/// is given; durations, remaining work and lags are working days. The arrays are not changed once they are handed in.
/// </summary>
public sealed record NetworkInput
{
    /// <summary>Codes of the activities, for messages.</summary>
    public required IReadOnlyList<string> Codes { get; init; }

    public required int[] Duration { get; init; }

    /// <summary>Index of each activity's calendar in <see cref="Calendars"/>.</summary>
    public required int[] Calendar { get; init; }

    public required ActivityConditions Conditions { get; init; }

    /// <summary>Actual starts that hold at the status date.</summary>
    public required int[] Started { get; init; }

    /// <summary>Actual finishes that hold at the status date; none without a start.</summary>
    public required int[] Finished { get; init; }

    /// <summary>Remaining working days that hold at the status date.</summary>
    public required int[] Remaining { get; init; }

    /// <summary>Predecessor of each link, as the index of an activity.</summary>
    public required int[] From { get; init; }

    /// <summary>Successor of each link.</summary>
    public required int[] To { get; init; }

    /// <summary>Type of each link, a number of <see cref="LinkTable.Types"/>.</summary>
    public required int[] Type { get; init; }

    /// <summary>Lag of each link in working days of the predecessor's calendar; negative for a lead.</summary>
    public required int[] Lag { get; init; }

    public required IReadOnlyList<WorkCalendar> Calendars { get; init; }

    /// <summary>
    /// Codes of the calendars, by which those of two networks are the same; null for a calendar without one. Empty where calendars
    /// are meant by their number.
    /// </summary>
    public IReadOnlyList<string?> CalendarCodes { get; init; } = [];

    /// <summary>First day of the project.</summary>
    public required int Start { get; init; }

    /// <summary>Day up to which progress counts; null where none does.</summary>
    public required int? StatusDay { get; init; }

    /// <summary>Remaining work waits for unfinished predecessors.</summary>
    public required bool LogicHolds { get; init; }

    public int Count => Duration.Length;

    public int LinkCount => From.Length;

    /// <summary>Day on which work that is not done can begin at the earliest.</summary>
    public int FirstOpenDay => StatusDay is { } day ? Math.Max(Start, day + 1) : Start;

    /// <summary>The same network in arrays of its own; the calendars are shared.</summary>
    internal NetworkInput Copy() =>
        this with
        {
            Duration = [.. Duration],
            Calendar = [.. Calendar],
            Conditions = Conditions.Copy(),
            Started = [.. Started],
            Finished = [.. Finished],
            Remaining = [.. Remaining],
            From = [.. From],
            To = [.. To],
            Type = [.. Type],
            Lag = [.. Lag],
        };

    public static int[] NoDays(int count)
    {
        var days = new int[count];
        days.AsSpan().Fill(Cell.NoInt);
        return days;
    }
}

/// <summary>Date conditions of activities as day numbers, <see cref="Cell.NoInt"/> where there is none.</summary>
public sealed record ActivityConditions(
    int[] StartNoEarlier,
    int[] StartNoLater,
    int[] FinishNoEarlier,
    int[] FinishNoLater,
    int[] StartOn,
    int[] FinishOn,
    int[] RequiredBy
)
{
    /// <summary>No conditions at all.</summary>
    public static ActivityConditions None(int count) =>
        new(
            NetworkInput.NoDays(count),
            NetworkInput.NoDays(count),
            NetworkInput.NoDays(count),
            NetworkInput.NoDays(count),
            NetworkInput.NoDays(count),
            NetworkInput.NoDays(count),
            NetworkInput.NoDays(count)
        );

    internal ActivityConditions Copy() =>
        new(
            [.. StartNoEarlier],
            [.. StartNoLater],
            [.. FinishNoEarlier],
            [.. FinishNoLater],
            [.. StartOn],
            [.. FinishOn],
            [.. RequiredBy]
        );
}

/// <summary>The types of links, as numbered by <see cref="LinkTable.Types"/>.</summary>
public static class LinkType
{
    public const int FinishToStart = 0;
    public const int StartToStart = 1;
    public const int FinishToFinish = 2;
    public const int StartToFinish = 3;

    /// <summary>True if the link leaves from the predecessor's finish.</summary>
    public static bool FromFinish(int type) => (type & 1) == 0;

    /// <summary>True if the link leads to the successor's start.</summary>
    public static bool ToStart(int type) => type < FinishToFinish;
}
