using System.Globalization;
using Plenum.Core.Foundation;

namespace Plenum.Core.Accounts.Audit;

/// <summary>The managers' estimate asks of the rest an efficiency that the work so far has not shown.</summary>
public sealed class EstimateBelowIndexRule(
    Cut accounts,
    MeasureSums[] sums,
    Func<long, string> money
) : AuditRule
{
    private const decimal MostAbove = 0.05m;
    private const decimal LeastComplete = 0.02m;

    public override string Name => "estimate_below_index";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "An estimate to complete that needs an efficiency (TCPI) more than 0.05 above the one so far (CPI) is the "
        + "usual sign of an optimistic estimate.";

    public override string Remedy => "Ask for the estimate anew, package by package.";

    public override string Source => "GAO-20-195G ch. 18 (TCPI against CPI)";

    public override IEnumerable<Finding> Run()
    {
        for (var row = 0; row < sums.Length; row++)
        {
            var measures = sums[row];
            var efficiency = Ratio.Of(measures.EarnedValue, measures.ActualCost);
            var needed = Ratio.Of(
                measures.BudgetAtCompletion - measures.EarnedValue,
                measures.Remaining
            );
            var complete = Ratio.Of(measures.EarnedValue, measures.BudgetAtCompletion);
            if (
                !accounts.Rows[row].IsRest
                && complete >= LeastComplete
                && needed > efficiency + MostAbove
            )
            {
                yield return Found(
                    accounts.Rows[row].Code,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"Account {accounts.Rows[row].Code} estimates {money(measures.Remaining)} to complete, which needs "
                    )
                        + string.Create(
                            CultureInfo.InvariantCulture,
                            $"an efficiency of {needed:0.00}; so far it was {efficiency:0.00}."
                        )
                );
            }
        }
    }
}

/// <summary>The managers' estimate at completion is less than what is already committed.</summary>
public sealed class EstimateBelowCommittedRule(
    Cut packages,
    MeasureSums[] sums,
    Func<long, string> money
) : AuditRule
{
    public override string Name => "estimate_below_committed";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "What is ordered will be paid: an estimate below it cannot come true.";

    public override string Remedy => "Raise the estimate to complete, or have the order reduced.";

    public override string Source => "SAE EIA-748 guideline 27 (estimate from commitments)";

    public override IEnumerable<Finding> Run()
    {
        for (var row = 0; row < sums.Length; row++)
        {
            if (!packages.Rows[row].IsRest && sums[row].EstimateAtCompletion < sums[row].Committed)
            {
                yield return Found(
                    packages.Rows[row].Code,
                    $"{packages.Rows[row].Name} is estimated at {money(sums[row].EstimateAtCompletion)} and "
                        + $"{money(sums[row].Committed)} are committed."
                );
            }
        }
    }
}

/// <summary>
/// A control account looks fine in total while what it lost alone is beyond the threshold: what it gained hides it.
/// </summary>
public sealed class HiddenOffsetsRule(
    Cut accounts,
    MeasureSums[] sums,
    Fraction threshold,
    Func<long, string> money
) : AuditRule
{
    public override string Name => "hidden_offsets";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "Inside an account favourable and unfavourable package variances cancel. An account whose net is within the "
        + "threshold while its unfavourable sum is not hides packages that need help.";

    public override string Remedy => "Look at the packages inside the account.";

    public override string Source =>
        "GAO-20-195G (estimates at lower levels so that poor performers are not masked); definition of our own";

    public override IEnumerable<Finding> Run()
    {
        for (var row = 0; row < sums.Length; row++)
        {
            var measures = sums[row];
            if (accounts.Rows[row].IsRest)
            {
                continue;
            }

            var limit = Thresholds.Of(measures, threshold);
            if (Thresholds.Hides(measures.CostGained, measures.CostLost, limit))
            {
                yield return Found(
                    accounts.Rows[row].Code,
                    Sentence("cost", row, measures.CostGained, measures.CostLost)
                );
            }

            if (Thresholds.Hides(measures.ScheduleGained, measures.ScheduleLost, limit))
            {
                yield return Found(
                    accounts.Rows[row].Code,
                    Sentence("schedule", row, measures.ScheduleGained, measures.ScheduleLost)
                );
            }
        }
    }

    private string Sentence(string what, int row, long gained, long lost) =>
        $"Account {accounts.Rows[row].Code} shows {money(gained + lost)} in {what}: its packages gain {money(gained)} "
        + $"and lose {money(-lost)}.";
}
