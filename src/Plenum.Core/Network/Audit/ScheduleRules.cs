using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Network.Assessment;

namespace Plenum.Core.Network.Audit;

/// <summary>Progress that has not kept to a link.</summary>
public sealed class OutOfSequenceRule(AuditedNetwork? network) : NetworkRule(network)
{
    public override string Name => "out_of_sequence";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "Work began or ended before a link allowed it: either the link is not true or the report is not.";

    public override string Remedy => "Correct the link to how the work is done, or the report.";

    public override string Source => "GAO-16-89G best practice 9";

    protected override IEnumerable<Finding> Find(AuditedNetwork of) =>
        of
            .Dates.Drivers.LinksOutOfSequence()
            .Where(link => !of.Dates.IsFinished(of.Input.To[link]))
            .Select(link =>
                Found(
                    of.Code(of.Input.To[link]),
                    $"{of.Name(of.Input.To[link])} has not kept to {of.Link(link)}."
                )
            );
}

/// <summary>A task that takes too long to be watched.</summary>
public sealed class LongActivityRule(AuditedNetwork? network) : NetworkRule(network)
{
    public override string Name => "long_activity";

    public override Severity Severity => Severity.Note;

    public override string Explanation =>
        "Work of more than two months is hard to measure on the way, and its links are seldom true to both ends.";

    public override string Remedy => "Split it where something can be seen to be done.";

    public override string Source =>
        "14-point schedule assessment, point 8; GAO-16-89G best practice 4";

    protected override IEnumerable<Finding> Find(AuditedNetwork of) =>
        of
            .OpenTasks.Where(activity => of.Input.Duration[activity] > of.Limits.DurationDays)
            .Select(activity =>
                Found(
                    of.Code(activity),
                    $"{of.Name(activity)} takes {Days(of.Input.Duration[activity])}."
                )
            );
}

/// <summary>An activity without a name.</summary>
public sealed class UnnamedActivityRule(AuditedNetwork? network) : NetworkRule(network)
{
    public override string Name => "unnamed_activity";

    public override Severity Severity => Severity.Note;

    public override string Explanation =>
        "Nobody can say whether an activity without a name is done.";

    public override string Remedy => "Name what is done, with a verb and an object.";

    public override string Source => "GAO-16-89G best practice 1";

    protected override IEnumerable<Finding> Find(AuditedNetwork of)
    {
        for (var activity = 0; activity < of.Input.Count; activity++)
        {
            if (string.IsNullOrWhiteSpace(of.Facts.Name(activity)))
            {
                yield return Found(of.Code(activity), $"Activity {of.Code(activity)} has no name.");
            }
        }
    }
}

/// <summary>Work that is not done and is forecast before the status date.</summary>
public sealed class ForecastInThePastRule(AuditedNetwork? network) : NetworkRule(network)
{
    public override string Name => "forecast_in_the_past";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "An on date holds work that is not done before the status date, when it can no longer be done.";

    public override string Remedy => "Report what was done, and take the on date out.";

    public override string Source =>
        "14-point schedule assessment, point 9; GAO-16-89G best practice 9";

    protected override IEnumerable<Finding> Find(AuditedNetwork of)
    {
        for (var activity = 0; activity < of.Input.Count; activity++)
        {
            if (ScheduleAssessment.IsForecastInThePast(of.Dates, activity))
            {
                yield return Found(
                    of.Code(activity),
                    $"{of.Name(activity)} is not done and is held from {Day(of.Dates.EarlyStart(activity))} to {Day(of.Dates.EarlyFinish(activity))}."
                );
            }
        }
    }
}

/// <summary>Progress of a day that has not come.</summary>
public sealed class ActualInTheFutureRule(AuditedNetwork? network) : NetworkRule(network)
{
    public override string Name => "actual_in_the_future";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "An actual date after the status date reports what cannot be known yet; it does not count until the status date has passed it.";

    public override string Remedy => "Move the status date on, or correct the report.";

    public override string Source =>
        "14-point schedule assessment, point 9; GAO-16-89G best practice 9";

    protected override IEnumerable<Finding> Find(AuditedNetwork of)
    {
        for (var activity = 0; activity < of.Input.Count; activity++)
        {
            if (ScheduleAssessment.IsActualInTheFuture(of.Dates, of.Facts, activity))
            {
                var latest = Math.Max(
                    of.Facts.ReportedStart[activity],
                    of.Facts.ReportedFinish[activity]
                );
                yield return Found(
                    of.Code(activity),
                    $"{of.Name(activity)} reports {Day(latest)}, which is after the status date {Day(of.Input.StatusDay ?? Cell.NoInt)}."
                );
            }
        }
    }
}

/// <summary>Support that drives the finish.</summary>
public sealed class LevelOfEffortDrivesRule(AuditedNetwork? network) : NetworkRule(network)
{
    public override string Name => "level_of_effort_drives";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "Support lasts as long as what it supports; where it drives the finish the driving chain says nothing.";

    public override string Remedy =>
        "Let its dates follow the work that it supports, and take it out of the chain.";

    public override string Source => "GAO-16-89G best practice 6";

    protected override IEnumerable<Finding> Find(AuditedNetwork of)
    {
        for (var activity = 0; activity < of.Input.Count; activity++)
        {
            if (
                of.Facts.IsLevelOfEffort[activity]
                && of.Dates.IsDriving(activity)
                && !of.Dates.IsFinished(activity)
            )
            {
                yield return Found(
                    of.Code(activity),
                    $"{of.Name(activity)} is level of effort and drives the end of the project."
                );
            }
        }
    }
}
