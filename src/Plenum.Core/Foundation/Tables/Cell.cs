namespace Plenum.Core.Foundation.Tables;

/// <summary>
/// The two values that a cell of numbers can have beside numbers: not given, and (in status rows) taken back. They
/// stand at the lower end of the range and no input can produce them.
/// </summary>
public static class Cell
{
    public const int NoInt = int.MinValue;
    public const int WithdrawnInt = int.MinValue + 1;
    public const long NoLong = long.MinValue;
    public const long WithdrawnLong = long.MinValue + 1;
    public const decimal NoDecimal = decimal.MinValue;
    public const decimal WithdrawnDecimal = decimal.MinValue + 1;

    /// <summary>True for a number that was given and not taken back.</summary>
    public static bool IsGiven(int value) => value > WithdrawnInt;

    /// <summary>True for a number that was given and not taken back.</summary>
    public static bool IsGiven(long value) => value > WithdrawnLong;

    /// <summary>True for a number that was given and not taken back.</summary>
    public static bool IsGiven(decimal value) => value > WithdrawnDecimal;
}
