namespace Plenum.Workbench.Commands;

/// <summary>One thing that is wrong with an edit.</summary>
/// <param name="Table">The table.</param>
/// <param name="Row">The key of the row, in words; null where no row is meant.</param>
/// <param name="Column">The column; null for the whole row.</param>
/// <param name="Value">What was given; null where nothing was.</param>
/// <param name="Expected">What would have been right.</param>
/// <param name="Message">The complaint as one sentence.</param>
public sealed record EditFault(
    string Table,
    string? Row,
    string? Column,
    string? Value,
    string Expected,
    string Message
)
{
    /// <summary>The line of the list, or the row of the sheet, that it came from; null where it came from neither.</summary>
    public int? Line { get; init; }
}

/// <summary>An edit that cannot be done; nothing was changed.</summary>
public sealed class EditException(IReadOnlyList<EditFault> faults)
    : Exception(string.Join("\n", faults.Select(fault => fault.Message)))
{
    public EditException(string message, string expected)
        : this([new EditFault("", null, null, null, expected, message)]) { }

    /// <summary>All that is wrong, at least one.</summary>
    public IReadOnlyList<EditFault> Faults { get; } = faults;
}

/// <summary>A cell that somebody else has written since it was seen.</summary>
/// <param name="Table">The table.</param>
/// <param name="Id">The row.</param>
/// <param name="Row">The key of the row, in words.</param>
/// <param name="Column">The column.</param>
/// <param name="Theirs">What stands there now; null for nothing.</param>
/// <param name="Mine">What was to be written; null for nothing.</param>
/// <param name="Person">Who wrote it; null if it is not known any more.</param>
/// <param name="At">When.</param>
public sealed record EditConflict(
    string Table,
    int Id,
    string Row,
    string Column,
    string? Theirs,
    string? Mine,
    string? Person,
    DateTimeOffset? At
);

/// <summary>
/// Two people have written the same cell. Nothing was changed; whoever comes second sees both values and chooses.
/// </summary>
public sealed class EditConflictException(IReadOnlyList<EditConflict> conflicts)
    : Exception(string.Join("\n", conflicts.Select(Say)))
{
    /// <summary>The cells, at least one.</summary>
    public IReadOnlyList<EditConflict> Conflicts { get; } = conflicts;

    private static string Say(EditConflict conflict) =>
        $"{conflict.Person ?? "Somebody else"} has changed {conflict.Column} of {conflict.Row} "
        + $"to {Quote(conflict.Theirs)}; you wrote {Quote(conflict.Mine)}.";

    private static string Quote(string? value) => value is null ? "nothing" : $"\"{value}\"";
}
