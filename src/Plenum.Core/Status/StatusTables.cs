using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Status;

/// <summary>Reported status of packages, by period.</summary>
public static class StatusTable
{
    public static readonly ColumnDefinition Package = Layout.Reference(
        "package",
        "elements",
        "a package",
        "The package.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Period = Layout.Reference(
        "period",
        "periods",
        "a period",
        "The period that is reported.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Started = Layout.Date(
        "started",
        "Actual start.",
        withdrawable: true
    );
    public static readonly ColumnDefinition Finished = Layout.Date(
        "finished",
        "Actual finish.",
        withdrawable: true
    );

    public static readonly ColumnDefinition Percent = Layout.Percent(
        "percent",
        "Per cent complete, 0 to 100.",
        withdrawable: true
    );

    public static readonly ColumnDefinition UnitsDone = Layout.Decimal(
        "units_done",
        "Units done so far.",
        withdrawable: true
    );

    public static readonly ColumnDefinition Quantity = Layout.Decimal(
        "quantity",
        "Current forecast of all units.",
        withdrawable: true
    );

    public static readonly ColumnDefinition CostToCome = Layout.Money(
        "etc",
        "Cost still to come.",
        withdrawable: true
    );

    public static readonly ColumnDefinition Remaining = Layout.Whole(
        "remaining",
        "Remaining working days.",
        0,
        100_000,
        withdrawable: true
    );

    public static readonly ColumnDefinition Assumed = Layout.Flag(
        "assumed",
        "1 if same as planned was assumed."
    );
    public static readonly ColumnDefinition Remark = Layout.Text("remark", "Remark.");
    public static readonly ColumnDefinition By = Layout.Text("by", "Who reported.");

    public static readonly TableDefinition Definition = new(
        "status",
        "Status of a package at a period's end. A field holds until a later row gives it anew; - takes it back.",
        Package,
        Period,
        Started,
        Finished,
        Percent,
        UnitsDone,
        Quantity,
        CostToCome,
        Remaining,
        Assumed,
        Remark,
        By
    )
    {
        ClosedWith = Period,
    };
}

/// <summary>Reported status of activities, by period.</summary>
public static class ActivityStatusTable
{
    public static readonly ColumnDefinition Activity = Layout.Reference(
        "activity",
        "activities",
        "an activity",
        "The activity.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Period = Layout.Reference(
        "period",
        "periods",
        "a period",
        "The period that is reported.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Started = Layout.Date(
        "started",
        "Actual start.",
        withdrawable: true
    );
    public static readonly ColumnDefinition Finished = Layout.Date(
        "finished",
        "Actual finish.",
        withdrawable: true
    );

    public static readonly ColumnDefinition Remaining = Layout.Whole(
        "remaining",
        "Remaining working days.",
        0,
        100_000,
        withdrawable: true
    );

    public static readonly TableDefinition Definition = new(
        "activity_status",
        "Status of an activity at a period's end.",
        Activity,
        Period,
        Started,
        Finished,
        Remaining
    )
    {
        ClosedWith = Period,
    };
}

/// <summary>Milestones reached.</summary>
public static class MilestoneStatusTable
{
    public static readonly ColumnDefinition Package = Layout.Reference(
        "package",
        "elements",
        "a package",
        "The package.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Milestone = Layout.Code(
        "milestone",
        "A milestone of the package.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Period = Layout.Reference(
        "period",
        "periods",
        "a period",
        "The period that is reported.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Done = Layout.Date(
        "done",
        "Date on which it was reached.",
        withdrawable: true
    );

    public static readonly TableDefinition Definition = new(
        "milestone_status",
        "A milestone reached, reported in a period.",
        Package,
        Milestone,
        Period,
        Done
    )
    {
        ClosedWith = Period,
    };
}

/// <summary>Items of bulk work within packages.</summary>
public static class ItemTable
{
    public static readonly ColumnDefinition Package = Layout.Reference(
        "package",
        "elements",
        "a package",
        "The package.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Item = Layout.Code(
        "item",
        "Code of the item within the package.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Name = Layout.Text("name", "Name.");
    public static readonly ColumnDefinition Quantity = Layout.Decimal("quantity", "Quantity.");
    public static readonly ColumnDefinition Hours = Layout.Hours(
        "hours",
        "Hours; the weight of the item in its package."
    );
    public static readonly ColumnDefinition Rule = Layout.Code(
        "rule",
        "Rule of credit by which it earns."
    );

    public static readonly TableDefinition Definition = new(
        "items",
        "An item of bulk work, a drawing, a purchased piece or a loop within a package.",
        Package,
        Item,
        Name,
        Quantity,
        Hours,
        Rule
    );
}

/// <summary>Steps of rules of credit.</summary>
public static class CreditStepTable
{
    public static readonly ColumnDefinition Rule = Layout.CodeKey(
        "rule",
        "Code of the rule of credit."
    );
    public static readonly ColumnDefinition Step = Layout.CodeKey("step", "The step.");

    public static readonly ColumnDefinition Percent = Layout.Percent(
        "percent",
        "What the step earns, in per cent; all steps of a rule add up to 100.",
        required: true
    );

    public static readonly ColumnDefinition Order = Layout.Whole(
        "order",
        "Place of the step.",
        -1_000_000,
        1_000_000
    );

    public static readonly TableDefinition Definition = new(
        "credit_steps",
        "A step of a rule of credit.",
        Rule,
        Step,
        Percent,
        Order
    );
}

/// <summary>Steps done on items.</summary>
public static class ItemStepTable
{
    public static readonly ColumnDefinition Item = Layout.Code(
        "item",
        "The item.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Package = Layout.Reference(
        "package",
        "elements",
        "a package",
        "The package.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Step = Layout.Code(
        "step",
        "A step of the item's rule of credit.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Period = Layout.Reference(
        "period",
        "periods",
        "a period",
        "The period that is reported.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Quantity = Layout.Decimal(
        "quantity",
        "Quantity done so far; empty when the whole step is done.",
        withdrawable: true
    );

    public static readonly TableDefinition Definition = new(
        "item_steps",
        "A step done on an item, reported in a period.",
        Item,
        Package,
        Step,
        Period,
        Quantity
    )
    {
        ClosedWith = Period,
    };
}
