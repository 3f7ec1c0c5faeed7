using Plenum.Core;

namespace Plenum.Workbench.Commands;

/// <summary>
/// One edit of a project: a function from its value to the rows that change. It names rows by id, holds plain fields
/// only, so that it can be sent and kept, and does all of it or nothing.
/// </summary>
public abstract record EditCommand
{
    /// <summary>What it does, in words, for the audit record and for taking it back: "rename 03.4 to RO train D".</summary>
    public abstract string Tell(Project before);

    /// <summary>Writes its rows.</summary>
    /// <exception cref="EditException">Something is wrong; nothing is changed then.</exception>
    /// <exception cref="EditConflictException">Somebody else has written the same cell since it was seen.</exception>
    protected internal abstract void Apply(EditDraft draft);
}

/// <summary>Several commands as one: one transaction, one step to take back.</summary>
/// <param name="Words">What they do together.</param>
/// <param name="Parts">The commands, in order; each sees what those before it have done.</param>
public sealed record ManyCommand(string Words, IReadOnlyList<EditCommand> Parts) : EditCommand
{
    public override string Tell(Project before) => Words;

    protected internal override void Apply(EditDraft draft)
    {
        foreach (var part in Parts)
        {
            part.Apply(draft);
        }
    }
}
