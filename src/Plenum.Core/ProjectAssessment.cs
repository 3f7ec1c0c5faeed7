using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Network;
using Plenum.Core.Network.Assessment;
using Plenum.Core.Network.Audit;
using Plenum.Core.Status;

namespace Plenum.Core;

/// <summary>What the assessment of a schedule needs to know from the other chapters.</summary>
public static class ProjectAssessment
{
    /// <summary>The network with its facts, ready for the rules of the audit and for the assessment.</summary>
    public static AuditedNetwork Of(Project project, ProjectNetwork network) =>
        new(network.Dates, Facts(project, network), project.Settings.Assessment);

    private static AssessmentFacts Facts(Project project, ProjectNetwork network)
    {
        var baseline = project.Baseline;
        var package = network.Package;
        var activities = project[ActivityTable.Definition];
        var low = activities.Ints(ActivityTable.Low);
        var high = activities.Ints(ActivityTable.High);
        var hasRange = new bool[package.Length];
        for (var activity = 0; activity < hasRange.Length; activity++)
        {
            var row = network.Row[activity];
            hasRange[activity] = row >= 0 && Cell.IsGiven(low[row]) && Cell.IsGiven(high[row]);
        }

        var (started, finished) = LatestReports(project, network);
        return new AssessmentFacts
        {
            IsLevelOfEffort = Array.ConvertAll(
                package,
                owner => baseline.Technique[owner] == TechniqueCodec.LevelOfEffort
            ),
            IsPackage = Array.ConvertAll(network.Row, row => row < 0),
            BaselineStart = Array.ConvertAll(package, owner => baseline.Start[owner]),
            BaselineFinish = Array.ConvertAll(package, owner => baseline.Finish[owner]),
            HasResources = Array.ConvertAll(
                package,
                owner => baseline.TotalBudget[owner] != 0 || baseline.BudgetHours[owner] != 0
            ),
            ReportedStart = started,
            ReportedFinish = finished,
            HasRange = hasRange,
            ReportingDays = ReportingDays(project),
            Name = network.Name,
        };
    }

    /// <summary>The latest actual dates of all reports, those of periods after the status date too.</summary>
    private static (int[] Started, int[] Finished) LatestReports(
        Project project,
        ProjectNetwork network
    )
    {
        var started = NetworkInput.NoDays(network.Package.Length);
        var finished = NetworkInput.NoDays(network.Package.Length);
        var activityOfRow = new int[project[ActivityTable.Definition].Count];
        for (var activity = 0; activity < network.Row.Length; activity++)
        {
            if (network.Row[activity] >= 0)
            {
                activityOfRow[network.Row[activity]] = activity;
            }
        }

        var reports = project[ActivityStatusTable.Definition];
        for (var row = 0; row < reports.Count; row++)
        {
            var activity = activityOfRow[
                project[ActivityTable.Definition]
                    .RowOf(reports.Ints(ActivityStatusTable.Activity)[row])
            ];
            Note(started, activity, reports.Ints(ActivityStatusTable.Started)[row]);
            Note(finished, activity, reports.Ints(ActivityStatusTable.Finished)[row]);
        }

        var status = project[StatusTable.Definition];
        for (var row = 0; row < status.Count; row++)
        {
            var package = project.Tree.PackageOfId(status.Ints(StatusTable.Package)[row]);
            var activity = package < 0 ? -1 : network.ActivitiesOf(package).First;
            if (activity >= 0 && network.Row[activity] < 0)
            {
                Note(started, activity, status.Ints(StatusTable.Started)[row]);
                Note(finished, activity, status.Ints(StatusTable.Finished)[row]);
            }
        }

        return (started, finished);

        static void Note(int[] latest, int activity, int day)
        {
            if (Cell.IsGiven(day))
            {
                latest[activity] = Math.Max(latest[activity], day);
            }
        }
    }

    /// <summary>Working days of the period after the current one, or of the last.</summary>
    private static int? ReportingDays(Project project)
    {
        var periods = project.Periods;
        var period = Math.Min(project.CurrentPeriod() + 1, periods.Count - 1);
        return period < 0 || periods.Begin(period) is not { } begin
            ? null
            : project.Calendar.WorkingDays(begin, periods.End(period));
    }
}
