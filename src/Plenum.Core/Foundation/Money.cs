namespace Plenum.Core.Foundation;

/// <summary>
/// An amount in the project's currency: a whole count of its minor units (cents for EUR, yen for JPY). Sums are
/// therefore exact and do not depend on their order. Range: that of <see cref="long"/>; arithmetic that leaves it
/// throws <see cref="OverflowException"/>. The default value is zero. Not to be confused with
/// <see cref="ForeignMoney"/>, an amount as it stood in a document of another currency.
/// </summary>
public readonly record struct Money(long MinorUnits) : IComparable<Money>
{
    public static readonly Money Zero;

    public static Money operator +(Money left, Money right) =>
        new(checked(left.MinorUnits + right.MinorUnits));

    public static Money operator -(Money left, Money right) =>
        new(checked(left.MinorUnits - right.MinorUnits));

    public static Money operator -(Money amount) => new(checked(-amount.MinorUnits));

    public static bool operator <(Money left, Money right) => left.MinorUnits < right.MinorUnits;

    public static bool operator >(Money left, Money right) => left.MinorUnits > right.MinorUnits;

    public static bool operator <=(Money left, Money right) => left.MinorUnits <= right.MinorUnits;

    public static bool operator >=(Money left, Money right) => left.MinorUnits >= right.MinorUnits;

    public int CompareTo(Money other) => MinorUnits.CompareTo(other.MinorUnits);

    /// <summary>The amount in major units (euros), exact, with the currency's number of decimals.</summary>
    public decimal InMajorUnits(Currency currency) => currency.ToMajorUnits(MinorUnits);
}

/// <summary>An amount as a document states it: minor units of the document's own currency.</summary>
public readonly record struct ForeignMoney(long MinorUnits, Currency Currency)
{
    /// <summary>
    /// The amount in the project's currency: amount × rate, rounded once, half away from zero, to minor units.
    /// </summary>
    /// <param name="rate">Units of the project's currency for one unit of this currency; not negative.</param>
    /// <param name="project">The project's currency.</param>
    /// <exception cref="OverflowException">The result does not fit.</exception>
    public Money At(decimal rate, Currency project)
    {
        var rateFraction = ExactFraction.Of(rate);
        var converted =
            new ExactFraction(MinorUnits, 1) * rateFraction * Currency.MinorUnitsPer(project);
        return new Money(converted.RoundHalfAwayFromZero());
    }
}
