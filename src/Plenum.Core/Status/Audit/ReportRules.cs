using System.Globalization;
using Plenum.Core.Baseline;
using Plenum.Core.Baseline.Audit;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Status.Audit;

/// <summary>A package runs over several periods and has nothing that can be counted on the way.</summary>
public sealed class PackageTooLongRule(
    PackageBaseline baseline,
    PackageStatus status,
    PeriodTimeline periods,
    int period,
    AuditThresholds thresholds
) : PackageRule(baseline)
{
    public override string Name => "package_too_long";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "A package that runs over several periods needs milestones, units or items to count; a per cent that somebody "
        + "judges, month after month, shows trouble late. Finished packages and planning packages are left out.";

    public override string Remedy => "Split the package, or give it steps that can be counted.";

    public override string Source =>
        "GAO-16-89G BP4 and App. III (4 to 6 weeks, or objective interim milestones); two periods are common practice";

    protected override string? Message(int package)
    {
        if (
            Baseline.Technique[package] != TechniqueCodec.Percent
            || Baseline.TotalBudget[package] <= 0
            || !Baseline.IsScheduled(package)
            || Baseline.Tree.Kind(Baseline.Tree.PackageRows[package])
                == ElementTable.PlanningPackage
            || Cell.IsGiven(status.FinishedAt(package, period))
        )
        {
            return null;
        }

        var days = Baseline.Finish[package] - Baseline.Start[package] + 1;
        var most = thresholds.PackagePeriods * DaysOfPeriod(package);
        return days > most
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"{NameOf(package)} takes {days} days and is measured by a judged per cent."
            )
            : null;
    }

    /// <summary>Days of a period, on the average of those that the package touches; counted whole.</summary>
    private int DaysOfPeriod(int package)
    {
        var first = periods.FirstEndingFrom(DateOnly.FromDayNumber(Baseline.Start[package]));
        var last = Math.Min(
            periods.FirstEndingFrom(DateOnly.FromDayNumber(Baseline.Finish[package])),
            periods.Count - 1
        );
        if (first > last || periods.Begin(first) is not { } begin)
        {
            return int.MaxValue / 1_000;
        }

        return (periods.End(last).DayNumber - begin.DayNumber + 1) / (last - first + 1);
    }
}

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

/// <summary>What remains of a package leads far beyond its baseline finish, and much waits for it.</summary>
public sealed class LateChainRule(
    PackageBaseline baseline,
    PackageStatus status,
    PackageLinks links,
    PeriodTimeline periods,
    WorkCalendar calendar,
    int period,
    AuditThresholds thresholds
) : PackageRule(baseline)
{
    private const int FewestFollowers = 3;
    private const int EnoughFollowers = 1_000;

    private readonly int limit = Math.Clamp(
        (int)((long)baseline.Count * thresholds.LateFollowers.BasisPoints / Fraction.Whole),
        FewestFollowers,
        EnoughFollowers
    );

    public override string Name => "late_chain";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "By its own report the work finishes long after its baseline, and a large part of the project comes after it.";

    public override string Remedy =>
        "Find what holds it up, look along the chain of what follows, and plan the recovery.";

    public override string Source =>
        "GAO-16-89G (a valid critical path; variance from the baseline); days and share are common practice";

    protected override string? Message(int package)
    {
        if (
            Baseline.Technique[package]
                is TechniqueCodec.LevelOfEffort
                    or TechniqueCodec.Apportioned
            || !OpenPackages.IsOpen(Baseline, status, periods, package, period)
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

        var late =
            remaining
            - calendar.NumberOf(DateOnly.FromDayNumber(Baseline.Finish[package]))
            + calendar.NumberOf(periods.End(period));
        return late > thresholds.LateDays && links.Followers(package, limit) >= limit
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"{NameOf(package)} needs {remaining} more working days and will finish {late} after its baseline finish; {limit} packages or more come after it."
            )
            : null;
    }
}

/// <summary>A package and its activities say different things of its start or finish.</summary>
public sealed class ActivitiesDisagreeRule(
    PackageBaseline baseline,
    PackageStatus status,
    PackageActivityReports activities,
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

/// <summary>A planning package is due and not yet detailed.</summary>
public sealed class PlanningPackageDueRule(
    PackageBaseline baseline,
    PackageStatus status,
    PeriodTimeline periods,
    int period
) : PackageRule(baseline)
{
    // the day by which another period as long as the last will have passed
    private readonly int horizon =
        period < 0 ? int.MinValue
        : periods.Begin(period) is { } begin
            ? (2 * periods.End(period).DayNumber) - begin.DayNumber + 1
        : periods.End(period).DayNumber;

    public override string Name => "planning_package_due";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "A planning package is detailed before its work begins. This one begins before another period has passed.";

    public override string Remedy => "Detail it into work packages.";

    public override string Source =>
        "GAO-16-89G and GAO-20-195G (rolling wave); one period ahead is common practice";

    protected override string? Message(int package)
    {
        var start = Baseline.Start[package];
        return
            period >= 0
            && Baseline.Tree.Kind(Baseline.Tree.PackageRows[package])
                == ElementTable.PlanningPackage
            && Cell.IsGiven(start)
            && start <= horizon
            && !Cell.IsGiven(status.FinishedAt(package, period))
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"{NameOf(package)} is a planning package and begins on {DateOnly.FromDayNumber(start):yyyy-MM-dd}."
            )
            : null;
    }
}
