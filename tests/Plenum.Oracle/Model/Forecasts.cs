using System.Numerics;

namespace Plenum.Oracle.Model;

/// <summary>Estimates at completion by index, computed from a row's own totals to date, in minor units.</summary>
public static class Forecasts
{
    /// <summary>AC + BAC - EV.</summary>
    public static BigInteger Plan(BigInteger bac, BigInteger ev, BigInteger ac) => ac + bac - ev;

    /// <summary>AC + (BAC - EV) / index; null when the index is missing, zero or negative.</summary>
    public static BigInteger? ByIndex(BigInteger bac, BigInteger ev, BigInteger ac, Ratio? index) =>
        Ratio.Quotient(Ratio.Of(bac - ev), index) is { } remaining
            ? (Ratio.Of(ac) + remaining).RoundHalfAway()
            : null;

    /// <summary>CPI x SPI; null when either is missing.</summary>
    public static Ratio? Product(Ratio? cpi, Ratio? spi) =>
        cpi is null || spi is null ? null : cpi * spi;

    /// <summary>The CPI of the last three periods up to now, or of all when there are fewer.</summary>
    public static Ratio? CpiOfThreePeriods(
        IReadOnlyList<BigInteger> earned,
        IReadOnlyList<BigInteger> actual,
        int now
    )
    {
        var before = Math.Max(0, now - 3);
        return Ratio.Quotient(earned[now] - earned[before], actual[now] - actual[before]);
    }
}
