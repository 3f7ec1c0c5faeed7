namespace Plenum.Core.Foundation;

/// <summary>
/// One rule of the audit: what it looks for, why, what to do, and where it comes from. A rule is made for one value of
/// a project with the data that it reads.
/// </summary>
public abstract class AuditRule
{
    /// <summary>Stable name in lower case with underscores.</summary>
    public abstract string Name { get; }

    public abstract Severity Severity { get; }

    /// <summary>What the rule asks and why, for a practitioner.</summary>
    public abstract string Explanation { get; }

    /// <summary>What to do about a finding.</summary>
    public abstract string Remedy { get; }

    /// <summary>The published source, or "common practice".</summary>
    public abstract string Source { get; }

    /// <summary>All findings, in the order of the breakdown or of the accounts.</summary>
    public abstract IEnumerable<Finding> Run();

    protected Finding Found(string code, string message) =>
        new(Name, Severity, code, message, Remedy);
}
