namespace Plenum.Core.Foundation;

/// <summary>How much a finding weighs.</summary>
public enum Severity
{
    /// <summary>An integrity rule of the trade is broken; figures built on it mislead.</summary>
    Error,

    /// <summary>Likely wrong, or will hurt later.</summary>
    Warning,

    /// <summary>Worth knowing.</summary>
    Note,
}

/// <summary>One thing that an audit found in a project.</summary>
/// <param name="Rule">The rule's stable name in lower case with underscores.</param>
/// <param name="Severity">How much it weighs.</param>
/// <param name="Code">Code of the element, account or record that it is about.</param>
/// <param name="Message">What is wrong, with its figures, in a plain sentence.</param>
/// <param name="Remedy">What to do about it.</param>
public sealed record Finding(
    string Rule,
    Severity Severity,
    string Code,
    string Message,
    string Remedy
)
{
    /// <summary>Why it stays, where somebody has accepted it; null otherwise.</summary>
    public string? AcceptedBecause { get; init; }

    /// <summary>Who accepted it, where that is known.</summary>
    public string? AcceptedBy { get; init; }

    public bool IsAccepted => AcceptedBecause is not null;
}
