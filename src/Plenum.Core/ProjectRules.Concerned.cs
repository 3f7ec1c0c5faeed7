using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;
using Plenum.Core.Network;
using Plenum.Core.People;
using Plenum.Core.Status;

namespace Plenum.Core;

/// <summary>Which rules a change can have broken: those that read a column in which something has changed.</summary>
public sealed partial class ProjectRules
{
    private static readonly TableDefinition[] NetworkTables =
    [
        ProjectTable.Definition,
        CalendarTable.Definition,
        CalendarDayTable.Definition,
        PeriodTable.Definition,
        ActivityTable.Definition,
        LinkTable.Definition,
        StatusTable.Definition,
        ActivityStatusTable.Definition,
    ];

    private static readonly TableDefinition[] BaselineTables =
    [
        ProjectTable.Definition,
        CalendarTable.Definition,
        CalendarDayTable.Definition,
        PeriodTable.Definition,
        AccountTable.Definition,
        PackageTable.Definition,
        BudgetTable.Definition,
        BudgetPeriodTable.Definition,
        MilestoneTable.Definition,
        ActivityTable.Definition,
        StatusTable.Definition,
        ActivityStatusTable.Definition,
        MilestoneStatusTable.Definition,
        CreditStepTable.Definition,
        ItemTable.Definition,
        ItemStepTable.Definition,
    ];

    private bool Concerns(params ReadOnlySpan<TableDefinition> tables)
    {
        if (change is null)
        {
            return true;
        }

        foreach (var table in tables)
        {
            if (table.Columns.Any(change.Columns.Contains))
            {
                return true;
            }
        }

        return false;
    }

    private bool Concerns(params ReadOnlySpan<ColumnDefinition> columns)
    {
        if (change is null)
        {
            return true;
        }

        foreach (var column in columns)
        {
            if (change.Columns.Contains(column))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Elements that were packages may be none any more: their kind was changed, or they have got children.</summary>
    private bool PackagesWent()
    {
        if (change is null)
        {
            return true;
        }

        foreach (var element in change.Elements.Values)
        {
            if (element.After < 0)
            {
                continue;
            }

            var isMoved =
                element.Before < 0
                || element.Columns.Contains(ElementTable.Parent)
                || element.Columns.Contains(ElementTable.Kind);
            if (
                isMoved
                && (
                    WasPackage(element.Before, element.After)
                    || project.Tree.Parent[element.After] is var parent and >= 0
                        && WasPackage(change.RowBefore(project.Tree.Elements.Ids[parent]), parent)
                )
            )
            {
                return true;
            }
        }

        return false;
    }

    private bool WasPackage(int before, int after) =>
        before >= 0 && change!.WasPackage(before) && project.Tree.PackageOfRow[after] < 0;

    private bool ConcernsNetwork() =>
        change is null
        || Concerns(NetworkTables)
        || Concerns(PackageTable.Start, PackageTable.Finish)
        || PackagesWent();

    private bool ConcernsBaseline() =>
        change is null
        || Concerns(BaselineTables)
        || Concerns(ElementTable.Quantity)
        || PackagesWent()
        || ElementsMoved();

    /// <summary>An account that a package names must stay above it.</summary>
    private bool ElementsMoved() =>
        change!.Elements.Values.Any(element =>
            element is { Before: >= 0, After: >= 0 }
            && (
                element.Columns.Contains(ElementTable.Parent)
                || element.Columns.Contains(ElementTable.Unit)
            )
        );
}
