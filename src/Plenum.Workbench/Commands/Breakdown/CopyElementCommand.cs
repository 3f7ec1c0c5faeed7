using Plenum.Core;
using Plenum.Core.Breakdown;

namespace Plenum.Workbench.Commands.Breakdown;

/// <summary>Copies an element with all below it.</summary>
/// <param name="Id">The element.</param>
/// <param name="Parent">Id of the copy's parent.</param>
/// <param name="After">Id of the sister that the copy comes after; 0 for the first place.</param>
/// <param name="Name">Name of the copy; null for that of the original.</param>
public sealed record CopyElementCommand(int Id, int Parent, int After, string? Name = null)
    : EditCommand
{
    public override string Tell(Project before) =>
        $"copy {Elements.Say(before, Id)} to {Elements.Say(before, Parent)}";

    protected internal override void Apply(EditDraft draft)
    {
        Elements.Need(draft, Id, Parent);
        MoveElementCommand.NeedNoRoot(draft, Id);
        var family = draft.Breakdown.Children(Parent);
        SubtreeCopy.Put(
            draft,
            Id,
            Parent,
            After == 0 ? 0 : Elements.IndexOf(family, After) + 1,
            Name
        );
    }
}

/// <summary>
/// Repeats an element, with all below it, in the sisters of its parent that have the same part type, or none named, and
/// no child of its name.
/// </summary>
public sealed record RepeatForSistersCommand(int Id) : EditCommand
{
    public override string Tell(Project before) =>
        $"repeat {Elements.Say(before, Id)} for the sisters of its parent";

    protected internal override void Apply(EditDraft draft)
    {
        Elements.Need(draft, Id);
        var breakdown = draft.Breakdown;
        var parent = breakdown.Parent(Id);
        var name = draft.Text(ElementTable.Name, Id);
        var type = parent == 0 ? null : draft.Text(ElementTable.PartType, parent);
        int[] sisters =
            parent == 0 || breakdown.Parent(parent) == 0
                ? []
                :
                [
                    .. breakdown
                        .Children(breakdown.Parent(parent))
                        .Where(sister =>
                            sister != parent
                            && draft.Text(ElementTable.PartType, sister) == type
                            && !breakdown
                                .Children(sister)
                                .Any(child =>
                                    string.Equals(
                                        draft.Text(ElementTable.Name, child),
                                        name,
                                        StringComparison.OrdinalIgnoreCase
                                    )
                                )
                        ),
                ];
        if (sisters.Length == 0)
        {
            throw new EditException(
                $"No sister of the element above {breakdown.Say(Id)} lacks a part of this name.",
                "an element whose parent has sisters of its kind without such a part"
            );
        }

        foreach (var sister in sisters)
        {
            SubtreeCopy.Put(draft, Id, sister, breakdown.Children(sister).Count);
        }
    }
}
