using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Scope;

/// <summary>
/// Revisions of the scope statement, in the natural order of their codes. The last of them is a draft as long as nobody
/// has signed it.
/// </summary>
public static class ScopeRevisionTable
{
    public static readonly ColumnDefinition Revision = Layout.CodeKey(
        "revision",
        "Number or letter of the revision."
    );

    public static readonly ColumnDefinition Signed = Layout.Date(
        "signed",
        "When it was signed; empty while it is a draft."
    );

    public static readonly ColumnDefinition Note = Layout.Text("note", "What it is about.");

    public static readonly TableDefinition Definition = new(
        "scope_revisions",
        "A revision of the scope statement.",
        Revision,
        Signed,
        Note
    );
}

/// <summary>What scope items said before they were revised.</summary>
public static class ScopeWordingTable
{
    public static readonly ColumnDefinition Item = Layout.Reference(
        "item",
        "scope",
        "a scope item",
        "The item.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Revision = Layout.Reference(
        "revision",
        "scope_revisions",
        "a revision of the scope statement",
        "The revision that replaced this wording.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Kind = Layout.Word(
        "kind",
        ScopeTable.Kinds,
        "What the item stated until then.",
        required: true
    );

    public static readonly ColumnDefinition Text = Layout.Text(
        "text",
        "The wording until then.",
        required: true
    );

    public static readonly ColumnDefinition Clause = Layout.Text(
        "clause",
        "Where it stood in the contract."
    );

    public static readonly ColumnDefinition Since = Layout.Reference(
        "since",
        "scope_revisions",
        "a revision of the scope statement",
        "The revision in which this wording had come; empty for the first."
    );

    public static readonly TableDefinition Definition = new(
        "scope_wordings",
        "What a scope item said before a revision changed it.",
        Item,
        Revision,
        Kind,
        Text,
        Clause,
        Since
    );
}
