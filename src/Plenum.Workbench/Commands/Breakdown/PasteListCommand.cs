using System.Globalization;
using Plenum.Core;
using Plenum.Exchange.Lists;

namespace Plenum.Workbench.Commands.Breakdown;

/// <summary>Takes a pasted list over as a subtree: all of its rows or none.</summary>
/// <param name="Parent">Id of the element that it goes below; 0 for an empty project, whose root the first row becomes.</param>
/// <param name="After">Id of the sister that it comes after; 0 for the first place.</param>
/// <param name="List">The list, in one of the forms that <see cref="ListReader"/> knows.</param>
public sealed record PasteListCommand(int Parent, int After, string List) : EditCommand
{
    public override string Tell(Project before)
    {
        var count = ListReader.Read(List).Rows.Count;
        var rows =
            count == 1 ? "1 row" : string.Create(CultureInfo.InvariantCulture, $"{count} rows");
        return Parent == 0
            ? $"take over {rows}"
            : $"paste {rows} below {Elements.Say(before, Parent)}";
    }

    protected internal override void Apply(EditDraft draft)
    {
        var list = ListReader.Read(List);
        if (list.Errors.Any)
        {
            throw new EditException([.. list.Errors.Items.Select(AsFault)]);
        }

        if (list.Rows.Count == 0)
        {
            throw new EditException("The list is empty.", "at least one name");
        }

        ListIntake.Put(draft, list, Parent, After);
    }

    private static EditFault AsFault(Core.Foundation.InputError error)
    {
        var line = string.Create(CultureInfo.InvariantCulture, $"line {error.Row}");
        return new EditFault(
            error.File,
            line,
            error.Column,
            error.Value,
            error.Expected,
            $"{line}: {error.Message}"
        )
        {
            Line = error.Row,
        };
    }
}
