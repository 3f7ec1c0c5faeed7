using Plenum.Core.Network.Live;

namespace Plenum.Core.Network.Moves;

/// <summary>One thing that differs between two networks and may move dates.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Activity">Code of the activity that it is about; of a link the predecessor's.</param>
public sealed record PlanChange(ChangeKind Kind, string? Activity = null)
{
    /// <summary>Code of the successor, for a link.</summary>
    public string? To { get; init; }

    /// <summary>The link as it was; null where it was not there.</summary>
    public LinkFacts? LinkBefore { get; init; }

    /// <summary>The link as it is; null where it is no longer there.</summary>
    public LinkFacts? LinkAfter { get; init; }

    /// <summary>What the network took from the activity.</summary>
    public ActivityFacts? Before { get; init; }

    /// <summary>What it takes from it now.</summary>
    public ActivityFacts? After { get; init; }

    /// <summary>Code of the calendar; of an activity that of the calendar it has now.</summary>
    public string? Calendar { get; init; }

    /// <summary>Code of the calendar that an activity had.</summary>
    public string? CalendarBefore { get; init; }
}

/// <summary>What differs.</summary>
public enum ChangeKind
{
    /// <summary>The days of a calendar.</summary>
    Calendar,

    /// <summary>An activity is no longer there.</summary>
    ActivityRemoved,
    LinkRemoved,

    /// <summary>Duration, calendar or date conditions of an activity.</summary>
    Activity,

    /// <summary>The lag of a link.</summary>
    Lag,
    LinkAdded,

    /// <summary>An activity is new.</summary>
    ActivityAdded,

    /// <summary>Reported progress of an activity.</summary>
    Progress,

    /// <summary>Time that has passed: work that is not done cannot begin before the status date.</summary>
    StatusDate,

    /// <summary>The first day of the project, or the rule for work out of sequence.</summary>
    Setting,
}

/// <summary>An activity whose early dates have moved.</summary>
/// <param name="Activity">Its index in the later network.</param>
/// <param name="Before">Its index in the earlier one.</param>
/// <param name="WorkDays">By how many working days of its calendar its early finish is later; negative for earlier.</param>
/// <param name="Because">What moved it, and by how many of these days; they add up to them.</param>
public sealed record MovedActivity(
    int Activity,
    int Before,
    int WorkDays,
    IReadOnlyList<Cause> Because
);

/// <summary>A part of a move.</summary>
/// <param name="Change">Index of the change that caused it.</param>
/// <param name="WorkDays">Working days of the moved activity's calendar.</param>
public readonly record struct Cause(int Change, int WorkDays);
