namespace Plenum.Core.Foundation;

/// <summary>
/// Working hours of people: a whole count of hundredths of an hour. Not to be confused with a duration, which is a
/// number of working days of a calendar. The default value is zero; arithmetic that overflows throws.
/// </summary>
public readonly record struct Hours(long Hundredths)
{
    public static Hours operator +(Hours left, Hours right) =>
        new(checked(left.Hundredths + right.Hundredths));

    public static Hours operator -(Hours left, Hours right) =>
        new(checked(left.Hundredths - right.Hundredths));

    /// <summary>The hours as a decimal number, exact.</summary>
    public decimal AsDecimal() => Hundredths / 100m;
}
