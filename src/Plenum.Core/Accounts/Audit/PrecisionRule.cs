using System.Globalization;
using Plenum.Core.Accounts.Precision;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Accounts.Audit;

/// <summary>Now or later the status of an account cannot be known as closely as its threshold.</summary>
public sealed class PrecisionRule(
    Cut accounts,
    PeriodTimeline periods,
    Func<int, IEnumerable<PrecisionVerdict>> verdicts,
    Func<int, string> packageName,
    Fraction threshold
) : PlaceRule
{
    private const int ShownToSplit = 3;

    public override string Name => "account_too_coarse";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "While a package is open, its technique leaves its true progress undetermined. Where that comes to the variance "
        + "threshold or more, a variance at the threshold cannot be told from none.";

    public override string Remedy =>
        "Split these packages, or measure them by milestones, units or items.";

    public override string Source => "definition of our own";

    public override int Places => accounts.Rows.Count;

    /// <param name="place">Row of the cut by account.</param>
    public override IEnumerable<Finding> At(int place)
    {
        if (accounts.Rows[place].IsRest)
        {
            yield break;
        }

        var worst = verdicts(place)
            .Where(verdict => verdict.IsTooCoarse && verdict.Budget > 0)
            .MaxBy(verdict => verdict.Precision);
        if (worst is null)
        {
            yield break;
        }

        var split = worst
            .Split.Take(ShownToSplit)
            .Select(part => packageName(part.Package))
            .ToList();
        if (worst.Split.Count > split.Count)
        {
            split.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{worst.Split.Count - split.Count} more"
                )
            );
        }

        yield return Found(
            accounts.Rows[place].Code,
            string.Create(
                CultureInfo.InvariantCulture,
                $"At the end of period {periods.Codes[worst.Period]} the earned value of account {accounts.Rows[place].Code} is known to {worst.Precision * 100:0.0} % of its budget, the threshold is {threshold.BasisPoints / 100m:0.##} %: {string.Join(", ", split)}."
            )
        );
    }
}
