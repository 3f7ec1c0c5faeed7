namespace Plenum.Core.Breakdown.Splits;

/// <summary>One part of a split, as far as its logic can be read from it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Hints">What else speaks for a logic: part type, unit, activity of a work set.</param>
public readonly record struct SplitPart(string Name, params IReadOnlyList<SplitHint> Hints);

/// <summary>Something other than a name that speaks for a logic.</summary>
/// <param name="Logic">Of <see cref="SplitLogic"/>.</param>
/// <param name="Strength">1 weak to 3 strong.</param>
/// <param name="Told">What it is, for the finding: part type pump.</param>
public readonly record struct SplitHint(int Logic, int Strength, string Told);

/// <summary>Why a part was read in a way.</summary>
/// <param name="Part">Index of the part.</param>
/// <param name="Logic">The logic that speaks out of it.</param>
/// <param name="Told">The word of the name, or the hint.</param>
public readonly record struct SplitEvidence(int Part, int Logic, string Told);

/// <summary>The logic of a split as read from its parts.</summary>
/// <param name="Logic">Of <see cref="SplitLogic"/>; unknown where too little is known.</param>
/// <param name="Supports">Share of the parts of which something is known that each logic fits, 0 to 1.</param>
/// <param name="Evidence">The strongest word or hint of each part of which something is known.</param>
/// <param name="Strangers">Parts that clearly follow another logic; empty unless the split has two.</param>
public sealed record SplitReading(
    int Logic,
    IReadOnlyList<double> Supports,
    IReadOnlyList<SplitEvidence> Evidence,
    IReadOnlyList<SplitEvidence> Strangers
)
{
    /// <summary>Two logics stand side by side.</summary>
    public bool IsMixed => Strangers.Count > 0;

    public static SplitReading Nothing { get; } =
        new(SplitLogic.Unknown, new double[SplitLogic.Count], [], []);
}
