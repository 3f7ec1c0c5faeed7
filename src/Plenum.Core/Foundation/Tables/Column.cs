using System.Numerics;

namespace Plenum.Core.Foundation.Tables;

/// <summary>One attribute of all rows of a table: an immutable array.</summary>
public abstract class Column
{
    public abstract int Count { get; }

    public abstract bool IsMissing(int row);

    public abstract bool SameAt(int row, Column other, int otherRow);

    public abstract int HashAt(int row);

    /// <summary>The rows in another order, or some of them; a row beyond the last is one without a value.</summary>
    public abstract Column Pick(ReadOnlySpan<int> rows);

    /// <summary>A changeable copy, with room for more rows.</summary>
    public abstract ColumnBuilder ToBuilder(int extraRows);
}

/// <summary>A column of numbers: <see cref="int"/>, <see cref="long"/> or <see cref="decimal"/>.</summary>
public sealed class NumberColumn<T> : Column
    where T : unmanaged, INumber<T>
{
    private readonly T[] values;

    public NumberColumn(T[] values) => this.values = values;

    private static readonly T Missing = NumberColumnBuilder<T>.Missing;

    public override int Count => values.Length;

    public ReadOnlySpan<T> Values => values;

    public override bool IsMissing(int row) => values[row] == Missing;

    public override bool SameAt(int row, Column other, int otherRow) =>
        values[row] == ((NumberColumn<T>)other).values[otherRow];

    public override int HashAt(int row) => values[row].GetHashCode();

    public override Column Pick(ReadOnlySpan<int> rows)
    {
        var picked = new T[rows.Length];
        for (var i = 0; i < picked.Length; i++)
        {
            var row = rows[i];
            picked[i] = (uint)row < (uint)values.Length ? values[row] : Missing;
        }

        return new NumberColumn<T>(picked);
    }

    public override ColumnBuilder ToBuilder(int extraRows) =>
        new NumberColumnBuilder<T>(values, extraRows);
}

/// <summary>A column of text; null is not given.</summary>
public sealed class TextColumn : Column
{
    private readonly string?[] values;

    public TextColumn(string?[] values) => this.values = values;

    public override int Count => values.Length;

    public ReadOnlySpan<string?> Values => values;

    public override bool IsMissing(int row) => values[row] is null;

    public override bool SameAt(int row, Column other, int otherRow) =>
        string.Equals(values[row], ((TextColumn)other).values[otherRow], StringComparison.Ordinal);

    public override int HashAt(int row) => values[row]?.GetHashCode(StringComparison.Ordinal) ?? 0;

    public override Column Pick(ReadOnlySpan<int> rows)
    {
        var picked = new string?[rows.Length];
        for (var i = 0; i < picked.Length; i++)
        {
            var row = rows[i];
            picked[i] = (uint)row < (uint)values.Length ? values[row] : null;
        }

        return new TextColumn(picked);
    }

    public override ColumnBuilder ToBuilder(int extraRows) =>
        new TextColumnBuilder(values, extraRows);
}
