using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Changes;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;
using Plenum.Core.Network;
using Plenum.Core.People;
using Plenum.Core.Scope;
using Plenum.Core.Status;

namespace Plenum.Core;

/// <summary>
/// All that must hold for a project as a whole before it is taken over. What merely deserves attention is a finding
///, not an error.
/// </summary>
public sealed partial class ProjectRules
{
    private readonly Project project;
    private readonly Func<TableDefinition, bool> isClean;
    private readonly IRowFaults faults;
    private readonly ProjectChange? change;

    private ProjectRules(
        Project project,
        Func<TableDefinition, bool> isClean,
        IRowFaults faults,
        ProjectChange? change = null
    )
    {
        this.project = project;
        this.isClean = isClean;
        this.faults = faults;
        this.change = change;
    }

    /// <param name="project">The project; its elements in depth-first order.</param>
    /// <param name="isClean">
    /// False for tables with cells that were not understood: rules that read them would only repeat the complaint.
    /// </param>
    /// <param name="faults">Receives what is wrong.</param>
    public static void Check(
        Project project,
        Func<TableDefinition, bool> isClean,
        IRowFaults faults
    ) => new ProjectRules(project, isClean, faults).Check();

    /// <summary>What must hold, as far as a change of a project for which it held may have broken it.</summary>
    public static void Check(Project project, ProjectChange change, IRowFaults faults) =>
        new ProjectRules(project, _ => true, faults, change).Check();

    private void Check()
    {
        var periodsSound = AreClean(ProjectTable.Definition, PeriodTable.Definition);
        if (periodsSound && Concerns(ProjectTable.Definition, PeriodTable.Definition))
        {
            TimeRules.Check(project[PeriodTable.Definition], project.Settings.Start, faults);
        }

        CheckTrees();
        SumsFit();
        if (
            AreClean(ChangeTable.Definition, PostingTable.Definition)
            && Concerns(ChangeTable.Definition, PostingTable.Definition)
        )
        {
            BaselineRules.CheckPostings(project[PostingTable.Definition], faults);
        }

        if (AreClean(CreditStepTable.Definition) && Concerns(CreditStepTable.Definition))
        {
            StatusRules.CheckCreditSteps(project[CreditStepTable.Definition], faults);
        }

        if (!AreClean(ElementTable.Definition))
        {
            return;
        }

        if (Concerns(ElementTable.Parent, ElementTable.Kind))
        {
            BreakdownRules.CheckKinds(project.Tree, faults);
        }

        CheckPackageReferences();
        if (ConcernsNetwork())
        {
            CheckNetwork();
        }

        if (periodsSound && ConcernsBaseline())
        {
            CheckBaseline();
        }
    }

    private bool AreClean(params ReadOnlySpan<TableDefinition> tables)
    {
        foreach (var table in tables)
        {
            if (!isClean(table))
            {
                return false;
            }
        }

        return true;
    }

    private void CheckTrees()
    {
        if (AreClean(ScopeTable.Definition) && Concerns(ScopeTable.Parent))
        {
            ParentRules.ReportRings(project[ScopeTable.Definition], ScopeTable.Parent, faults);
        }

        if (AreClean(QueryTable.Definition) && Concerns(QueryTable.Definition))
        {
            ScopeRules.CheckQueries(project[QueryTable.Definition], faults);
        }

        if (AreClean(UnitTable.Definition) && Concerns(UnitTable.Parent))
        {
            ParentRules.ReportRings(project[UnitTable.Definition], UnitTable.Parent, faults);
        }

        if (AreClean(DelegationTable.Definition) && Concerns(DelegationTable.Definition))
        {
            DelegationRules.Check(project[DelegationTable.Definition], faults);
        }

        if (
            AreClean(GroupTable.Definition, GroupMemberTable.Definition)
            && Concerns(GroupTable.Definition, GroupMemberTable.Definition)
        )
        {
            BreakdownRules.CheckGroups(
                project[GroupTable.Definition],
                project[GroupMemberTable.Definition],
                faults
            );
        }

        if (AreClean(WorkSetTable.Definition) && Concerns(WorkSetTable.Definition))
        {
            BreakdownRules.CheckWorkSets(project[WorkSetTable.Definition], faults);
        }
    }

    private void CheckNetwork()
    {
        if (AreClean(CalendarTable.Definition, CalendarDayTable.Definition))
        {
            TimeRules.CheckCalendars(
                project[CalendarTable.Definition],
                project[CalendarDayTable.Definition],
                faults
            );
        }

        if (!AreClean(ActivityTable.Definition))
        {
            return;
        }

        if (
            AreClean(ProjectTable.Definition, CalendarTable.Definition, CalendarDayTable.Definition)
        )
        {
            NetworkConditionRules.Check(
                project[ActivityTable.Definition],
                project.Settings.Start,
                ProjectNetwork.CalendarsByRow(project),
                faults
            );
        }

        if (AreClean(LinkTable.Definition))
        {
            CheckLinks();
        }
    }

    private void CheckLinks()
    {
        var links = project[LinkTable.Definition];
        NetworkRules.CheckLinks(project.Tree, project[ActivityTable.Definition], links, faults);
        var (codes, row, from, to, linkRow) = ProjectNetwork.LinksOf(project);
        if (
            NetworkRules.CheckRings(links, codes, from, to, linkRow, faults)
            && project.Settings.Start is not null
            && AreClean(
                ProjectTable.Definition,
                CalendarTable.Definition,
                CalendarDayTable.Definition,
                PeriodTable.Definition,
                PackageTable.Definition,
                StatusTable.Definition,
                ActivityStatusTable.Definition
            )
            && ProjectNetwork.MayLeaveCalendars(project)
        )
        {
            CheckReach(row, linkRow);
        }
    }

    /// <summary>No work and no lag leads beyond the last working day of its calendar.</summary>
    private void CheckReach(int[] rowOfActivity, int[] rowOfLink)
    {
        try
        {
            _ = project.Network;
        }
        catch (NetworkException beyond) when (beyond.Link is { } link)
        {
            faults.Add(
                project[LinkTable.Definition],
                rowOfLink[link],
                LinkTable.Lag,
                "a lag that ends within the predecessor's calendar",
                beyond.Reason
            );
        }
        catch (NetworkException beyond)
            when (beyond.Activity is { } activity && rowOfActivity[activity] >= 0)
        {
            faults.Add(
                project[ActivityTable.Definition],
                rowOfActivity[activity],
                ActivityTable.Duration,
                "work that ends within its calendar",
                beyond.Reason
            );
        }
        catch (NetworkException beyond)
        {
            faults.Add(
                project[ElementTable.Definition],
                0,
                null,
                "work that ends within its calendar",
                beyond.Reason
            );
        }
    }

    private void CheckBaseline()
    {
        if (
            !AreClean(
                PackageTable.Definition,
                BudgetTable.Definition,
                BudgetPeriodTable.Definition,
                MilestoneTable.Definition
            )
        )
        {
            return;
        }

        var rules = new BaselineRules(
            project.Baseline,
            project.Periods,
            project.Settings.Currency,
            faults
        );
        rules.CheckPackages();
        rules.CheckMilestones();
        rules.CheckPeriodAmounts();
        if (AreClean(AccountTable.Definition, UnitTable.Definition))
        {
            rules.CheckNamedAccounts(project.Placement);
        }

        CheckStatus();
    }

    private void CheckStatus()
    {
        var rules = new StatusRules(project.Baseline, project.Periods, faults);
        if (AreClean(StatusTable.Definition))
        {
            rules.CheckPackages(project[StatusTable.Definition]);
        }

        if (AreClean(ActivityTable.Definition, ActivityStatusTable.Definition))
        {
            rules.CheckActivities(
                project[ActivityStatusTable.Definition],
                project[ActivityTable.Definition]
            );
        }

        if (AreClean(MilestoneStatusTable.Definition))
        {
            rules.CheckMilestones(project[MilestoneStatusTable.Definition]);
        }

        if (AreClean(CreditStepTable.Definition, ItemTable.Definition, ItemStepTable.Definition))
        {
            rules.CheckItems(
                project[ItemTable.Definition],
                project[CreditStepTable.Definition],
                project[ItemStepTable.Definition]
            );
        }
    }

    /// <summary>Where a package is expected, the element is one.</summary>
    private void CheckPackageReferences()
    {
        var tree = project.Tree;
        var packagesWent = PackagesWent();
        foreach (var table in project.Tables)
        {
            foreach (
                var column in table.Definition.Columns.Where(column => column.IsPackageReference)
            )
            {
                var target = column.TargetOf(ElementTable.Definition);
                if (!Concerns(column) && !packagesWent)
                {
                    continue;
                }

                var values = table.Ints(column);
                for (var row = 0; row < values.Length; row++)
                {
                    if (
                        Cell.IsGiven(values[row])
                        && column.DecodeReference(values[row]) is var (found, id)
                        && found == target
                        && tree.PackageOfId(id) < 0
                        && tree.Elements.RowOf(id) is var element and >= 0
                    )
                    {
                        var what = tree.HasChildren(element) ? "it has children" : "it is a branch";
                        faults.Add(
                            table,
                            row,
                            column,
                            $"the code of {column.Called}",
                            $"\"{tree.Code(element)}\" is no package: {what}"
                        );
                    }
                }
            }
        }
    }

    /// <summary>
    /// No sum of money or hours can leave its range, whatever is summed: the sum of all magnitudes fits.
    /// </summary>
    private void SumsFit()
    {
        foreach (var table in project.Tables)
        {
            if (table.Count == 0 || !isClean(table.Definition))
            {
                continue;
            }

            foreach (
                var column in table.Definition.Columns.Where(column =>
                    column.Storage == ColumnStorage.Long && Concerns(column)
                )
            )
            {
                Int128 sum = 0;
                foreach (var value in table.Longs(column))
                {
                    sum += Cell.IsGiven(value) ? Math.Abs(value) : 0;
                }

                if (sum > long.MaxValue / 8)
                {
                    faults.Add(
                        table,
                        table.Count - 1,
                        column,
                        "amounts whose sum stays below 10^18 minor units",
                        $"all of {table.Definition.Name}.{column.Name} together is too large to be summed exactly"
                    );
                }
            }
        }
    }
}
