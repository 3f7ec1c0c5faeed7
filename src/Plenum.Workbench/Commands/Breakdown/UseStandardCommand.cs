using Plenum.Core;
using Plenum.Workbench.Standards;

namespace Plenum.Workbench.Commands.Breakdown;

/// <summary>A part of a standard breakdown that does not apply.</summary>
/// <param name="Code">Its code in the standard breakdown; all that is below it is left out too.</param>
/// <param name="Reason">Why; it is kept with the project.</param>
public sealed record LeaveOut(string Code, string Reason);

/// <summary>
/// Takes a standard breakdown over: starts an empty project with it, or fills an element with its parts. Elements get
/// codes of the project; part types and work sets come along where the project has none of that code; what it has stays.
/// </summary>
/// <param name="Under">Id of the element that is filled; 0 for an empty project.</param>
/// <param name="Standard">The standard breakdown.</param>
/// <param name="Leave">What does not apply.</param>
public sealed record UseStandardCommand(
    int Under,
    StandardContent Standard,
    IReadOnlyList<LeaveOut> Leave
) : EditCommand
{
    public override string Tell(Project before)
    {
        var what = $"take over the standard breakdown {Standard.Name}";
        return Under == 0 ? what : $"{what} below {Elements.Say(before, Under)}";
    }

    protected internal override void Apply(EditDraft draft) =>
        StandardIntake.Put(draft, Under, Standard, Leave);
}
