using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Estimate;

/// <summary>Estimate lines.</summary>
public static class EstimateTable
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
        "Cost element.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Line = Layout.Code(
        "line",
        "Line number, where there are several.",
        key: true
    );
    public static readonly ColumnDefinition Quantity = Layout.Decimal("quantity", "Quantity.");
    public static readonly ColumnDefinition Unit = Layout.Text("unit", "Unit of the quantity.");
    public static readonly ColumnDefinition HoursPerUnit = Layout.Decimal(
        "hours_per_unit",
        "Hours for one unit."
    );
    public static readonly ColumnDefinition Rate = Layout.Decimal(
        "rate",
        "Money for one hour, or for one unit."
    );
    public static readonly ColumnDefinition Amount = Layout.Money("amount", "Amount.");
    public static readonly ColumnDefinition Low = Layout.Money("low", "Low.");
    public static readonly ColumnDefinition Likely = Layout.Money("likely", "Most likely.");
    public static readonly ColumnDefinition High = Layout.Money("high", "High.");
    public static readonly ColumnDefinition Class = Layout.Text("class", "Estimate class.");
    public static readonly ColumnDefinition Basis = Layout.Text("basis", "Basis of estimate.");
    public static readonly ColumnDefinition BaseDate = Layout.Date(
        "base_date",
        "Date of the prices."
    );

    public static readonly ColumnDefinition Currency = Layout.Word(
        "currency",
        CurrencyCodec.Instance,
        "Currency of the amounts; the project's where none is given."
    );

    public static readonly TableDefinition Definition = new(
        "estimate",
        "An estimate line.",
        Package,
        CostElement,
        Line,
        Quantity,
        Unit,
        HoursPerUnit,
        Rate,
        Amount,
        Low,
        Likely,
        High,
        Class,
        Basis,
        BaseDate,
        Currency
    );
}
