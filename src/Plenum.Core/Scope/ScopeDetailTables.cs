using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Scope;

/// <summary>
/// Phrases of scope items that have to be answered on their own. A phrase that is traced to an element need not stand
/// here; one that nothing answers yet has to, so that it is not forgotten.
/// </summary>
public static class ScopePhraseTable
{
    public static readonly ColumnDefinition Item = Layout.Reference(
        "item",
        "scope",
        "a scope item",
        "The scope item.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Phrase = Layout.Text(
        "phrase",
        "The words of the item that have to be answered.",
        required: true,
        key: true
    );

    public static readonly TableDefinition Definition = new(
        "scope_phrases",
        "A phrase of a scope item that has to be answered on its own.",
        Item,
        Phrase
    );
}

/// <summary>Questions to the client about the scope statement.</summary>
public static class QueryTable
{
    public static readonly ColumnDefinition Query = Layout.CodeKey("query", "Number of the query.");

    public static readonly ColumnDefinition Item = Layout.Reference(
        "item",
        "scope",
        "a scope item",
        "The scope item that it is about; empty for the statement as a whole."
    );

    public static readonly ColumnDefinition Text = Layout.Text(
        "text",
        "What is asked.",
        required: true
    );

    public static readonly ColumnDefinition Asked = Layout.Date("asked", "When it was asked.");

    public static readonly ColumnDefinition AskedBy = Layout.Text("asked_by", "Who asked it.");

    public static readonly ColumnDefinition Answer = Layout.Text(
        "answer",
        "What the client answered; empty while the query is open."
    );

    public static readonly ColumnDefinition Answered = Layout.Date(
        "answered",
        "When it was answered."
    );

    public static readonly TableDefinition Definition = new(
        "queries",
        "A query to the client about the scope statement.",
        Query,
        Item,
        Text,
        Asked,
        AskedBy,
        Answer,
        Answered
    );
}
