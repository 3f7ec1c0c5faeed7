using Plenum.Core;

namespace Plenum.Workbench.Commands.Breakdown;

/// <summary>Moves an element with all below it. Its code stays; renumbering is a command of its own.</summary>
/// <param name="Id">The element.</param>
/// <param name="Parent">Id of its parent afterwards.</param>
/// <param name="After">Id of the sister that it comes after; 0 for the first place.</param>
public sealed record MoveElementCommand(int Id, int Parent, int After) : EditCommand
{
    public override string Tell(Project before) =>
        $"move {Elements.Say(before, Id)} to {Elements.Say(before, Parent)}";

    protected internal override void Apply(EditDraft draft)
    {
        Elements.Need(draft, Id, Parent);
        NeedNoRoot(draft, Id);
        var family = draft.Breakdown.Children(Parent);
        draft.Breakdown.Move(Id, Parent, After == 0 ? 0 : Elements.IndexOf(family, After) + 1);
    }

    internal static void NeedNoRoot(EditDraft draft, int id)
    {
        if (draft.Breakdown.Parent(id) == 0)
        {
            throw new EditException("The root stays where it is.", "an element below the root");
        }
    }
}

/// <summary>Where an element goes under the keys.</summary>
public enum Step
{
    Up,
    Down,

    /// <summary>Below the sister before it.</summary>
    LevelDown,

    /// <summary>Beside its parent, after it.</summary>
    LevelUp,
}

/// <summary>Moves an element by one place or one level.</summary>
public sealed record StepElementCommand(int Id, Step To) : EditCommand
{
    public override string Tell(Project before) =>
        $"move {Elements.Say(before, Id)} "
        + To switch
        {
            Step.Up => "up",
            Step.Down => "down",
            Step.LevelDown => "one level down",
            _ => "one level up",
        };

    protected internal override void Apply(EditDraft draft)
    {
        Elements.Need(draft, Id);
        MoveElementCommand.NeedNoRoot(draft, Id);
        var breakdown = draft.Breakdown;
        var parent = breakdown.Parent(Id);
        var family = breakdown.Children(parent);
        var at = Elements.IndexOf(family, Id);
        switch (To)
        {
            case Step.Up when at > 0:
                breakdown.Move(Id, parent, at - 1);
                break;
            case Step.Down when at < family.Count - 1:
                breakdown.Move(Id, parent, at + 2);
                break;
            case Step.LevelDown when at > 0:
                var above = family[at - 1];
                breakdown.Move(Id, above, breakdown.Children(above).Count);
                break;
            case Step.LevelUp when breakdown.Parent(parent) is var grandparent and not 0:
                breakdown.Move(
                    Id,
                    grandparent,
                    Elements.IndexOf(breakdown.Children(grandparent), parent) + 1
                );
                break;
            default:
                throw new EditException(
                    $"{breakdown.Say(Id)} cannot go further that way.",
                    "a place in that direction"
                );
        }
    }
}
