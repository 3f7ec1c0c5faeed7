using Plenum.Core.Accounts.Audit;
using Plenum.Core.Baseline;
using Plenum.Core.Baseline.Audit;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;
using Plenum.Core.Network;
using Plenum.Core.People;
using Plenum.Core.Status;
using Plenum.Core.Status.Audit;
using static Plenum.Core.AuditGround;
using static Plenum.Core.AuditReach;
using E = Plenum.Core.Breakdown.ElementTable;

namespace Plenum.Core;

internal static partial class GroundedRules
{
    /// <summary>What the earned value of a package follows from, among what is said of it.</summary>
    private static readonly TableDefinition[] Progress =
    [
        PackageTable.Definition,
        BudgetTable.Definition,
        BudgetPeriodTable.Definition,
        MilestoneTable.Definition,
        ItemTable.Definition,
        StatusTable.Definition,
        MilestoneStatusTable.Definition,
        ItemStepTable.Definition,
    ];

    /// <summary>What it follows from beside that.</summary>
    private static readonly TableDefinition[] Rules =
    [
        CreditStepTable.Definition,
        CalendarTable.Definition,
        CalendarDayTable.Definition,
        PeriodTable.Definition,
    ];

    public static readonly GroundedRule[] OfBaseline =
    [
        new(
            AtPackages
                .OwnRows(
                    PackageTable.Definition,
                    BudgetTable.Definition,
                    MilestoneTable.Definition,
                    ItemTable.Definition
                )
                .Whole(PeriodTable.Definition),
            of => new TechniqueRule(of.Baseline, of.Project.Periods, of.HasItems)
        ),
        new(
            AtPackages
                .Whole(BudgetTable.Definition)
                .Whole(E.Parent, E.Kind)
                .Settings("currency", "audit_package_share"),
            of => new PackageTooLargeRule(of.Baseline, of.ProjectBudget, of.Thresholds, of.Money)
        ),
        new(
            AtPackages.OwnRows(BudgetTable.Definition).Settings("audit_package_hours"),
            of => new PackageTooSmallRule(of.Baseline, of.Thresholds)
        ),
        new(
            AtPackages.OwnRows(BudgetTable.Definition),
            of => new PackageWithoutBudgetRule(of.Baseline)
        ),
        new(
            AtPackages.OwnRows(BudgetTable.Definition, PackageTable.Definition),
            of => new PackageWithoutDatesRule(of.Baseline)
        ),
        new(
            AsWhole
                .Whole(BudgetTable.Definition)
                .Whole(PackageTable.Technique, E.Parent, E.Kind, E.Code)
                .Settings("audit_loe_share"),
            of => new LevelOfEffortShareRule(of.Baseline, of.Thresholds)
        ),
        new(
            AsWhole
                .Whole(PostingTable.Definition, BudgetTable.Definition, AccountTable.Definition)
                .Placement()
                .Settings("currency"),
            of => new LedgerRule(
                of.Baseline,
                of.Project.Placement,
                of.Project[PostingTable.Definition],
                of.Money
            )
        ),
    ];

    public static readonly GroundedRule[] OfStatus =
    [
        new(
            Reported.OwnRows(BudgetTable.Definition).Settings("audit_package_periods"),
            of => new PackageTooLongRule(
                of.Baseline,
                of.Project.Status,
                of.Project.Periods,
                of.Period,
                of.Thresholds
            )
        ),
        new(
            Linked(Reported)
                .OwnRows(MilestoneStatusTable.Definition, ItemStepTable.Definition)
                .Near(WaitedFor, [.. StatusTable.Definition.Columns])
                .Settings("audit_silent_periods"),
            of => new OldStatusRule(
                of.Baseline,
                of.Project.Status,
                of.Project.Periods,
                of.Period,
                of.LastProgress,
                of.Links,
                of.Thresholds
            )
        ),
        new(
            Reported,
            of => new PlanningPackageDueRule(
                of.Baseline,
                of.Project.Status,
                of.Project.Periods,
                of.Period
            )
        ),
        new(
            Reported.Settings("audit_silent_periods"),
            of => new OldEstimateRule(
                of.Baseline,
                of.Project.Status,
                of.Project.Periods,
                of.Period,
                of.Thresholds
            )
        ),
        new(
            Linked(Reported)
                .Whole(CalendarTable.Definition, CalendarDayTable.Definition)
                .Settings("calendar", "audit_late_days", "audit_late_followers"),
            of => new LateChainRule(
                of.Baseline,
                of.Project.Status,
                of.Links,
                of.Project.Periods,
                of.Project.Calendar,
                of.Period,
                of.Thresholds
            )
        ),
        new(
            Reported.Whole(ActivityTable.Definition, ActivityStatusTable.Definition),
            of => new ActivitiesDisagreeRule(
                of.Baseline,
                of.Project.Status,
                of.ActivityReports,
                of.Period
            )
        ),
        new(Reported, of => new RemainingOfFinishedRule(of.Baseline, of.Project.Status, of.Period)),
        new(
            Reported.OwnRows(ActualTable.Definition).Settings("accruals", "currency"),
            of => new CostBeforeStartRule(
                of.Baseline,
                of.Project.Status,
                of.ActualCost,
                of.Period,
                of.Money
            )
        ),
        new(
            AtPackages
                .OwnRows(ActualTable.Definition, CommitmentTable.Definition)
                .Whole(PeriodTable.Definition)
                .Settings("accruals", "currency")
                .Period(),
            of => new ActualAboveCommittedRule(
                of.Baseline,
                of.ActualCost,
                of.Committed,
                of.Period,
                of.Money
            )
        ),
        new(
            AtAccounts
                .Near(Members, E.Quantity, E.Kind, E.Name, E.Code)
                .Near(Members, [.. Progress.SelectMany(table => table.Columns)])
                .Whole(Rules)
                .Whole(AccountTable.Definition)
                .Settings("calendar", "variance_threshold", "assessor_error")
                .Period(),
            of => new PrecisionRule(
                of.Accounts,
                of.Project.Periods,
                of.Verdicts,
                of.PackageName,
                of.Project.Settings.VarianceThreshold
            )
        ),
    ];

    public static readonly GroundedRule[] OfForecast =
    [
        new(
            Earning.Settings("audit_estimate_share"),
            of => new LowEstimateRule(
                of.Baseline,
                of.Project.Status,
                of.Project.Periods,
                of.EarnedValue,
                of.Period,
                of.Thresholds,
                of.Money
            )
        ),
        new(
            Summed.Settings("audit_index_lead"),
            of => new EstimateBelowIndexRule(of.Accounts, of.AccountSums, of.Money, of.Thresholds)
        ),
        new(
            Earning
                .OwnRows(ActualTable.Definition, CommitmentTable.Definition)
                .Settings("accruals"),
            of => new EstimateBelowCommittedRule(of.Baseline, of.SumsOf, of.Money)
        ),
        new(
            Summed.Settings("variance_threshold"),
            of => new HiddenOffsetsRule(
                of.Accounts,
                of.AccountSums,
                of.Project.Settings.VarianceThreshold,
                of.Money
            )
        ),
    ];

    /// <summary>Baseline dates and reports of a package at the present period.</summary>
    private static AuditGround Reported =>
        AtPackages
            .OwnRows(PackageTable.Definition, StatusTable.Definition)
            .Whole(PeriodTable.Definition)
            .Period();

    /// <summary>What a package has earned at the present period.</summary>
    private static AuditGround Earning =>
        AtPackages
            .Own(E.Quantity)
            .OwnRows(Progress)
            .Near(Base, E.Quantity, E.Kind, E.Parent)
            .Near(Base, [.. Progress.SelectMany(table => table.Columns)])
            .Whole(Rules)
            .Settings("calendar", "currency")
            .Period();

    /// <summary>Measures of all accounts at the present period.</summary>
    private static AuditGround Summed =>
        AsWhole
            .Whole(Progress)
            .Whole(Rules)
            .Whole(
                AccountTable.Definition,
                ActualTable.Definition,
                CommitmentTable.Definition,
                PostingTable.Definition
            )
            .Whole(E.Quantity)
            .Placement()
            .Settings("calendar", "currency", "accruals")
            .Period();

    /// <summary>Which packages wait for which: read whole, as are the packages that there are.</summary>
    private static AuditGround Linked(AuditGround ground) =>
        ground.Whole(ActivityTable.Definition, LinkTable.Definition).Whole(E.Parent, E.Kind);
}
