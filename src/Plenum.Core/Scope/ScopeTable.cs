using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Scope;

/// <summary>Items of the scope statement.</summary>
public static class ScopeTable
{
    public static readonly WordCodec Kinds = new(
        "deliverable",
        "requirement",
        "exclusion",
        "assumption",
        "constraint",
        "acceptance"
    );

    public static readonly ColumnDefinition Item = Layout.CodeKey("item", "Number of the item.");

    public static readonly ColumnDefinition Parent = Layout.Reference(
        "parent",
        "scope",
        "a scope item",
        "The item that this one is part of."
    );

    public static readonly ColumnDefinition Kind = Layout.Word(
        "kind",
        Kinds,
        "What the item states; acceptance is an acceptance criterion.",
        required: true
    );

    public static readonly ColumnDefinition Text = Layout.Text(
        "text",
        "The wording.",
        required: true
    );

    public static readonly ColumnDefinition Clause = Layout.Text(
        "clause",
        "Where it stands in the contract."
    );

    public static readonly ColumnDefinition Revision = Layout.Reference(
        "revision",
        "scope_revisions",
        "a revision of the scope statement",
        "The revision in which the present wording came; empty for the first."
    );

    public static readonly ColumnDefinition Withdrawn = Layout.Reference(
        "withdrawn",
        "scope_revisions",
        "a revision of the scope statement",
        "The revision in which the item was withdrawn; empty while it holds."
    );

    public static readonly TableDefinition Definition = new(
        "scope",
        "One item of the scope statement.",
        Item,
        Parent,
        Kind,
        Text,
        Clause,
        Revision,
        Withdrawn
    );
}
