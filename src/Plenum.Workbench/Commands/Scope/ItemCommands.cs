using Plenum.Core;
using Plenum.Core.Scope;

namespace Plenum.Workbench.Commands.Scope;

/// <summary>What a scope item says.</summary>
/// <param name="Kind">A word of <see cref="ScopeTable.Kinds"/>.</param>
/// <param name="Text">The wording.</param>
/// <param name="Clause">Where it stands in the contract; null or empty for nowhere.</param>
public sealed record ItemWording(string Kind, string Text, string? Clause = null);

/// <summary>Adds an item to the scope statement.</summary>
/// <param name="Parent">Id of the item that it is part of; 0 for the first level.</param>
/// <param name="Wording">What it says.</param>
/// <param name="Number">Its number; null for the next free one.</param>
public sealed record AddItemCommand(int Parent, ItemWording Wording, string? Number = null)
    : EditCommand
{
    public override string Tell(Project before) =>
        Parent == 0
            ? $"add scope item {Number ?? ""} {ScopeItems.Short(Wording.Text)}".Replace(
                "  ",
                " ",
                StringComparison.Ordinal
            )
            : $"add {ScopeItems.Short(Wording.Text)} to scope item {ScopeItems.Number(before, Parent)}";

    protected internal override void Apply(EditDraft draft)
    {
        var statement = new DraftStatement(draft);
        statement.NeedOpen();
        if (Parent != 0)
        {
            statement.NeedItem(Parent);
        }

        statement.Add(
            Parent,
            string.IsNullOrEmpty(Number) ? statement.NextNumber(Parent) : Number,
            Wording.Kind,
            Wording.Text.Trim(),
            Wording.Clause
        );
    }
}

/// <summary>Changes what an item says; once a revision is signed, in a draft revision only, with its mark.</summary>
/// <param name="Item">Id of the item.</param>
/// <param name="Wording">What it is to say.</param>
/// <param name="Seen">What it said when it was seen; somebody else may have changed it since.</param>
public sealed record ChangeItemCommand(int Item, ItemWording Wording, ItemWording Seen)
    : EditCommand
{
    public override string Tell(Project before) =>
        $"change scope item {ScopeItems.Number(before, Item)}";

    protected internal override void Apply(EditDraft draft)
    {
        var statement = new DraftStatement(draft);
        statement.NeedItem(Item);
        if (Wording == Seen)
        {
            return;
        }

        statement.NeedOpen();
        statement.Keep(Item);
        Write(ScopeTable.Kind, Wording.Kind, Seen.Kind);
        Write(ScopeTable.Text, Wording.Text.Trim(), Seen.Text);
        Write(ScopeTable.Clause, Wording.Clause, Seen.Clause);
        statement.Forget(Item);

        void Write(Core.Foundation.Tables.ColumnDefinition column, string? text, string? seen)
        {
            if ((text ?? "") != (seen ?? ""))
            {
                draft.Set(column, Item, text, seen);
            }
        }
    }
}

/// <summary>
/// Withdraws an item with all below it. It stays, marked with the revision; what no signed revision has is taken out.
/// </summary>
public sealed record WithdrawItemCommand(int Item) : EditCommand
{
    public override string Tell(Project before) =>
        $"withdraw scope item {ScopeItems.Number(before, Item)}";

    protected internal override void Apply(EditDraft draft)
    {
        var statement = new DraftStatement(draft);
        statement.NeedOpen();
        statement.NeedItem(Item);
        var all = statement.WithParts(Item);
        all.Reverse();
        foreach (var id in all)
        {
            if (statement.IsNew(id))
            {
                statement.Remove(id);
            }
            else if (draft.Reference(ScopeTable.Withdrawn, id) == 0)
            {
                draft.SetReference(ScopeTable.Withdrawn, id, statement.Newest);
            }
        }
    }
}

/// <summary>Lets an item hold again that the draft had withdrawn, with those above and below it.</summary>
public sealed record RestoreItemCommand(int Item) : EditCommand
{
    public override string Tell(Project before) =>
        $"restore scope item {ScopeItems.Number(before, Item)}";

    protected internal override void Apply(EditDraft draft)
    {
        var statement = new DraftStatement(draft);
        statement.NeedOpen();
        statement.NeedItem(Item, mayBeWithdrawn: true);
        if (
            draft.Reference(ScopeTable.Withdrawn, Item) is var gone
            && (gone == 0 || gone != statement.Newest)
        )
        {
            throw new EditException(
                gone == 0
                    ? $"{draft.CodeOf(ScopeTable.Definition, Item)} holds; there is nothing to restore."
                    : $"{draft.CodeOf(ScopeTable.Definition, Item)} was withdrawn by a signed revision. Add a new item.",
                "an item that the draft has withdrawn"
            );
        }

        foreach (var id in statement.WithParts(Item))
        {
            Restore(id);
        }

        for (var id = Item; id != 0; id = draft.Reference(ScopeTable.Parent, id))
        {
            Restore(id);
        }

        void Restore(int id)
        {
            if (draft.Reference(ScopeTable.Withdrawn, id) == statement.Newest)
            {
                draft.Set(ScopeTable.Withdrawn, id, null);
            }
        }
    }
}

/// <summary>Says items in words.</summary>
internal static class ScopeItems
{
    private const int LongestShown = 40;

    public static string Number(Project project, int id)
    {
        var scope = project[ScopeTable.Definition];
        var row = scope.RowOf(id);
        return row < 0 ? "that is new" : scope.Codes[row]!;
    }

    public static string Short(string text) =>
        text.Length <= LongestShown ? text : text[..(LongestShown - 1)].TrimEnd() + "…";
}
