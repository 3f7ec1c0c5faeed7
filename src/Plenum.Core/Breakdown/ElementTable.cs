using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown;

/// <summary>Elements of the work breakdown structure, kept in depth-first order.</summary>
public static class ElementTable
{
    public const int Project = 0;
    public const int Branch = 1;
    public const int WorkPackage = 2;
    public const int PlanningPackage = 3;

    public static readonly WordCodec Kinds = new(
        "project",
        "branch",
        "work_package",
        "planning_package"
    );

    public static readonly ColumnDefinition Code = Layout.CodeKey(
        "code",
        "WBS code, unique in the project."
    );

    public static readonly ColumnDefinition Parent = Layout.Reference(
        "parent",
        "elements",
        "an element",
        "The element that this one is part of; empty for the one root."
    );

    public static readonly ColumnDefinition Order = Layout.Whole(
        "order",
        "Place among its sisters. Sisters without one come after, by code.",
        -1_000_000_000,
        1_000_000_000
    );

    public static readonly ColumnDefinition Name = Layout.Text("name", "Name.", required: true);

    public static readonly ColumnDefinition Kind = Layout.Word(
        "kind",
        Kinds,
        "Kind; without one the root is the project, an element with children a branch and a leaf a work package."
    );

    public static readonly ColumnDefinition Split = Layout.Text(
        "split",
        "The one logic by which it is split: phase, part, function, place, discipline, organisation, contract, or another word."
    );

    public static readonly ColumnDefinition PartType = Layout.Reference(
        "part_type",
        "part_types",
        "a part type",
        "What kind of part it is."
    );

    public static readonly ColumnDefinition Activity = Layout.Code(
        "activity",
        "For a package: the activity of the part's work set that it carries out."
    );

    public static readonly ColumnDefinition Person = Layout.Reference(
        "person",
        "people",
        "a person",
        "Person in charge; without one that of the nearest ancestor that names one."
    );

    public static readonly ColumnDefinition Unit = Layout.Reference(
        "unit",
        "units",
        "an organisation unit",
        "Organisation unit; without one that of the nearest ancestor that names one."
    );

    public static readonly ColumnDefinition Description = Layout.Text(
        "description",
        "Dictionary: what it is."
    );
    public static readonly ColumnDefinition Output = Layout.Text(
        "output",
        "Dictionary: what it delivers."
    );
    public static readonly ColumnDefinition Included = Layout.Text(
        "included",
        "Dictionary: what is in it."
    );
    public static readonly ColumnDefinition Excluded = Layout.Text(
        "excluded",
        "Dictionary: what is not in it."
    );
    public static readonly ColumnDefinition Acceptance = Layout.Text(
        "acceptance",
        "Dictionary: when it is done."
    );
    public static readonly ColumnDefinition Assumptions = Layout.Text(
        "assumptions",
        "Dictionary: what is assumed."
    );
    public static readonly ColumnDefinition Quantity = Layout.Decimal(
        "quantity",
        "Quantity of its output."
    );
    public static readonly ColumnDefinition QuantityUnit = Layout.Text(
        "quantity_unit",
        "Unit of the quantity."
    );

    public static readonly ColumnDefinition Hazards = Layout.Text(
        "hazards",
        "Hazards of the work, separated by semicolons. Naming one authorises nothing; permits and local codes decide."
    );

    public static readonly ColumnDefinition Allotted = Layout.Money(
        "allotted",
        "Money given to it from above."
    );
    public static readonly ColumnDefinition AllottedHours = Layout.Hours(
        "allotted_hours",
        "Hours given to it from above."
    );

    public static readonly TableDefinition Definition = new(
        "elements",
        "An element of the work breakdown structure.",
        Code,
        Parent,
        Order,
        Name,
        Kind,
        Split,
        PartType,
        Activity,
        Person,
        Unit,
        Description,
        Output,
        Included,
        Excluded,
        Acceptance,
        Assumptions,
        Quantity,
        QuantityUnit,
        Hazards,
        Allotted,
        AllottedHours
    );
}
