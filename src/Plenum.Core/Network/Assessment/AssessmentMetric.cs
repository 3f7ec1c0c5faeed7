namespace Plenum.Core.Network.Assessment;

/// <summary>One metric of the assessment.</summary>
/// <param name="Number">1 to 14.</param>
/// <param name="Name">Its name in lower case with underscores.</param>
/// <param name="Count">What was counted.</param>
/// <param name="Of">Out of how many.</param>
/// <param name="Value">The share or index; null where there is nothing to measure.</param>
/// <param name="Threshold">The limit; null where the project has none.</param>
/// <param name="AtLeast">True if the value must reach the limit, false if it must not exceed it.</param>
/// <param name="Activities">The activities that were counted, or that the metric is about.</param>
/// <param name="Links">The links that were counted, where links are.</param>
public sealed record AssessmentMetric(
    int Number,
    string Name,
    int Count,
    int Of,
    decimal? Value,
    decimal? Threshold,
    bool AtLeast,
    IReadOnlyList<int> Activities,
    IReadOnlyList<int> Links
)
{
    /// <summary>How far the value may lie on the other side of the limit; for the critical path test alone.</summary>
    public decimal Tolerance { get; init; }

    /// <summary>
    /// Whether the limit is kept; true where none is set, null where there is nothing to measure and the limit is one that
    /// must be reached.
    /// </summary>
    public bool? Pass =>
        Threshold is null ? true
        : Value is null ? (AtLeast && Of == 0 ? null : true)
        : AtLeast
            ? Value >= Threshold - Tolerance && (Tolerance == 0 || Value <= Threshold + Tolerance)
        : Value <= Threshold;
}
