using Plenum.Core;
using Plenum.Workbench.Questions;

namespace Plenum.Web.Accounts;

/// <summary>
/// Within which share a variance counts as none, and beyond which it is strong; the same limits colour map, table and
/// plot. A project sets them; 3 % and 10 % are common practice.
/// </summary>
/// <param name="Mild">Beyond it better or worse.</param>
/// <param name="Strong">Beyond it much better or worse.</param>
public sealed record Limits(decimal Mild, decimal Strong)
{
    public static Limits Of(ProjectSettings settings) =>
        new(
            settings.VarianceStep.BasisPoints / 10_000m,
            settings.FarVarianceStep.BasisPoints / 10_000m
        );

    /// <summary>1 better, 0 within the limits, −1 worse.</summary>
    public int Verdict(decimal variance, decimal of) =>
        variance == 0 ? 0
        : of <= 0 ? Math.Sign(variance)
        : Math.Abs(variance) <= Mild * of ? 0
        : Math.Sign(variance);

    /// <summary>The verdict on an index.</summary>
    public int VerdictOnIndex(decimal index) =>
        Math.Abs(index - 1) <= Mild ? 0 : Math.Sign(index - 1);

    /// <summary>Fill of a mark by cost variance, as in the map: better2, better1, within, worse1, worse2.</summary>
    public string Step(MeasureRow row)
    {
        var verdict = Verdict(row.CostVariance, row.EarnedValue);
        var strong = row.EarnedValue <= 0 || Math.Abs(row.CostVariance) > Strong * row.EarnedValue;
        return verdict == 0 ? "within" : (verdict > 0 ? "better" : "worse") + (strong ? "2" : "1");
    }
}
