using Plenum.Core.Accounts;
using Plenum.Core.Accounts.Audit;
using Plenum.Core.Baseline.Audit;
using Plenum.Core.Breakdown.Audit;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Network;
using Plenum.Core.Network.Audit;
using Plenum.Core.People.Audit;
using Plenum.Core.Status;
using Plenum.Core.Status.Audit;

namespace Plenum.Core;

/// <summary>The audit of a project: every rule, made for its present value.</summary>
public static class ProjectAudit
{
    /// <summary>All rules in the order of the job.</summary>
    public static IReadOnlyList<AuditRule> Rules(Project project)
    {
        var tree = project.Tree;
        if (tree.Count == 0)
        {
            return [];
        }

        var money = new MoneyText(project.Settings.Currency);
        var baseline = project.Baseline;
        var period = project.CurrentPeriod();
        var phased = project.TimePhased;
        var totals = project.Totals;
        var cuts = project.CutsUnder(-1);
        var accounts = cuts.ByAccount();
        var accountSums = CutMeasures.At(phased, accounts, period, false).Rows;
        var packages = cuts.ByPackage();
        var packageSums = CutMeasures.At(phased, packages, period, false).Rows;
        return
        [
            new GapRule(tree, totals, money.Of, "money"),
            new MoreThanTheWholeRule(tree, totals, money.Of, "money"),
            new GapRule(tree, project.HourTotals, HoursText, "hours"),
            new MoreThanTheWholeRule(tree, project.HourTotals, HoursText, "hours"),
            new NotBrokenDownRule(tree, totals),
            new SingleChildRule(tree),
            new DuplicateNameRule(tree),
            new DepthRule(tree),
            new AccountOverlapRule(tree, project.Placement),
            new PackageWithoutAccountRule(tree, project.Placement),
            new AccountUnitRule(tree, project.Placement),
            new PackageWithoutPersonRule(tree),
            .. NetworkRules(project),
            new TechniqueRule(baseline, project.Periods, PackagesWithItems(project).Contains),
            new PackageWithoutDatesRule(baseline),
            new LevelOfEffortShareRule(baseline),
            new LedgerRule(
                baseline,
                project.Placement,
                project[Baseline.PostingTable.Definition],
                money.Of
            ),
            new OldStatusRule(
                baseline,
                project.Status,
                project.Periods,
                period,
                LastProgress(project, period)
            ),
            new CostBeforeStartRule(
                baseline,
                project.Status,
                phased.Actual.Packages,
                period,
                money.Of
            ),
            new ActualAboveCommittedRule(
                baseline,
                phased.Actual.Packages,
                phased.CommittedAt(period),
                period,
                money.Of
            ),
            new EstimateBelowIndexRule(accounts, accountSums, money.Of),
            new EstimateBelowCommittedRule(packages, packageSums, money.Of),
            new HiddenOffsetsRule(
                accounts,
                accountSums,
                project.Settings.VarianceThreshold,
                money.Of
            ),
        ];
    }

    /// <summary>The rules of the network; where it cannot be computed the first says why and the others find nothing.</summary>
    private static AuditRule[] NetworkRules(Project project)
    {
        AuditedNetwork? network = null;
        string? why = null;
        try
        {
            network = ProjectAssessment.Of(project, project.Network);
        }
        catch (NetworkException wrong)
        {
            why = wrong.Message;
        }

        var isAsked =
            project[ActivityTable.Definition].Count > 0 || project[LinkTable.Definition].Count > 0;
        return
        [
            new NetworkNotComputedRule(project.Tree.Code(0), isAsked ? why : null),
            new OpenStartRule(network),
            new OpenFinishRule(network),
            new DanglingStartRule(network),
            new DanglingFinishRule(network),
            new LeadRule(network),
            new StartToFinishRule(network),
            new RedundantLinkRule(network),
            new HardConditionRule(network),
            new NegativeFloatRule(network),
            new RequiredDateRule(network),
            new RequiredBeforeStartRule(network),
            new BrokenLinkRule(network),
            new OutOfSequenceRule(network),
            new ForecastInThePastRule(network),
            new ActualInTheFutureRule(network),
            new LongActivityRule(network),
            new UnnamedActivityRule(network),
            new LevelOfEffortDrivesRule(network),
        ];
    }

    private static string HoursText(long hundredths) =>
        (hundredths / 100m).ToString("0.##", System.Globalization.CultureInfo.InvariantCulture)
        + " h";

    private static HashSet<int> PackagesWithItems(Project project) =>
        [.. project.Baseline.OwnersOf(project[ItemTable.Definition], ItemTable.Package)];

    /// <summary>For each package the last period in which a milestone or a step was reported; −1 for none.</summary>
    private static Func<int, int> LastProgress(Project project, int period)
    {
        var last = new int[project.Baseline.Count];
        last.AsSpan().Fill(-1);
        Note(
            project[MilestoneStatusTable.Definition],
            MilestoneStatusTable.Package,
            MilestoneStatusTable.Period
        );
        Note(project[ItemStepTable.Definition], ItemStepTable.Package, ItemStepTable.Period);
        return package => last[package];

        void Note(Table table, ColumnDefinition owner, ColumnDefinition column)
        {
            var owners = project.Baseline.OwnersOf(table, owner);
            var periods = PackageStatus.PeriodsOf(table, column, project.Periods);
            for (var row = 0; row < owners.Length; row++)
            {
                if (owners[row] >= 0 && periods[row] <= period)
                {
                    last[owners[row]] = Math.Max(last[owners[row]], periods[row]);
                }
            }
        }
    }
}
