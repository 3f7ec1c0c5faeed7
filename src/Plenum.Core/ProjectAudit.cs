using Plenum.Core.Accounts.Audit;
using Plenum.Core.Baseline.Audit;
using Plenum.Core.Breakdown;
using Plenum.Core.Breakdown.Audit;
using Plenum.Core.Foundation;
using Plenum.Core.Network;
using Plenum.Core.Network.Audit;
using Plenum.Core.People.Audit;
using Plenum.Core.Status.Audit;

namespace Plenum.Core;

/// <summary>The audit of a project: every rule, made for its present value.</summary>
public static class ProjectAudit
{
    private static readonly Func<AuditData, AuditRule>[] UpToPeople =
    [
        // the scope statement
        of => new NotCoveredRule(of.Coverage, "deliverable"),
        of => new PartlyCoveredRule(of.Coverage),
        of => new NotCoveredRule(of.Coverage, "requirement"),
        of => new ExclusionRule(of.Coverage),
        of => new NobodyAskedRule(of.Tree, of.Coverage),
        // the breakdown
        of => new GapRule(of.Tree, of.Project.Totals, of.Money, "money"),
        of => new MoreThanTheWholeRule(of.Tree, of.Project.Totals, of.Money, "money"),
        of => new GapRule(of.Tree, of.Project.HourTotals, AuditData.Hours, "hours"),
        of => new MoreThanTheWholeRule(of.Tree, of.Project.HourTotals, AuditData.Hours, "hours"),
        of => new QuantityRule(of.Tree, more: false),
        of => new QuantityRule(of.Tree, more: true),
        of => new NotBrokenDownRule(of.Tree, of.Project.Totals),
        of => new SingleChildRule(of.Tree),
        of => new DepthRule(of.Tree, of.Thresholds),
        of => new TwoLogicsRule(of.Tree, of.Readings),
        of => new SplitDiffersRule(of.Tree, of.Readings),
        of => new SplitNotDeclaredRule(of.Tree),
        of => new MissingActivityRule(of.Tree, of.Activities),
        of => new PlannedNotNeededRule(of.Tree, of.Activities),
        of => new SistersRule(
            of.Tree,
            new Sisters(of.Tree),
            of.Project.HourTotals.Budget,
            of.Activities.IsRuledOut,
            of.Thresholds
        ),
        of => new ManagementMissingRule(of.Tree, of.Names),
        of => new SoftwareApartRule(of.Tree, of.Names),
        // names, codes and the dictionary
        of => new DuplicateNameRule(of.Tree),
        of => new GenericNameRule(of.Tree, of.Names),
        of => new NotAPartRule(of.Tree, of.Names, of.IsPerson),
        of => new VerbNameRule(of.Tree, of.Names),
        of => new RootNameRule(of.Tree, of.Project.Settings.Name),
        of => new CodeRule(of.Tree, of.Project.Settings.CodeMask),
        of => new DictionaryRule(of.Tree),
        of => new DictionaryRepeatsRule(of.Tree),
        of => new InterfaceRule(of.Project[RegisterTable.Definition]),
        // people and accounts
        of => new AccountOverlapRule(of.Tree, of.Project.Placement),
        of => new PackageWithoutAccountRule(of.Tree, of.Project.Placement),
        of => new AccountUnitRule(of.Tree, of.Project.Placement),
        of => new PackageWithoutPersonRule(of.Tree),
        of => new AccountSizeRule(of.Baseline, of.Project.Placement, of.Thresholds, of.Money),
    ];

    private static readonly Func<AuditData, AuditRule>[] FromTheBaseline =
    [
        // the baseline
        of => new TechniqueRule(of.Baseline, of.Project.Periods, of.HasItems),
        of => new PackageTooLargeRule(of.Baseline, of.ProjectBudget, of.Thresholds, of.Money),
        of => new PackageTooSmallRule(of.Baseline, of.Thresholds),
        of => new PackageWithoutBudgetRule(of.Baseline),
        of => new PackageWithoutDatesRule(of.Baseline),
        of => new LevelOfEffortShareRule(of.Baseline, of.Thresholds),
        of => new LedgerRule(
            of.Baseline,
            of.Project.Placement,
            of.Project[Baseline.PostingTable.Definition],
            of.Money
        ),
        // status and cost
        of => new PackageTooLongRule(
            of.Baseline,
            of.Project.Status,
            of.Project.Periods,
            of.Period,
            of.Thresholds
        ),
        of => new OldStatusRule(
            of.Baseline,
            of.Project.Status,
            of.Project.Periods,
            of.Period,
            of.LastProgress,
            of.Links,
            of.Thresholds
        ),
        of => new PlanningPackageDueRule(
            of.Baseline,
            of.Project.Status,
            of.Project.Periods,
            of.Period
        ),
        of => new OldEstimateRule(
            of.Baseline,
            of.Project.Status,
            of.Project.Periods,
            of.Period,
            of.Thresholds
        ),
        of => new LateChainRule(
            of.Baseline,
            of.Project.Status,
            of.Links,
            of.Project.Periods,
            of.Project.Calendar,
            of.Period,
            of.Thresholds
        ),
        of => new ActivitiesDisagreeRule(
            of.Baseline,
            of.Project.Status,
            of.ActivityReports,
            of.Period
        ),
        of => new RemainingOfFinishedRule(of.Baseline, of.Project.Status, of.Period),
        of => new CostBeforeStartRule(
            of.Baseline,
            of.Project.Status,
            of.ActualCost,
            of.Period,
            of.Money
        ),
        of => new ActualAboveCommittedRule(
            of.Baseline,
            of.ActualCost,
            of.Committed,
            of.Period,
            of.Money
        ),
        of => new PrecisionRule(
            of.Accounts,
            of.Project.Periods,
            of.Verdicts,
            of.PackageName,
            of.Project.Settings.VarianceThreshold
        ),
        // forecast
        of => new LowEstimateRule(
            of.Baseline,
            of.Project.Status,
            of.Project.Periods,
            of.EarnedValue,
            of.Period,
            of.Thresholds,
            of.Money
        ),
        of => new EstimateBelowIndexRule(of.Accounts, of.AccountSums, of.Money, of.Thresholds),
        of => new EstimateBelowCommittedRule(of.Packages, of.PackageSums, of.Money),
        of => new HiddenOffsetsRule(
            of.Accounts,
            of.AccountSums,
            of.Project.Settings.VarianceThreshold,
            of.Money
        ),
    ];

    /// <summary>All rules in the order of the job; none for a project without elements.</summary>
    public static IReadOnlyList<AuditRule> Rules(Project project)
    {
        if (project.Tree.Count == 0)
        {
            return [];
        }

        var data = new AuditData(project);
        return
        [
            .. UpToPeople.Select(make => make(data)),
            .. NetworkRules(project),
            .. FromTheBaseline.Select(make => make(data)),
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
}
