using Plenum.Workbench.Questions;

namespace Plenum.Web.Accounts;

/// <summary>Within which share a variance counts as none; the same limits colour map, table and plot.</summary>
public static class Limits
{
    /// <summary>Beyond it better or worse; common practice, no source.</summary>
    public const decimal Mild = 0.03m;

    /// <summary>Beyond it much better or worse; common practice, no source.</summary>
    public const decimal Strong = 0.10m;

    /// <summary>1 better, 0 within the limits, −1 worse.</summary>
    public static int Of(decimal variance, decimal of) =>
        variance == 0 ? 0
        : of <= 0 ? Math.Sign(variance)
        : Math.Abs(variance) <= Mild * of ? 0
        : Math.Sign(variance);

    /// <summary>The verdict on an index.</summary>
    public static int OfIndex(decimal index) =>
        Math.Abs(index - 1) <= Mild ? 0 : Math.Sign(index - 1);

    /// <summary>Fill of a mark by cost variance, as in the map: better2, better1, within, worse1, worse2.</summary>
    public static string Step(MeasureRow row)
    {
        var verdict = Of(row.CostVariance, row.EarnedValue);
        var strong = row.EarnedValue <= 0 || Math.Abs(row.CostVariance) > Strong * row.EarnedValue;
        return verdict == 0 ? "within" : (verdict > 0 ? "better" : "worse") + (strong ? "2" : "1");
    }
}
