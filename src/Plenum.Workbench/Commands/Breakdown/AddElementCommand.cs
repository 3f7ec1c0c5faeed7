using Plenum.Core;
using Plenum.Core.Breakdown;

namespace Plenum.Workbench.Commands.Breakdown;

/// <summary>
/// Adds an element. It is of the kind of the sister before it: below packages a package, below parts a part that is
/// still to be broken down, and so a gap until it is.
/// </summary>
/// <param name="Parent">Id of the parent; 0 for the first element of an empty project.</param>
/// <param name="After">Id of the sister that it comes after; 0 for the first place.</param>
/// <param name="Name">Its name.</param>
/// <param name="Code">Its code; null for the next free one.</param>
public sealed record AddElementCommand(int Parent, int After, string Name, string? Code = null)
    : EditCommand
{
    public override string Tell(Project before) =>
        Parent == 0
            ? $"name the project {Name.Trim()}"
            : $"add {Name.Trim()} to {Elements.Say(before, Parent)}";

    protected internal override void Apply(EditDraft draft)
    {
        var breakdown = draft.Breakdown;
        if (Parent == 0)
        {
            if (breakdown.Root != 0)
            {
                throw new EditException(
                    $"{breakdown.Say(breakdown.Root)} is the root already; there is one root.",
                    "a place below it"
                );
            }

            var code = draft.Before.Settings.Code;
            breakdown.AddRoot(Code ?? (code.Length > 0 ? code : "0"), Name.Trim());
            return;
        }

        Elements.Need(draft, Parent);
        var family = breakdown.Children(Parent);
        var place = After == 0 ? 0 : Elements.IndexOf(family, After) + 1;
        var id = breakdown.Add(Parent, place, Name, Code);
        if (IsPart(draft, family, place))
        {
            draft.Set(ElementTable.Kind, id, "branch");
        }
    }

    /// <summary>The sister before it, or after it, is a part; without sisters it is one in the upper levels.</summary>
    private bool IsPart(EditDraft draft, IReadOnlyList<int> family, int place)
    {
        if (family.Count > 1)
        {
            var sister = family[place > 0 ? place - 1 : 1];
            return draft.Breakdown.Children(sister).Count > 0
                || draft.Text(ElementTable.Kind, sister) == "branch";
        }

        return draft.Text(ElementTable.Split, Parent) is null or "part" or "place" or "function";
    }
}
