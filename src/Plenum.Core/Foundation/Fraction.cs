using System.Globalization;

namespace Plenum.Core.Foundation;

/// <summary>
/// A reported part of a whole in basis points, 0 to 10 000; 5 000 is half, shown as 50 %. Not to be confused with
/// <see cref="Share"/>, which is an exact ratio that arises in a computation.
/// </summary>
public readonly record struct Fraction
{
    public const int Whole = 10_000;

    public Fraction(int basisPoints)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(basisPoints);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(basisPoints, Whole);
        BasisPoints = basisPoints;
    }

    public int BasisPoints { get; }

    /// <summary>Reads per cent, 0 to 100 with at most two decimals; null if it is something else.</summary>
    public static Fraction? TryParsePercent(string value) =>
        decimal.TryParse(
            value,
            NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out var percent
        )
        && percent is >= 0 and <= 100
        && decimal.IsInteger(percent * 100)
            ? new Fraction((int)(percent * 100))
            : null;

    public Share AsShare() => new(BasisPoints, Whole);
}
