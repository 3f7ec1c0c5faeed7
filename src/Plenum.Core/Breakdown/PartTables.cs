using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown;

/// <summary>Kinds of parts: pump, tank, building.</summary>
public static class PartTypeTable
{
    public static readonly ColumnDefinition PartType = Layout.CodeKey(
        "part_type",
        "Code of the part type."
    );

    public static readonly ColumnDefinition Name = Layout.Text("name", "Name of the part type.");

    public static readonly TableDefinition Definition = new(
        "part_types",
        "A kind of part.",
        PartType,
        Name
    );
}

/// <summary>The activities that every part of a type needs.</summary>
public static class WorkSetTable
{
    public static readonly ColumnDefinition PartType = Layout.Reference(
        "part_type",
        "part_types",
        "a part type",
        "The part type.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Activity = Layout.Code(
        "activity",
        "The activity that any such part needs.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Facet = Layout.Text(
        "facet",
        "Engineering, procurement, construction, commissioning, close, or another word."
    );

    public static readonly ColumnDefinition Order = Layout.Whole(
        "order",
        "Place within the set.",
        -1_000_000,
        1_000_000
    );

    public static readonly ColumnDefinition Share = Layout.Decimal(
        "share",
        "Usual share of the part's cost, in per cent."
    );

    public static readonly ColumnDefinition Duration = Layout.Whole(
        "duration",
        "Usual duration in working days.",
        0,
        100_000
    );

    public static readonly ColumnDefinition Technique = Layout.Word(
        "technique",
        TechniqueCodec.Instance,
        "Usual earned value technique."
    );

    public static readonly ColumnDefinition After = Layout.Text(
        "after",
        "Activities of the set that come before, separated by semicolons."
    );

    public static readonly ColumnDefinition Hazards = Layout.Text(
        "hazards",
        "Usual hazards, separated by semicolons."
    );

    public static readonly TableDefinition Definition = new(
        "work_sets",
        "An activity that every part of a type needs.",
        PartType,
        Activity,
        Facet,
        Order,
        Share,
        Duration,
        Technique,
        After,
        Hazards
    );
}

/// <summary>Activities of a work set that a part does not need, with the reason.</summary>
public static class NotNeededTable
{
    public static readonly ColumnDefinition Element = Layout.Reference(
        "element",
        "elements",
        "an element",
        "The part.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Activity = Layout.Code(
        "activity",
        "The activity of the part type's work set.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Reason = Layout.Text(
        "reason",
        "Why it is not needed.",
        required: true
    );

    public static readonly TableDefinition Definition = new(
        "not_needed",
        "An activity that a part does not need.",
        Element,
        Activity,
        Reason
    );
}
