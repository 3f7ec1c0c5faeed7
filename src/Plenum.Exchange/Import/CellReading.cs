using System.Numerics;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Exchange.Import;

/// <summary>What the reading of a cell needs to know of the rows around it.</summary>
public interface ICellContext
{
    /// <summary>The text as a string, the same one for the same text where that is known.</summary>
    string Pooled(ReadOnlySpan<char> text);

    /// <summary>The stored number of a reference; false if the code is unknown.</summary>
    bool TryReference(ColumnDefinition column, ReadOnlySpan<char> text, out int stored);
}

/// <summary>Reads the text of a cell as it stands in files into a column: exact, nothing is rounded or guessed.</summary>
public static class CellReading
{
    /// <summary>Adds the cell to the column's end; adds nothing and returns false if it is not understood.</summary>
    /// <param name="column">What the cell holds.</param>
    /// <param name="builder">A builder of that column.</param>
    /// <param name="text">The text, not empty.</param>
    /// <param name="currency">The currency of the row's amounts.</param>
    /// <param name="context">Finds what references mean.</param>
    public static bool TryAdd(
        ColumnDefinition column,
        ColumnBuilder builder,
        ReadOnlySpan<char> text,
        Currency currency,
        ICellContext context
    )
    {
        var withdrawn = column.IsWithdrawable && text is "-";
        switch (column.Kind)
        {
            case CellKind.Text:
                return Add(builder, context.Pooled(text));
            case CellKind.Code:
                return CellParser.IsCode(text) && Add(builder, context.Pooled(text));
            case CellKind.Decimal:
                var exact = Cell.WithdrawnDecimal;
                return (
                        withdrawn
                        || (
                            CellParser.TryDecimal(text, out exact)
                            && (exact >= 0 || column.Least < 0)
                        )
                    ) && Add(builder, exact);
            case CellKind.Money:
            case CellKind.Hours:
                var scaled = Cell.WithdrawnLong;
                var decimals = column.Kind == CellKind.Money ? currency.Digits : 2;
                return (
                        withdrawn
                        || (
                            CellParser.TryScaled(text, decimals, out scaled)
                            && InRange(column, scaled)
                        )
                    ) && Add(builder, scaled);
            default:
                var value = Cell.WithdrawnInt;
                return (withdrawn || TryInt(column, text, context, out value))
                    && Add(builder, value);
        }
    }

    /// <summary>What a column expects, in words.</summary>
    public static string Expected(ColumnDefinition column, Currency currency) =>
        CellParser.Expected(column, currency);

    private static bool TryInt(
        ColumnDefinition column,
        ReadOnlySpan<char> text,
        ICellContext context,
        out int value
    )
    {
        value = Cell.NoInt;
        switch (column.Kind)
        {
            case CellKind.Date:
                var isDate = CellParser.TryDate(text, out var date);
                value = date.DayNumber;
                return isDate;
            case CellKind.Word:
                return column.Codec!.TryParse(text, out value);
            case CellKind.Reference:
                return context.TryReference(column, text, out value);
        }

        long whole;
        var read =
            column.Kind == CellKind.Percent
                ? CellParser.TryScaled(text, 2, out whole)
                : CellParser.TryWhole(text, out whole);
        if (!read || !InRange(column, whole))
        {
            return false;
        }

        value = (int)whole;
        return true;
    }

    private static bool InRange(ColumnDefinition column, long value) =>
        value >= column.Least && value <= column.Greatest;

    private static bool Add<T>(ColumnBuilder builder, T value)
        where T : unmanaged, INumber<T>
    {
        ((NumberColumnBuilder<T>)builder).Add(value);
        return true;
    }

    private static bool Add(ColumnBuilder builder, string value)
    {
        ((TextColumnBuilder)builder).Add(value);
        return true;
    }
}
