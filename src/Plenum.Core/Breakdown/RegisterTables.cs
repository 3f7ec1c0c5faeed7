using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown;

/// <summary>Which elements answer which scope items.</summary>
public static class TraceTable
{
    public static readonly ColumnDefinition Item = Layout.Reference(
        "item",
        "scope",
        "a scope item",
        "The scope item.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Element = Layout.Reference(
        "element",
        "elements",
        "an element",
        "The element that answers it.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Phrase = Layout.Text(
        "phrase",
        "The words of the item that are answered; empty for the whole item.",
        key: true
    );

    public static readonly TableDefinition Definition = new(
        "trace",
        "An element that answers a scope item, whole or by phrase.",
        Item,
        Element,
        Phrase
    );
}

/// <summary>Opportunities, constraints, risks and interfaces, where the breaking down reveals them.</summary>
public static class RegisterTable
{
    public static readonly WordCodec Kinds = new("opportunity", "constraint", "risk", "interface");

    public static readonly ColumnDefinition Entry = Layout.CodeKey("entry", "Number of the entry.");

    public static readonly ColumnDefinition Element = Layout.Reference(
        "element",
        "elements",
        "an element",
        "The element on which it was found.",
        required: true
    );

    public static readonly ColumnDefinition Kind = Layout.Word(
        "kind",
        Kinds,
        "Kind of entry.",
        required: true
    );
    public static readonly ColumnDefinition Text = Layout.Text(
        "text",
        "The entry.",
        required: true
    );
    public static readonly ColumnDefinition Owner = Layout.Text("owner", "Who follows it up.");

    public static readonly ColumnDefinition Low = Layout.Money(
        "low",
        "Effect in money, low.",
        mayBeNegative: true
    );
    public static readonly ColumnDefinition Likely = Layout.Money(
        "likely",
        "Likely.",
        mayBeNegative: true
    );
    public static readonly ColumnDefinition High = Layout.Money(
        "high",
        "High.",
        mayBeNegative: true
    );
    public static readonly ColumnDefinition DaysLow = Layout.Decimal(
        "days_low",
        "Effect in days, low.",
        mayBeNegative: true
    );
    public static readonly ColumnDefinition DaysLikely = Layout.Decimal(
        "days_likely",
        "Likely.",
        mayBeNegative: true
    );
    public static readonly ColumnDefinition DaysHigh = Layout.Decimal(
        "days_high",
        "High.",
        mayBeNegative: true
    );
    public static readonly ColumnDefinition Giver = Layout.Text("giver", "Interface: who gives.");
    public static readonly ColumnDefinition Receiver = Layout.Text(
        "receiver",
        "Interface: who receives."
    );
    public static readonly ColumnDefinition NeedBy = Layout.Date(
        "need_by",
        "Interface: when it is needed."
    );
    public static readonly ColumnDefinition Promised = Layout.Date(
        "promised",
        "Interface: when it is promised."
    );

    public static readonly TableDefinition Definition = new(
        "register",
        "An opportunity, constraint, risk or interface on an element.",
        Entry,
        Element,
        Kind,
        Text,
        Owner,
        Low,
        Likely,
        High,
        DaysLow,
        DaysLikely,
        DaysHigh,
        Giver,
        Receiver,
        NeedBy,
        Promised
    );
}

/// <summary>Other ways to see the same packages: construction area, commissioning system, contract.</summary>
public static class GroupTable
{
    public static readonly ColumnDefinition Grouping = Layout.CodeKey("grouping", "The grouping.");
    public static readonly ColumnDefinition Group = Layout.CodeKey(
        "group",
        "Code of the group within the grouping."
    );
    public static readonly ColumnDefinition Name = Layout.Text("name", "Name of the group.");

    public static readonly ColumnDefinition Parent = Layout.Code(
        "parent",
        "The group of the same grouping that this one is part of."
    );

    public static readonly TableDefinition Definition = new(
        "groups",
        "A group of a grouping.",
        Grouping,
        Group,
        Name,
        Parent
    );
}

/// <summary>Which group of a grouping a package is in: at most one.</summary>
public static class GroupMemberTable
{
    public static readonly ColumnDefinition Grouping = Layout.CodeKey("grouping", "The grouping.");

    public static readonly ColumnDefinition Package = Layout.Reference(
        "package",
        "elements",
        "a package",
        "The package.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Group = Layout.Code(
        "group",
        "The group that it is in.",
        required: true
    );

    public static readonly TableDefinition Definition = new(
        "group_members",
        "A package in a group.",
        Grouping,
        Package,
        Group
    );
}
