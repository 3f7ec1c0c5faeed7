namespace Plenum.Core.Foundation.Tables;

/// <summary>What a column's cells hold, and with it how they are stored and checked.</summary>
public enum CellKind
{
    /// <summary>Any text.</summary>
    Text,

    /// <summary>Text that names something: no space before or after, no control characters.</summary>
    Code,

    /// <summary>A whole number.</summary>
    Whole,

    /// <summary>An exact decimal number.</summary>
    Decimal,

    /// <summary>Minor units of the row's currency, or of the project's where the row names none.</summary>
    Money,

    /// <summary>Hundredths of an hour.</summary>
    Hours,

    /// <summary>Basis points, 0 to 10 000, written as per cent.</summary>
    Percent,

    /// <summary>A day, as <see cref="DateOnly.DayNumber"/>.</summary>
    Date,

    /// <summary>0 or 1.</summary>
    Flag,

    /// <summary>A word of a closed set, see <see cref="Codec"/>.</summary>
    Word,

    /// <summary>The id of a row in another table, or a reserved word.</summary>
    Reference,
}

/// <summary>One column of a table layout.</summary>
public sealed class ColumnDefinition
{
    public required string Name { get; init; }

    public required CellKind Kind { get; init; }

    /// <summary>Part of the key that identifies a row.</summary>
    public bool IsKey { get; init; }

    /// <summary>The column must be there and its cells must be filled.</summary>
    public bool IsRequired { get; init; }

    /// <summary>A hyphen in the cell takes back what an earlier period's row gave.</summary>
    public bool IsWithdrawable { get; init; }

    /// <summary>Not read from files: filled in when the row is taken over.</summary>
    public bool IsComputed { get; init; }

    /// <summary>Least number allowed, in stored units.</summary>
    public long Least { get; init; } = long.MinValue;

    /// <summary>Greatest number allowed, in stored units.</summary>
    public long Greatest { get; init; } = long.MaxValue;

    /// <summary>For <see cref="CellKind.Word"/>, and reserved words of a <see cref="CellKind.Reference"/>.</summary>
    public Codec? Codec { get; init; }

    /// <summary>The word that an empty cell means, if any.</summary>
    public int? Default { get; init; }

    /// <summary>For a reference: the names of the tables that are searched for the code, in this order.</summary>
    public IReadOnlyList<string> Targets { get; init; } = [];

    /// <summary>What a reference is called in a message: "a package", "a person".</summary>
    public string? Called { get; init; }

    /// <summary>An element that is referred to must be a package.</summary>
    public bool IsPackageReference =>
        Kind == CellKind.Reference && Called!.Contains("a package", StringComparison.Ordinal);

    /// <summary>What the column means, for the file layouts page.</summary>
    public string Meaning { get; init; } = "";

    public TableDefinition Table { get; private set; } = null!;

    /// <summary>Its place among the table's columns, from 0.</summary>
    public int Index { get; private set; }

    /// <summary>How cells are stored.</summary>
    public ColumnStorage Storage =>
        Kind switch
        {
            CellKind.Text or CellKind.Code => ColumnStorage.Text,
            CellKind.Money or CellKind.Hours => ColumnStorage.Long,
            CellKind.Decimal => ColumnStorage.Decimal,
            _ => ColumnStorage.Int,
        };

    public ColumnBuilder NewBuilder() =>
        Storage switch
        {
            ColumnStorage.Text => new TextColumnBuilder(),
            ColumnStorage.Long => new NumberColumnBuilder<long>(),
            ColumnStorage.Decimal => new NumberColumnBuilder<decimal>(),
            _ => new NumberColumnBuilder<int>(),
        };

    /// <summary>
    /// The stored number of a reference: ids of the targets take turns, reserved words stand below zero.
    /// </summary>
    public int EncodeReference(int target, int id) => (id * Math.Max(1, Targets.Count)) + target;

    /// <summary>The stored number of a reserved word of a reference.</summary>
    public static int EncodeWord(int word) => -1 - word;

    /// <summary>Which target (or −1 for a reserved word) and which id (or which word) a stored number means.</summary>
    public (int Target, int Id) DecodeReference(int stored)
    {
        if (stored < 0)
        {
            return (-1, -1 - stored);
        }

        var id = Math.DivRem(stored, Math.Max(1, Targets.Count), out var target);
        return (target, id);
    }

    /// <summary>Which of the tables that the column refers to is a table, from 0; −1 if none is.</summary>
    public int TargetOf(TableDefinition table)
    {
        for (var target = 0; target < Targets.Count; target++)
        {
            if (Targets[target] == table.Name)
            {
                return target;
            }
        }

        return -1;
    }

    public override string ToString() => Table is null ? Name : $"{Table.Name}.{Name}";

    internal void Join(TableDefinition table, int index)
    {
        Table = table;
        Index = index;
    }
}

public enum ColumnStorage
{
    Text,
    Int,
    Long,
    Decimal,
}
