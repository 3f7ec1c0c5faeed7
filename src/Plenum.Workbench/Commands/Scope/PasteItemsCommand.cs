using System.Globalization;
using Plenum.Core;
using Plenum.Core.Scope;
using Plenum.Core.Scope.Pasting;

namespace Plenum.Workbench.Commands.Scope;

/// <summary>
/// Takes items read from pasted text. Those whose numbers the statement has already say from now on what was pasted, with
/// the marks of the draft revision; the others are added.
/// </summary>
/// <param name="Items">The items, each after its parent, with the kinds that were chosen in the preview.</param>
public sealed record PasteItemsCommand(IReadOnlyList<PastedItem> Items) : EditCommand
{
    public override string Tell(Project before) =>
        Items.Count == 1 ? "paste a scope item" : $"paste {Items.Count} scope items";

    protected internal override void Apply(EditDraft draft)
    {
        var statement = new DraftStatement(draft);
        statement.NeedOpen();
        CheckNumbers();
        foreach (var item in Items)
        {
            if (draft.IdOf(ScopeTable.Definition, item.Item) is var there and > 0)
            {
                Change(draft, statement, there, item);
                continue;
            }

            var parent = item.Parent is null ? 0 : draft.IdOf(ScopeTable.Definition, item.Parent);
            if (item.Parent is not null && parent == 0)
            {
                throw new EditException(
                    $"{item.Item} is part of {item.Parent}, which is not there any more.",
                    "an item that is there"
                );
            }

            statement.Add(parent, item.Item, item.Kind, item.Text, item.Item);
        }
    }

    private void CheckNumbers()
    {
        Dictionary<string, int> lineOf = new(StringComparer.Ordinal);
        List<EditFault> faults = [];
        foreach (var item in Items)
        {
            if (!lineOf.TryAdd(item.Item, item.Line))
            {
                faults.Add(
                    new EditFault(
                        ScopeTable.Definition.Name,
                        item.Item,
                        ScopeTable.Item.Name,
                        item.Item,
                        "each number once",
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"{item.Item} stands in line {lineOf[item.Item]} already: give the item of line {item.Line} another number"
                        )
                    )
                    {
                        Line = item.Line,
                    }
                );
            }
        }

        if (faults.Count > 0)
        {
            throw new EditException(faults);
        }
    }

    private static void Change(EditDraft draft, DraftStatement statement, int id, PastedItem item)
    {
        statement.NeedItem(id);
        if (
            draft.Text(ScopeTable.Text, id) == item.Text
            && draft.Text(ScopeTable.Kind, id) == item.Kind
        )
        {
            return;
        }

        statement.Keep(id);
        draft.Set(ScopeTable.Kind, id, item.Kind);
        draft.Set(ScopeTable.Text, id, item.Text);
        statement.Forget(id);
    }
}
