using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Baseline;

/// <summary>What the baseline says of packages beside their budget.</summary>
public static class PackageTable
{
    public const int Even = 0;
    public const int Falling = 1;
    public const int Rising = 2;
    public const int SShaped = 3;
    public const int Periods = 4;

    public static readonly WordCodec Spreads = new(
        "even",
        "falling",
        "rising",
        "s_shaped",
        "periods"
    );

    public static readonly ColumnDefinition Package = Layout.Reference(
        "package",
        "elements",
        "a package",
        "Code of an element of kind work_package or planning_package.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Account = Layout.Reference(
        "account",
        "accounts",
        "a control account",
        "The control account that it names; it must stand on the package or an ancestor."
    );

    public static readonly ColumnDefinition Technique = Layout.Word(
        "technique",
        TechniqueCodec.Instance,
        "Earned value technique: 0/100, 50/50, any a/b that adds to 100, milestones, percent, units, items, loe, apportioned."
    );

    public static readonly ColumnDefinition Base = Layout.Reference(
        "base",
        "elements",
        "a package",
        "The package that apportioned effort follows."
    );

    public static readonly ColumnDefinition Spread = Layout.Word(
        "spread",
        Spreads,
        "How the plan spreads over time: even (default), falling, rising, s_shaped, periods."
    );

    public static readonly ColumnDefinition Start = Layout.Date("start", "Baseline start.");
    public static readonly ColumnDefinition Finish = Layout.Date("finish", "Baseline finish.");

    public static readonly TableDefinition Definition = new(
        "packages",
        "Account, technique, spread and baseline dates of a package.",
        Package,
        Account,
        Technique,
        Base,
        Spread,
        Start,
        Finish
    );
}

/// <summary>Budgets of packages by cost element.</summary>
public static class BudgetTable
{
    public static readonly ColumnDefinition Package = Layout.Reference(
        "package",
        "elements",
        "a package",
        "The package.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition CostElement = Layout.Word(
        "cost_element",
        CostElements.Words,
        "Cost element: labour, material, equipment, subcontract, other.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Amount = Layout.Money(
        "amount",
        "Budget, in the row's currency.",
        required: true
    );
    public static readonly ColumnDefinition Hours = Layout.Hours("hours", "Budgeted hours.");

    public static readonly ColumnDefinition Currency = Layout.Word(
        "currency",
        CurrencyCodec.Instance,
        "Currency of the amount; the project's where none is given."
    );

    public static readonly ColumnDefinition Rate = Layout.Decimal(
        "rate",
        "Units of the project's currency for one unit of the row's currency."
    );

    public static readonly ColumnDefinition Converted = Layout.ConvertedMoney(
        "converted",
        "Amount in the project's currency, rounded once."
    );

    public static readonly TableDefinition Definition = new(
        "budget",
        "The budget of a package for one cost element.",
        Package,
        CostElement,
        Amount,
        Hours,
        Currency,
        Rate,
        Converted
    )
    {
        Conversion = new Conversion(Amount, Currency, Rate, Converted),
    };
}

/// <summary>Planned amounts by period, for packages whose spread is given by periods.</summary>
public static class BudgetPeriodTable
{
    public static readonly ColumnDefinition Package = Layout.Reference(
        "package",
        "elements",
        "a package",
        "The package; its spread is periods.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Period = Layout.Reference(
        "period",
        "periods",
        "a period",
        "A period that touches the package's baseline dates.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Amount = Layout.Money(
        "amount",
        "Planned in this period, in the project's currency.",
        required: true
    );

    public static readonly ColumnDefinition CostElement = Layout.Word(
        "cost_element",
        CostElements.Words,
        "Cost element; empty when the amounts are those of the whole package.",
        key: true
    );

    public static readonly TableDefinition Definition = new(
        "budget_periods",
        "What a package plans in a period. The amounts add up to its budget.",
        Package,
        Period,
        Amount,
        CostElement
    );
}

/// <summary>Weighted milestones.</summary>
public static class MilestoneTable
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
        "Code of the milestone within the package.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Weight = Layout.Decimal(
        "weight",
        "Weight; what counts is its share of all weights of the package.",
        required: true
    );

    public static readonly ColumnDefinition Planned = Layout.Date(
        "planned",
        "Planned date, within the package's baseline dates; its baseline finish where none is given."
    );

    public static readonly TableDefinition Definition = new(
        "milestones",
        "A weighted milestone of a package.",
        Package,
        Milestone,
        Weight,
        Planned
    );
}

/// <summary>Postings of the budget ledger.</summary>
public static class PostingTable
{
    public const int Contract = 0;
    public const int Reserve = 1;
    public const int Undistributed = 2;
    public const int Allowances = 3;

    public static readonly WordCodec Funds = new(
        "contract",
        "reserve",
        "undistributed",
        "allowances"
    );

    public static readonly ColumnDefinition Change = Layout.Reference(
        "change",
        "changes",
        "a change request",
        "The change that authorises it; the opening names the contract.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Posting = Layout.Code(
        "posting",
        "Number of the posting within the change.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition From = Layout.Reference(
        "from",
        ["accounts"],
        "contract, reserve, undistributed, allowances or a control account",
        "Where the budget comes from.",
        required: true,
        words: Funds
    );

    public static readonly ColumnDefinition To = Layout.Reference(
        "to",
        ["accounts"],
        "contract, reserve, undistributed, allowances or a control account",
        "Where it goes.",
        required: true,
        words: Funds
    );

    public static readonly ColumnDefinition Amount = Layout.Money(
        "amount",
        "Amount.",
        required: true,
        mayBeNegative: true
    );

    public static readonly ColumnDefinition CostElement = Layout.Word(
        "cost_element",
        CostElements.Words,
        "Cost element, where the budget has one."
    );

    public static readonly TableDefinition Definition = new(
        "postings",
        "A movement of budget from one account of the budget ledger to another.",
        Change,
        Posting,
        From,
        To,
        Amount,
        CostElement
    );
}
