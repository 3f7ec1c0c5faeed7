using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Network.Assessment;

/// <summary>
/// What the assessment needs to know of each activity beside its dates. Days are day numbers, <see cref="Cell.NoInt"/>
/// where there is none. An activity's baseline dates, hours and money are those of its package.
/// </summary>
public sealed record AssessmentFacts
{
    /// <summary>A level-of-effort package: support without an output of its own.</summary>
    public required bool[] IsLevelOfEffort { get; init; }

    /// <summary>A package that is its own activity; never a milestone, whatever its dates.</summary>
    public required bool[] IsPackage { get; init; }

    public required int[] BaselineStart { get; init; }

    public required int[] BaselineFinish { get; init; }

    /// <summary>The package has budgeted hours or money.</summary>
    public required bool[] HasResources { get; init; }

    /// <summary>The latest actual start that any report gives, past the status date too.</summary>
    public required int[] ReportedStart { get; init; }

    /// <summary>The latest actual finish that any report gives, past the status date too.</summary>
    public required int[] ReportedFinish { get; init; }

    /// <summary>Low and high durations are given.</summary>
    public required bool[] HasRange { get; init; }

    /// <summary>Working days of the reporting period that comes next, or of the last; null without periods.</summary>
    public required int? ReportingDays { get; init; }

    /// <summary>Names by activity.</summary>
    public required Func<int, string> Name { get; init; }
}
