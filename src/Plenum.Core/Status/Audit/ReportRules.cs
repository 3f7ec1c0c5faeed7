using System.Globalization;
using Plenum.Core.Baseline;
using Plenum.Core.Baseline.Audit;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Status.Audit;

/// <summary>The cost still to come of an open package was estimated long ago.</summary>
public sealed class OldEstimateRule(
    PackageBaseline baseline,
    PackageStatus status,
    PeriodTimeline periods,
    int period,
    AuditThresholds thresholds
) : PackageRule(baseline)
{
    public override string Name => "estimate_old";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "Cost still to come that was reported once and then left alone is worn down by what is booked, whatever the work "
        + "really needs.";

    public override string Remedy => "Ask its person in charge for the cost still to come.";

    public override string Source =>
        "SAE EIA-748 guideline 27 (timely estimates); the number of periods is common practice";

    protected override string? Message(int package)
    {
        if (!OpenPackages.IsOpen(Baseline, status, periods, package, period))
        {
            return null;
        }

        var (reported, _) = status.CostToComeAt(package, period);
        return reported >= 0 && period - reported > thresholds.SilentPeriods
            ? $"{NameOf(package)} last reported cost still to come in period {periods.Codes[reported]}."
            : null;
    }
}

/// <summary>The cost still to come is a small part of what is still to be earned.</summary>
public sealed class LowEstimateRule(
    PackageBaseline baseline,
    PackageStatus status,
    PeriodTimeline periods,
    Func<PeriodSeries> earned,
    int period,
    AuditThresholds thresholds,
    Func<long, string> money
) : PackageRule(baseline)
{
    public override string Name => "package_estimate_low";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "What is still to come is said to cost a small part of the budget of the work that is left. Work seldom becomes so "
        + "much cheaper by itself.";

    public override string Remedy => "Ask what has changed, and have the estimate made anew.";

    public override string Source =>
        "GAO-20-195G ch. 18 (TCPI against CPI); the share is common practice";

    protected override string? Message(int package)
    {
        if (!OpenPackages.IsOpen(Baseline, status, periods, package, period))
        {
            return null;
        }

        var (reported, amount) = status.CostToComeAt(package, period);
        if (reported != period)
        {
            return null;
        }

        var left = Baseline.TotalBudget[package];
        for (var costElement = 0; costElement < CostElements.Count; costElement++)
        {
            left -= earned().At((package * CostElements.Count) + costElement, period);
        }

        return
            left > 0
            && (Int128)amount * Fraction.Whole < (Int128)left * thresholds.EstimateShare.BasisPoints
            ? $"{NameOf(package)} has {money(left)} of budget left to earn, and {money(amount)} are said to be enough."
            : null;
    }
}

/// <summary>What remains of an open package leads far beyond its baseline finish.</summary>
public sealed class LateFinishRule(
    PackageBaseline baseline,
    PackageStatus status,
    PeriodTimeline periods,
    WorkCalendar calendar,
    int period,
    AuditThresholds thresholds
) : PackageRule(baseline)
{
    public override string Name => "finish_late";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "By its own report the package finishes long after its baseline. Whatever waits for it is late too.";

    public override string Remedy =>
        "Find what holds it up, look at what follows it, and plan the recovery.";

    public override string Source =>
        "GAO-16-89G (baseline variance of the schedule); the days are common practice";

    protected override string? Message(int package)
    {
        if (
            !OpenPackages.IsOpen(Baseline, status, periods, package, period)
            || !Cell.IsGiven(Baseline.Finish[package])
        )
        {
            return null;
        }

        var remaining = status.RemainingAt(package, period);
        if (!Cell.IsGiven(remaining))
        {
            return null;
        }

        var left =
            calendar.NumberOf(DateOnly.FromDayNumber(Baseline.Finish[package]))
            - calendar.NumberOf(periods.End(period));
        return remaining - left > thresholds.LateDays
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"{NameOf(package)} needs {remaining} more working days and will finish {remaining - left} after its baseline finish."
            )
            : null;
    }
}

/// <summary>A package and its activities say different things of its start or finish.</summary>
public sealed class ActivitiesDisagreeRule(
    PackageBaseline baseline,
    PackageStatus status,
    ActivityReports activities,
    int period
) : PackageRule(baseline)
{
    public override string Name => "activities_disagree";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "A package has started when its first activity has, and is finished when its last one is. Where both are reported "
        + "and differ, earned value and network tell two stories.";

    public override string Remedy => "Correct the dates of the package or those of its activities.";

    public override string Source =>
        "GAO-16-89G BP1 and BP9 (one status for cost and schedule); definition of our own";

    protected override string? Message(int package)
    {
        if (period < 0 || activities.Of(package, period) is not { } reported)
        {
            return null;
        }

        var started = status.StartedAt(package, period);
        var finished = status.FinishedAt(package, period);
        return Cell.IsGiven(finished) != reported.AllFinished
            ? Cell.IsGiven(finished)
                ? $"{NameOf(package)} is reported as finished, and not all of its activities are."
                : $"All activities of {NameOf(package)} are reported as finished, and the package is not."
            : Cell.IsGiven(started) != reported.AnyStarted
                ? Cell.IsGiven(started)
                    ? $"{NameOf(package)} is reported as started, and none of its activities is."
                    : $"An activity of {NameOf(package)} is reported as started, and the package is not."
                : null;
    }
}
