using Plenum.Core;
using Plenum.Core.Network;
using Plenum.Core.Status;

namespace Plenum.Workbench.Maps;

/// <summary>The lens of status: whose report is in for the period, as a mix.</summary>
internal static class StatusLens
{
    private static readonly LensClass[] Classes =
    [
        new("reported", "reported", "ink2"),
        new("due", "due", "c1", "dotted"),
        new("late", "late", "unf2"),
        new("nothing_due", "nothing due", "none"),
    ];

    public static Lens Of(Project project, int period)
    {
        var tree = project.Tree;
        var reports = LastReportsOf(project, period);
        var classOf = new byte[tree.Count];
        for (var row = 0; row < classOf.Length; row++)
        {
            var state = tree.PackageOfRow[row] is var package and >= 0
                ? Reporting.Of(
                    project.Baseline,
                    project.Status,
                    project.Periods,
                    reports,
                    package,
                    period
                )
                : ReportState.NothingDue;
            classOf[row] = (byte)state;
        }

        return new Lens(
            project,
            new LensHead(
                new LensText(
                    "Status",
                    period < 0
                        ? "Whose report is in, as a mix"
                        : $"Whose report is in for period {project.Periods.Codes[period]}, as a mix",
                    period < 0 ? null : project.Periods.End(period)
                ),
                new LensLegend("Status", Classes)
            ),
            classOf
        )
        {
            IsMix = true,
        };
    }

    private static LastReports LastReportsOf(Project project, int period) =>
        new LastReports(project.Baseline, project.Periods, period)
            .With(project[StatusTable.Definition], StatusTable.Package, StatusTable.Period)
            .With(
                project[MilestoneStatusTable.Definition],
                MilestoneStatusTable.Package,
                MilestoneStatusTable.Period
            )
            .With(project[ItemStepTable.Definition], ItemStepTable.Package, ItemStepTable.Period)
            .WithActivities(
                project[ActivityTable.Definition],
                ActivityTable.Package,
                project[ActivityStatusTable.Definition],
                ActivityStatusTable.Activity,
                ActivityStatusTable.Period
            );
}
