namespace Plenum.Store;

/// <summary>Who changes the project, by which command, and why; kept with the change.</summary>
/// <param name="Person">Who gave the command.</param>
/// <param name="Command">The command in words, such as "import status".</param>
/// <param name="Reason">Why, where the trade asks for it.</param>
/// <param name="Change">Number of the change request that allows it, if there is one.</param>
public sealed record AuditEntry(string Person, string Command, string? Reason, string? Change);

/// <summary>How many rows of a table a command added, updated and removed.</summary>
public readonly record struct RowCounts(int Added, int Updated, int Removed);

/// <summary>A line of the audit record: an entry with its number, time, revision and row counts by table.</summary>
/// <param name="At">When it was committed, in UTC, to the millisecond.</param>
/// <param name="Revision">The project's revision after the command.</param>
public sealed record AuditRecord(
    long Id,
    DateTimeOffset At,
    AuditEntry Entry,
    long Revision,
    IReadOnlyDictionary<string, RowCounts> Counts
);
