using System.Globalization;
using Plenum.Core.Accounts.Precision;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Accounts.Audit;

/// <summary>Now or later the status of an account cannot be known as closely as its threshold.</summary>
public sealed class PrecisionRule(
    Cut accounts,
    PeriodTimeline periods,
    Func<IReadOnlyList<PrecisionVerdict[]>> verdicts,
    Func<int, string> packageName,
    Fraction threshold
) : AuditRule
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

    public override IEnumerable<Finding> Run()
    {
        var all = verdicts();
        for (var row = 0; row < accounts.Rows.Count; row++)
        {
            var worst = all.Select(period => period[row])
                .Where(verdict => verdict.IsTooCoarse && verdict.Budget > 0)
                .MaxBy(verdict => verdict.Precision);
            if (worst is null || accounts.Rows[row].IsRest)
            {
                continue;
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
                accounts.Rows[row].Code,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"At the end of period {periods.Codes[worst.Period]} the earned value of account {accounts.Rows[row].Code} is known to {worst.Precision * 100:0.0} % of its budget, the threshold is {threshold.BasisPoints / 100m:0.##} %: {string.Join(", ", split)}."
                )
            );
        }
    }
}
