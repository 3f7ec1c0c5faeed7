using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Network.Live;

/// <summary>
/// What changes in a network in one go. Activities and links are meant by the numbers that they have in the
/// <see cref="LiveNetwork"/>; links are taken out before others are added.
/// </summary>
public sealed record NetworkEdit
{
    /// <summary>Activities with all values that they have from now on; each at most once.</summary>
    public IReadOnlyList<(int Activity, ActivityFacts Facts)> Activities { get; init; } = [];

    /// <summary>Calendars with their days from now on; the number after the last adds one.</summary>
    public IReadOnlyList<(int Calendar, WorkCalendar Days)> Calendars { get; init; } = [];

    public IReadOnlyList<int> RemovedLinks { get; init; } = [];

    /// <summary>Links that are added, numbered on from <see cref="LiveNetwork.LinkCount"/>.</summary>
    public IReadOnlyList<LinkFacts> AddedLinks { get; init; } = [];
}

/// <summary>All that a network takes from one activity; units as in <see cref="NetworkInput"/>.</summary>
public readonly record struct ActivityFacts
{
    public int Duration { get; init; }

    public int Calendar { get; init; }

    public int Started { get; init; }

    public int Finished { get; init; }

    public int Remaining { get; init; }

    public int StartNoEarlier { get; init; }

    public int StartNoLater { get; init; }

    public int FinishNoEarlier { get; init; }

    public int FinishNoLater { get; init; }

    public int StartOn { get; init; }

    public int FinishOn { get; init; }

    public int RequiredBy { get; init; }

    public static ActivityFacts Of(NetworkInput input, int activity) =>
        new()
        {
            Duration = input.Duration[activity],
            Calendar = input.Calendar[activity],
            Started = input.Started[activity],
            Finished = input.Finished[activity],
            Remaining = input.Remaining[activity],
            StartNoEarlier = input.Conditions.StartNoEarlier[activity],
            StartNoLater = input.Conditions.StartNoLater[activity],
            FinishNoEarlier = input.Conditions.FinishNoEarlier[activity],
            FinishNoLater = input.Conditions.FinishNoLater[activity],
            StartOn = input.Conditions.StartOn[activity],
            FinishOn = input.Conditions.FinishOn[activity],
            RequiredBy = input.Conditions.RequiredBy[activity],
        };

    /// <summary>Writes into an input that nobody else holds.</summary>
    internal void WriteTo(NetworkInput input, int activity)
    {
        input.Duration[activity] = Duration;
        input.Calendar[activity] = Calendar;
        input.Started[activity] = Started;
        input.Finished[activity] = Finished;
        input.Remaining[activity] = Remaining;
        input.Conditions.StartNoEarlier[activity] = StartNoEarlier;
        input.Conditions.StartNoLater[activity] = StartNoLater;
        input.Conditions.FinishNoEarlier[activity] = FinishNoEarlier;
        input.Conditions.FinishNoLater[activity] = FinishNoLater;
        input.Conditions.StartOn[activity] = StartOn;
        input.Conditions.FinishOn[activity] = FinishOn;
        input.Conditions.RequiredBy[activity] = RequiredBy;
    }
}

/// <summary>A link; units as in <see cref="NetworkInput"/>.</summary>
/// <param name="From">Its predecessor.</param>
/// <param name="To">Its successor.</param>
/// <param name="Type">One of <see cref="LinkType"/>.</param>
/// <param name="Lag">Working days of the predecessor's calendar.</param>
public readonly record struct LinkFacts(int From, int To, int Type, int Lag)
{
    public static LinkFacts Of(NetworkInput input, int link) =>
        new(input.From[link], input.To[link], input.Type[link], input.Lag[link]);
}

/// <summary>An activity that an edit has moved.</summary>
/// <param name="Activity">The activity.</param>
/// <param name="Before">The instant of its early finish before, see <see cref="WorkingTime"/>.</param>
/// <param name="After">The instant of its early finish now.</param>
public readonly record struct Move(int Activity, int Before, int After);
