using System.Globalization;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core;

/// <summary>Says the cells of a project as they stand in files.</summary>
public sealed class ProjectText(Project project)
{
    /// <summary>The cell as a file has it; null where nothing is given.</summary>
    public string? Of(Table table, int row, ColumnDefinition column) =>
        Number(table, row, column) is { } number ? number.ToString(CultureInfo.InvariantCulture)
        : Date(table, row, column) is { } date
            ? date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
        : Word(table, row, column);

    /// <summary>The cell as a number, with the decimals that belong to it; null where it is none.</summary>
    public decimal? Number(Table table, int row, ColumnDefinition column)
    {
        switch (column.Kind)
        {
            case CellKind.Whole or CellKind.Flag when Cell.IsGiven(table.Ints(column)[row]):
                return table.Ints(column)[row];
            case CellKind.Decimal when Cell.IsGiven(table.Decimals(column)[row]):
                return table.Decimals(column)[row];
            case CellKind.Percent when Cell.IsGiven(table.Ints(column)[row]):
                return Ratio.Normal(table.Ints(column)[row] / 100m);
            case CellKind.Hours when Cell.IsGiven(table.Longs(column)[row]):
                return Ratio.Normal(table.Longs(column)[row] / 100m);
            case CellKind.Money when Cell.IsGiven(table.Longs(column)[row]):
                return CurrencyOf(table, row).ToMajorUnits(table.Longs(column)[row]);
            default:
                return null;
        }
    }

    /// <summary>The cell as a date; null where it is none.</summary>
    public static DateOnly? Date(Table table, int row, ColumnDefinition column) =>
        column.Kind == CellKind.Date && Cell.IsGiven(table.Ints(column)[row])
            ? DateOnly.FromDayNumber(table.Ints(column)[row])
            : null;

    /// <summary>The cell as text, a code or a word; a hyphen where a value was taken back.</summary>
    public string? Word(Table table, int row, ColumnDefinition column)
    {
        switch (column.Storage)
        {
            case ColumnStorage.Text:
                return table.Texts(column)[row];
            case ColumnStorage.Long:
                return table.Longs(column)[row] == Cell.WithdrawnLong ? "-" : null;
            case ColumnStorage.Decimal:
                return table.Decimals(column)[row] == Cell.WithdrawnDecimal ? "-" : null;
        }

        var value = table.Ints(column)[row];
        if (!Cell.IsGiven(value))
        {
            return value == Cell.WithdrawnInt ? "-" : null;
        }

        return column.Kind switch
        {
            CellKind.Word => column.Codec!.Format(value),
            CellKind.Reference => Reference(column, value),
            _ => null,
        };
    }

    /// <summary>The currency in which a row states its amounts.</summary>
    public Currency CurrencyOf(Table table, int row) =>
        table.Definition.CurrencyColumn is { } column && Cell.IsGiven(table.Ints(column)[row])
            ? Currency.FromNumber(table.Ints(column)[row])
            : project.Settings.Currency;

    private string Reference(ColumnDefinition column, int value)
    {
        var (target, id) = column.DecodeReference(value);
        if (target < 0)
        {
            return column.Codec!.Format(id);
        }

        var table = project[ProjectLayout.Target(column, target)];
        return table.Codes[table.RowOf(id)]!;
    }
}
