using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Scope;

namespace Plenum.Workbench.Commands.Scope;

/// <summary>Phrases of scope items while a command writes.</summary>
internal static class Phrases
{
    /// <summary>The item, and the phrase if one is meant.</summary>
    public static string Say(Project project, int item, string? phrase) =>
        $"scope item {ScopeItems.Number(project, item)}"
        + (string.IsNullOrWhiteSpace(phrase) ? "" : $", \"{ScopeItems.Short(phrase.Trim())}\"");

    public static bool Same(string? one, string? other) =>
        string.Equals(one, other, StringComparison.OrdinalIgnoreCase);

    public static bool Occurs(EditDraft draft, int item, string phrase) =>
        draft.Text(ScopeTable.Text, item)?.Contains(phrase, StringComparison.OrdinalIgnoreCase)
        ?? false;

    public static bool IsAnswered(EditDraft draft, int item, string phrase) =>
        new DraftStatement(draft)
            .RowsOf(TraceTable.Item, item)
            .Exists(row => Same(draft.Text(TraceTable.Phrase, row), phrase));

    /// <summary>The phrase without spaces around it; null for the whole item.</summary>
    /// <exception cref="EditException">The item does not say it.</exception>
    public static string? Checked(
        EditDraft draft,
        int item,
        string? phrase,
        ColumnDefinition column
    )
    {
        var words = phrase?.Trim();
        if (string.IsNullOrEmpty(words))
        {
            return column.IsRequired
                ? throw Wrong("No words are marked.", "words of the item")
                : null;
        }

        if (Same(words, draft.Text(ScopeTable.Text, item)))
        {
            return column.IsRequired
                ? throw Wrong(
                    "All of the item is marked; trace the whole item instead.",
                    "some of its words"
                )
                : null;
        }

        if (!Occurs(draft, item, words))
        {
            throw Wrong(
                $"{draft.CodeOf(ScopeTable.Definition, item)} does not say \"{words}\".",
                "words as they stand in the item"
            );
        }

        return words;

        EditException Wrong(string message, string expected) =>
            new([
                new EditFault(
                    column.Table.Name,
                    draft.CodeOf(ScopeTable.Definition, item),
                    column.Name,
                    phrase,
                    expected,
                    message
                ),
            ]);
    }

    /// <exception cref="EditException">The item is not there, or does not say the phrase, or the element answers it already.</exception>
    public static void Trace(EditDraft draft, int item, int element, string? phrase)
    {
        var statement = new DraftStatement(draft);
        statement.NeedItem(item);
        var words = Checked(draft, item, phrase, TraceTable.Phrase);
        if (
            statement
                .RowsOf(TraceTable.Item, item)
                .Exists(row =>
                    draft.Reference(TraceTable.Element, row) == element
                    && Same(draft.Text(TraceTable.Phrase, row), words)
                )
        )
        {
            throw new EditException(
                $"{draft.Breakdown.Say(element)} answers this already.",
                "an element that does not answer it yet"
            );
        }

        var id = draft.Add(TraceTable.Definition, (TraceTable.Phrase, words));
        draft.SetReference(TraceTable.Item, id, item);
        draft.SetReference(TraceTable.Element, id, element);
    }

    /// <summary>Adds a phrase to those that have to be answered, unless it stands there.</summary>
    public static void Want(EditDraft draft, int item, string phrase)
    {
        if (
            new DraftStatement(draft)
                .RowsOf(ScopePhraseTable.Item, item)
                .Exists(row => Same(draft.Text(ScopePhraseTable.Phrase, row), phrase))
        )
        {
            return;
        }

        var id = draft.Add(ScopePhraseTable.Definition, (ScopePhraseTable.Phrase, phrase));
        draft.SetReference(ScopePhraseTable.Item, id, item);
    }
}
