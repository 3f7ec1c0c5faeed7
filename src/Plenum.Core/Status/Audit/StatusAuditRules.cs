using Plenum.Core.Baseline;
using Plenum.Core.Baseline.Audit;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Status.Audit;

/// <summary>An open package whose status is older than two periods.</summary>
public sealed class OldStatusRule(
    PackageBaseline baseline,
    PackageStatus status,
    PeriodTimeline periods,
    int period,
    Func<int, int> lastProgressReport,
    PackageLinks links,
    AuditThresholds thresholds
) : PackageRule(baseline)
{
    public override string Name => "status_old";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "A package that should be under way and of which nothing was heard for more than two periods earns on old news. One "
        + "that has never reported is not asked for while a package that it waits for is unfinished.";

    public override string Remedy => "Ask its person in charge for the status.";

    public override string Source => "common practice";

    protected override string? Message(int package)
    {
        var technique = Baseline.Technique[package];
        if (
            technique is TechniqueCodec.LevelOfEffort or TechniqueCodec.Apportioned
            || !OpenPackages.IsOpen(Baseline, status, periods, package, period)
        )
        {
            return null;
        }

        var due = periods.FirstEndingFrom(
            DateOnly.FromDayNumber(OpenPackages.StartDay(Baseline, status, package, period))
        );
        var last = Math.Max(status.LastReportedAt(package, period), lastProgressReport(package));
        var since = period - Math.Max(last, due - 1);
        if (since <= thresholds.SilentPeriods)
        {
            return null;
        }

        if (last < 0 && links.Waits(package, IsFinished))
        {
            return null;
        }

        return last < 0
            ? $"{NameOf(package)} was due to start {since} periods ago and has never reported."
            : $"{NameOf(package)} is open and last reported in period {periods.Codes[last]}.";
    }

    private bool IsFinished(int package) => Cell.IsGiven(status.FinishedAt(package, period));
}

/// <summary>Cost is booked on a package that has not started.</summary>
public sealed class CostBeforeStartRule(
    PackageBaseline baseline,
    PackageStatus status,
    Func<PeriodSeries> actual,
    int period,
    Func<long, string> money
) : PackageRule(baseline)
{
    public override string Name => "cost_before_start";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "Actual cost without earned value: either the start was not reported or the charge is wrong.";

    public override string Remedy => "Report the start, or have the charge corrected.";

    public override string Source => "GAO-20-195G (anomalies in the data)";

    protected override string? Message(int package)
    {
        var cost = 0L;
        for (var costElement = 0; costElement < CostElements.Count; costElement++)
        {
            cost += actual().At((package * CostElements.Count) + costElement, period);
        }

        return
            cost > 0
            && Baseline.Technique[package]
                is not (TechniqueCodec.LevelOfEffort or TechniqueCodec.Apportioned)
            && status.StartedAt(package, period) == Cell.NoInt
            ? $"{money(cost)} were spent on {NameOf(package)}, which has not started."
            : null;
    }
}

/// <summary>More was spent than was committed, where commitments are kept.</summary>
public sealed class ActualAboveCommittedRule(
    PackageBaseline baseline,
    Func<PeriodSeries> actual,
    Func<long[]> committedAmounts,
    int period,
    Func<long, string> money
) : PlaceRule
{
    public override string Name => "actual_above_committed";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "Cost above the order or subcontract that it falls under is cost that nobody has agreed to.";

    public override string Remedy =>
        "Check the invoices, or have the change of the order approved.";

    public override string Source => "common practice";

    public override int Places => baseline.Count;

    /// <param name="place">Number of a package.</param>
    public override IEnumerable<Finding> At(int place)
    {
        var committed = committedAmounts();
        for (var costElement = 0; costElement < CostElements.Count; costElement++)
        {
            var atom = (place * CostElements.Count) + costElement;
            var spent = committed[atom] == 0 ? 0 : actual().At(atom, period);
            if (spent > committed[atom])
            {
                var row = baseline.Tree.PackageRows[place];
                yield return Found(
                    baseline.Code(place),
                    $"{baseline.Tree.Name(row)}: {money(spent)} of {CostElements.Words.Format(costElement)} "
                        + $"were spent and {money(committed[atom])} are committed."
                );
            }
        }
    }
}
