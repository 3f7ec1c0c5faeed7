using System.Globalization;
using Plenum.Core;
using Plenum.Core.Breakdown;

namespace Plenum.Workbench.Commands.Breakdown;

/// <summary>Writes down what the breaking down of an element has revealed.</summary>
/// <param name="Element">Id of the element.</param>
/// <param name="Kind">opportunity, constraint, risk or interface.</param>
/// <param name="Text">What it is.</param>
public sealed record AddRegisterEntryCommand(int Element, string Kind, string Text) : EditCommand
{
    public override string Tell(Project before) =>
        $"add {Kind} on {Elements.Say(before, Element)}: {Cells.Short(Text)}";

    protected internal override void Apply(EditDraft draft)
    {
        Elements.Need(draft, Element);
        var number = 1 + draft.Before[RegisterTable.Definition].Count;
        string entry;
        do
        {
            entry = string.Create(CultureInfo.InvariantCulture, $"R-{number++:000}");
        } while (draft.IdOf(RegisterTable.Definition, entry) != 0);

        var id = draft.Add(
            RegisterTable.Definition,
            (RegisterTable.Entry, entry),
            (RegisterTable.Kind, Kind),
            (RegisterTable.Text, Text.Trim())
        );
        draft.SetReference(RegisterTable.Element, id, Element);
    }
}
