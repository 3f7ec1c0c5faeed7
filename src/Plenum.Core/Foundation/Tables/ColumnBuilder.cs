using System.Numerics;
using System.Runtime.InteropServices;

namespace Plenum.Core.Foundation.Tables;

/// <summary>A column that is being filled. Not safe for several threads.</summary>
public abstract class ColumnBuilder
{
    public abstract int Count { get; }

    public abstract void AddMissing();

    public abstract void AddFrom(Column source, int row);

    public abstract void Overwrite(int row, Column source, int sourceRow);

    public abstract bool SameAt(int row, Column other, int otherRow);

    /// <summary>The column as it stands. The builder must not be used afterwards.</summary>
    public abstract Column Build();
}

public sealed class NumberColumnBuilder<T> : ColumnBuilder
    where T : unmanaged, INumber<T>
{
    public static readonly T Missing =
        typeof(T) == typeof(int) ? T.CreateChecked(Cell.NoInt)
        : typeof(T) == typeof(long) ? T.CreateChecked(Cell.NoLong)
        : T.CreateChecked(Cell.NoDecimal);

    private readonly List<T> values;

    public NumberColumnBuilder() => values = [];

    internal NumberColumnBuilder(T[] start, int extraRows)
    {
        values = new List<T>(start.Length + extraRows);
        values.AddRange(start);
    }

    public override int Count => values.Count;

    public T this[int row]
    {
        get => values[row];
        set => values[row] = value;
    }

    public void Add(T value) => values.Add(value);

    public override void AddMissing() => values.Add(Missing);

    public override void AddFrom(Column source, int row) =>
        values.Add(((NumberColumn<T>)source).Values[row]);

    public override void Overwrite(int row, Column source, int sourceRow) =>
        values[row] = ((NumberColumn<T>)source).Values[sourceRow];

    public override bool SameAt(int row, Column other, int otherRow) =>
        values[row] == ((NumberColumn<T>)other).Values[otherRow];

    public override Column Build() =>
        new NumberColumn<T>(CollectionsMarshal.AsSpan(values).ToArray());
}

public sealed class TextColumnBuilder : ColumnBuilder
{
    private readonly List<string?> values;

    public TextColumnBuilder() => values = [];

    internal TextColumnBuilder(string?[] start, int extraRows)
    {
        values = new List<string?>(start.Length + extraRows);
        values.AddRange(start);
    }

    public override int Count => values.Count;

    public string? this[int row]
    {
        get => values[row];
        set => values[row] = value;
    }

    public void Add(string? value) => values.Add(value);

    public override void AddMissing() => values.Add(null);

    public override void AddFrom(Column source, int row) =>
        values.Add(((TextColumn)source).Values[row]);

    public override void Overwrite(int row, Column source, int sourceRow) =>
        values[row] = ((TextColumn)source).Values[sourceRow];

    public override bool SameAt(int row, Column other, int otherRow) =>
        string.Equals(values[row], ((TextColumn)other).Values[otherRow], StringComparison.Ordinal);

    public override Column Build() => new TextColumn(CollectionsMarshal.AsSpan(values).ToArray());
}
