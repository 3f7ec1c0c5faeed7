namespace Plenum.Core.Foundation.Tables;

/// <summary>Short ways to write down a table's columns.</summary>
public static class Layout
{
    /// <summary>Amounts, in minor units, stay within ±10^15, so that sums of any real ledger stay in range.</summary>
    public const long GreatestMoney = 1_000_000_000_000_000;

    /// <summary>Hundredths of hours stay within ±10^13.</summary>
    public const long GreatestHours = 10_000_000_000_000;

    public static ColumnDefinition CodeKey(string name, string meaning) =>
        new()
        {
            Name = name,
            Kind = CellKind.Code,
            IsKey = true,
            IsRequired = true,
            Meaning = meaning,
        };

    public static ColumnDefinition Code(
        string name,
        string meaning,
        bool required = false,
        bool key = false
    ) =>
        new()
        {
            Name = name,
            Kind = CellKind.Code,
            IsRequired = required,
            IsKey = key,
            Meaning = meaning,
        };

    public static ColumnDefinition Text(
        string name,
        string meaning,
        bool required = false,
        bool key = false
    ) =>
        new()
        {
            Name = name,
            Kind = CellKind.Text,
            IsRequired = required,
            IsKey = key,
            Meaning = meaning,
        };

    public static ColumnDefinition Money(
        string name,
        string meaning,
        bool required = false,
        bool mayBeNegative = false,
        bool withdrawable = false
    ) =>
        new()
        {
            Name = name,
            Kind = CellKind.Money,
            IsRequired = required,
            IsWithdrawable = withdrawable,
            Least = mayBeNegative ? -GreatestMoney : 0,
            Greatest = GreatestMoney,
            Meaning = meaning,
        };

    public static ColumnDefinition ConvertedMoney(string name, string meaning) =>
        new()
        {
            Name = name,
            Kind = CellKind.Money,
            IsComputed = true,
            Meaning = meaning,
        };

    public static ColumnDefinition Hours(string name, string meaning, bool mayBeNegative = false) =>
        new()
        {
            Name = name,
            Kind = CellKind.Hours,
            Least = mayBeNegative ? -GreatestHours : 0,
            Greatest = GreatestHours,
            Meaning = meaning,
        };

    public static ColumnDefinition Whole(
        string name,
        string meaning,
        int least,
        int greatest,
        bool required = false,
        bool withdrawable = false
    ) =>
        new()
        {
            Name = name,
            Kind = CellKind.Whole,
            IsRequired = required,
            IsWithdrawable = withdrawable,
            Least = least,
            Greatest = greatest,
            Meaning = meaning,
        };

    public static ColumnDefinition Decimal(
        string name,
        string meaning,
        bool required = false,
        bool withdrawable = false,
        bool mayBeNegative = false
    ) =>
        new()
        {
            Name = name,
            Kind = CellKind.Decimal,
            IsRequired = required,
            IsWithdrawable = withdrawable,
            Least = mayBeNegative ? long.MinValue : 0,
            Meaning = meaning,
        };

    public static ColumnDefinition Percent(
        string name,
        string meaning,
        bool required = false,
        bool withdrawable = false
    ) =>
        new()
        {
            Name = name,
            Kind = CellKind.Percent,
            IsRequired = required,
            IsWithdrawable = withdrawable,
            Least = 0,
            Greatest = Fraction.Whole,
            Meaning = meaning,
        };

    public static ColumnDefinition Date(
        string name,
        string meaning,
        bool required = false,
        bool key = false,
        bool withdrawable = false
    ) =>
        new()
        {
            Name = name,
            Kind = CellKind.Date,
            IsRequired = required,
            IsKey = key,
            IsWithdrawable = withdrawable,
            Meaning = meaning,
        };

    public static ColumnDefinition Flag(string name, string meaning, bool required = false) =>
        new()
        {
            Name = name,
            Kind = CellKind.Flag,
            IsRequired = required,
            Least = 0,
            Greatest = 1,
            Meaning = meaning,
        };

    public static ColumnDefinition Word(
        string name,
        Codec codec,
        string meaning,
        bool required = false,
        bool key = false,
        int? emptyMeans = null
    ) =>
        new()
        {
            Name = name,
            Kind = CellKind.Word,
            Codec = codec,
            IsRequired = required,
            IsKey = key,
            Default = emptyMeans,
            Meaning = meaning,
        };

    /// <summary>A reference to one row of another table, or of the same.</summary>
    public static ColumnDefinition Reference(
        string name,
        string target,
        string called,
        string meaning,
        bool required = false,
        bool key = false
    ) => Reference(name, [target], called, meaning, required, key);

    /// <summary>A reference to a row of the first of several tables that knows the code.</summary>
    public static ColumnDefinition Reference(
        string name,
        string[] targets,
        string called,
        string meaning,
        bool required = false,
        bool key = false,
        Codec? words = null
    ) =>
        new()
        {
            Name = name,
            Kind = CellKind.Reference,
            Targets = targets,
            Called = called,
            Codec = words,
            IsRequired = required,
            IsKey = key,
            Meaning = meaning,
        };
}
