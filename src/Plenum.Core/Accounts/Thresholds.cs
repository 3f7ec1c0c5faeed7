using Plenum.Core.Foundation;

namespace Plenum.Core.Accounts;

/// <summary>
/// Beyond which amount a variance is worth an explanation: a share of the row's budget at completion, 10 % unless the
/// project says otherwise. Source: common practice; agreed at the start according to GAO-20-195G.
/// </summary>
public static class Thresholds
{
    /// <summary>The threshold of a row, in minor units.</summary>
    public static long Of(in MeasureSums sums, Fraction threshold) =>
        threshold.AsShare().Of(sums.BudgetAtCompletion);

    /// <summary>The net is within the limit while what was lost is not.</summary>
    public static bool Hides(long gained, long lost, long limit) =>
        Math.Abs(gained + lost) <= limit && -lost > limit;
}
