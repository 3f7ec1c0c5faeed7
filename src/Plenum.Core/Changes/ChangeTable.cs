using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Changes;

/// <summary>Change requests.</summary>
public static class ChangeTable
{
    public static readonly WordCodec States = new(
        "draft",
        "submitted",
        "approved",
        "rejected",
        "implemented"
    );

    public static readonly ColumnDefinition Change = Layout.CodeKey(
        "change",
        "Number of the change request."
    );
    public static readonly ColumnDefinition Title = Layout.Text("title", "Title.");
    public static readonly ColumnDefinition Reason = Layout.Text("reason", "Reason.");

    public static readonly ColumnDefinition State = Layout.Word(
        "state",
        States,
        "draft, submitted, approved, rejected or implemented."
    );

    public static readonly ColumnDefinition DecidedOn = Layout.Date(
        "decided_on",
        "Date of the decision."
    );
    public static readonly ColumnDefinition DecidedBy = Layout.Text("decided_by", "Who decided.");

    public static readonly TableDefinition Definition = new(
        "changes",
        "A change request, or the contract itself.",
        Change,
        Title,
        Reason,
        State,
        DecidedOn,
        DecidedBy
    );
}
