using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.People;

/// <summary>
/// Packages that are handed to a person, step by step: offered, accepted by the person, open for charging, closed, work
/// accepted. The steps are common practice. A package without a row is not delegated.
/// </summary>
public static class DelegationTable
{
    public const int IsOffered = 0;
    public const int IsAccepted = 1;
    public const int IsOpen = 2;
    public const int IsClosed = 3;
    public const int IsWorkAccepted = 4;

    public static readonly WordCodec States = new(
        "offered",
        "accepted",
        "open",
        "closed",
        "work_accepted"
    );

    public static readonly ColumnDefinition Package = Layout.Reference(
        "package",
        "elements",
        "a package",
        "The package.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Person = Layout.Reference(
        "person",
        "people",
        "a person",
        "To whom it is delegated.",
        required: true
    );

    public static readonly ColumnDefinition State = Layout.Word(
        "state",
        States,
        "How far it has come: offered, accepted by the person, open for charging, closed, work accepted.",
        required: true
    );

    public static readonly ColumnDefinition Offered = Layout.Date(
        "offered",
        "When it was offered."
    );
    public static readonly ColumnDefinition Accepted = Layout.Date(
        "accepted",
        "When the person accepted it."
    );
    public static readonly ColumnDefinition Opened = Layout.Date(
        "opened",
        "When it was opened for charging."
    );
    public static readonly ColumnDefinition Closed = Layout.Date(
        "closed",
        "When it was closed for charging."
    );
    public static readonly ColumnDefinition WorkAccepted = Layout.Date(
        "work_accepted",
        "When its work was accepted."
    );
    public static readonly ColumnDefinition Note = Layout.Text(
        "note",
        "What was agreed, or why a step was taken back."
    );

    /// <summary>The date of each state, in the order of the states.</summary>
    public static readonly IReadOnlyList<ColumnDefinition> Dates =
    [
        Offered,
        Accepted,
        Opened,
        Closed,
        WorkAccepted,
    ];

    public static readonly TableDefinition Definition = new(
        "delegations",
        "A package that is handed to a person, and how far that has come.",
        Package,
        Person,
        State,
        Offered,
        Accepted,
        Opened,
        Closed,
        WorkAccepted,
        Note
    );
}
