using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Scope;
using Plenum.Workbench.Commands.Breakdown;

namespace Plenum.Workbench.Commands.Scope;

/// <summary>Notes that an element answers an item, whole or by a phrase of it.</summary>
/// <param name="Item">Id of the item.</param>
/// <param name="Element">Id of the element.</param>
/// <param name="Phrase">Words of the item's text; null or empty for the whole.</param>
public sealed record TraceCommand(int Item, int Element, string? Phrase = null) : EditCommand
{
    public override string Tell(Project before) =>
        $"trace {Elements.Say(before, Element)} to {Phrases.Say(before, Item, Phrase)}";

    protected internal override void Apply(EditDraft draft)
    {
        Elements.Need(draft, Element);
        Phrases.Trace(draft, Item, Element, Phrase);
    }
}

/// <summary>
/// Takes back that an element answers an item. A phrase that nothing else answers is kept as one that has to be answered.
/// </summary>
/// <param name="Trace">Id of the row of <c>trace</c>.</param>
public sealed record UntraceCommand(int Trace) : EditCommand
{
    public override string Tell(Project before)
    {
        var trace = before[TraceTable.Definition];
        var row = trace.RowOf(Trace);
        return row < 0
            ? "untrace an element"
            : $"untrace {Elements.Say(before, trace.Ints(TraceTable.Element)[row])} from "
                + Phrases.Say(
                    before,
                    trace.Ints(TraceTable.Item)[row],
                    trace.Texts(TraceTable.Phrase)[row]
                );
    }

    protected internal override void Apply(EditDraft draft)
    {
        if (!draft.Has(TraceTable.Definition, Trace))
        {
            throw new EditException(
                "This trace is no longer there; somebody has taken it back.",
                "a trace that is there"
            );
        }

        var item = draft.Reference(TraceTable.Item, Trace);
        var phrase = draft.Text(TraceTable.Phrase, Trace);
        draft.Remove(TraceTable.Definition, Trace);
        if (
            phrase is not null
            && Phrases.Occurs(draft, item, phrase)
            && !Phrases.IsAnswered(draft, item, phrase)
        )
        {
            Phrases.Want(draft, item, phrase);
        }
    }
}

/// <summary>Notes that a phrase of an item has to be answered on its own.</summary>
public sealed record WantPhraseCommand(int Item, string Phrase) : EditCommand
{
    public override string Tell(Project before) =>
        $"ask for an answer to {Phrases.Say(before, Item, Phrase)}";

    protected internal override void Apply(EditDraft draft)
    {
        new DraftStatement(draft).NeedItem(Item);
        Phrases.Want(draft, Item, Phrases.Checked(draft, Item, Phrase, ScopePhraseTable.Phrase)!);
    }
}

/// <summary>Takes back that a phrase has to be answered on its own.</summary>
public sealed record DropPhraseCommand(int Item, string Phrase) : EditCommand
{
    public override string Tell(Project before) =>
        $"drop the question of {Phrases.Say(before, Item, Phrase)}";

    protected internal override void Apply(EditDraft draft)
    {
        var statement = new DraftStatement(draft);
        statement.NeedItem(Item);
        foreach (var row in statement.RowsOf(ScopePhraseTable.Item, Item))
        {
            if (Phrases.Same(draft.Text(ScopePhraseTable.Phrase, row), Phrase))
            {
                draft.Remove(ScopePhraseTable.Definition, row);
            }
        }
    }
}

/// <summary>Adds a part to the breakdown because a phrase of an item, or the whole of it, asks for one.</summary>
/// <param name="Item">Id of the item.</param>
/// <param name="Phrase">Words of the item's text; null or empty for the whole.</param>
/// <param name="Parent">Id of the element that the part is put under; 0 for the root of an empty breakdown.</param>
/// <param name="Name">Name of the part.</param>
public sealed record AddPartForCommand(int Item, string? Phrase, int Parent, string Name)
    : EditCommand
{
    public override string Tell(Project before) =>
        $"add {Name.Trim()} to {Elements.Say(before, Parent)} for {Phrases.Say(before, Item, Phrase)}";

    protected internal override void Apply(EditDraft draft)
    {
        if (Parent == 0)
        {
            new AddElementCommand(0, 0, Name).Apply(draft);
            Phrases.Trace(draft, Item, draft.Breakdown.Root, Phrase);
            return;
        }

        Elements.Need(draft, Parent);
        var last = draft.Breakdown.Children(Parent) is [.., var youngest] ? youngest : 0;
        new AddElementCommand(Parent, last, Name).Apply(draft);
        Phrases.Trace(draft, Item, draft.Breakdown.Children(Parent)[^1], Phrase);
    }
}
