using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Status;

/// <summary>Ledger rows of actual cost.</summary>
public static class ActualTable
{
    public const int Invoiced = 0;
    public const int Accrual = 1;

    /// <summary>Place of packages and of accounts among the targets of a charge code.</summary>
    public const int ChargedPackage = 0;

    /// <inheritdoc cref="ChargedPackage"/>
    public const int ChargedAccount = 1;

    public static readonly WordCodec Kinds = new("invoiced", "accrual");

    public static readonly ColumnDefinition Document = Layout.CodeKey(
        "document",
        "Document number."
    );
    public static readonly ColumnDefinition Line = Layout.CodeKey("line", "Line of the document.");

    public static readonly ColumnDefinition Charge = Layout.Reference(
        "charge",
        ["elements", "accounts"],
        "a package or a control account",
        "Charge code: a package, or a control account.",
        required: true
    );

    public static readonly ColumnDefinition Period = Layout.Reference(
        "period",
        "periods",
        "a period",
        "The period in which it is booked.",
        required: true
    );

    public static readonly ColumnDefinition CostElement = Layout.Word(
        "cost_element",
        CostElements.Words,
        "Cost element.",
        required: true
    );

    public static readonly ColumnDefinition Amount = Layout.Money(
        "amount",
        "Amount in the row's currency; negative for a credit.",
        required: true,
        mayBeNegative: true
    );

    public static readonly ColumnDefinition Hours = Layout.Hours(
        "hours",
        "Hours booked.",
        mayBeNegative: true
    );

    public static readonly ColumnDefinition Kind = Layout.Word(
        "kind",
        Kinds,
        "invoiced (default) or accrual, which is reversed on the first day of the next period."
    );

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
        "actuals",
        "A ledger row of actual cost. A known document line never changes.",
        Document,
        Line,
        Charge,
        Period,
        CostElement,
        Amount,
        Hours,
        Kind,
        Currency,
        Rate,
        Converted
    )
    {
        ClosedWith = Period,
        IsLedger = true,
        Conversion = new Conversion(Amount, Currency, Rate, Converted),
    };
}

/// <summary>Orders and subcontracts.</summary>
public static class CommitmentTable
{
    public static readonly ColumnDefinition Order = Layout.CodeKey(
        "order",
        "Order or subcontract number."
    );
    public static readonly ColumnDefinition Line = Layout.CodeKey("line", "Line of the order.");

    public static readonly ColumnDefinition Package = Layout.Reference(
        "package",
        "elements",
        "a package",
        "The package.",
        required: true
    );

    public static readonly ColumnDefinition CostElement = Layout.Word(
        "cost_element",
        CostElements.Words,
        "Cost element.",
        required: true
    );

    public static readonly ColumnDefinition Amount = Layout.Money(
        "amount",
        "Committed, approved changes included.",
        required: true,
        mayBeNegative: true
    );

    public static readonly ColumnDefinition Pending = Layout.Money(
        "pending",
        "Changes that are not approved yet.",
        mayBeNegative: true
    );

    public static readonly ColumnDefinition Supplier = Layout.Text("supplier", "Supplier.");
    public static readonly ColumnDefinition Date = Layout.Date(
        "date",
        "Date of the order; undated counts always."
    );

    public static readonly TableDefinition Definition = new(
        "commitments",
        "A line of an order or subcontract.",
        Order,
        Line,
        Package,
        CostElement,
        Amount,
        Pending,
        Supplier,
        Date
    );
}
