using System.Globalization;
using Plenum.Core.Baseline;
using Plenum.Core.Baseline.Audit;
using Plenum.Core.Foundation;

namespace Plenum.Core.Accounts.Audit;

/// <summary>The managers' estimate asks of the rest an efficiency that the work so far has not shown.</summary>
public sealed class EstimateBelowIndexRule(
    Cut accounts,
    Func<MeasureSums[]> measures,
    Func<long, string> money,
    AuditThresholds thresholds
) : AuditRule
{
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
        var sums = measures();
        for (var row = 0; row < sums.Length; row++)
        {
            var own = sums[row];
            var efficiency = Ratio.Of(own.EarnedValue, own.ActualCost);
            var needed = Ratio.Of(own.BudgetAtCompletion - own.EarnedValue, own.Remaining);
            var complete = Ratio.Of(own.EarnedValue, own.BudgetAtCompletion);
            if (
                !accounts.Rows[row].IsRest
                && complete >= LeastComplete
                && needed > efficiency + (thresholds.IndexLead / 100m)
            )
            {
                yield return Found(
                    accounts.Rows[row].Code,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"Account {accounts.Rows[row].Code} estimates {money(own.Remaining)} to complete, which needs "
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
    PackageBaseline baseline,
    Func<int, MeasureSums> measures,
    Func<long, string> money
) : PackageRule(baseline)
{
    public override string Name => "estimate_below_committed";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "What is ordered will be paid: an estimate below it cannot come true.";

    public override string Remedy => "Raise the estimate to complete, or have the order reduced.";

    public override string Source => "SAE EIA-748 guideline 27 (estimate from commitments)";

    protected override string? Message(int package)
    {
        var own = measures(package);
        return own.EstimateAtCompletion < own.Committed
            ? $"{NameOf(package)} is estimated at {money(own.EstimateAtCompletion)} and "
                + $"{money(own.Committed)} are committed."
            : null;
    }
}

/// <summary>
/// A control account looks fine in total while what it lost alone is beyond the threshold: what it gained hides it.
/// </summary>
public sealed class HiddenOffsetsRule(
    Cut accounts,
    Func<MeasureSums[]> measures,
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
        var sums = measures();
        for (var row = 0; row < sums.Length; row++)
        {
            var own = sums[row];
            if (accounts.Rows[row].IsRest)
            {
                continue;
            }

            var limit = Thresholds.Of(own, threshold);
            if (Thresholds.Hides(own.CostGained, own.CostLost, limit))
            {
                yield return Found(
                    accounts.Rows[row].Code,
                    Sentence("cost", row, own.CostGained, own.CostLost)
                );
            }

            if (Thresholds.Hides(own.ScheduleGained, own.ScheduleLost, limit))
            {
                yield return Found(
                    accounts.Rows[row].Code,
                    Sentence("schedule", row, own.ScheduleGained, own.ScheduleLost)
                );
            }
        }
    }

    private string Sentence(string what, int row, long gained, long lost) =>
        $"Account {accounts.Rows[row].Code} shows {money(gained + lost)} in {what}: its packages gain {money(gained)} "
        + $"and lose {money(-lost)}.";
}
