using System.Collections.Frozen;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Breakdown.Splits;
using Plenum.Core.Changes;
using Plenum.Core.Estimate;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;
using Plenum.Core.Network;
using Plenum.Core.People;
using Plenum.Core.Scope;
using Plenum.Core.Status;

namespace Plenum.Core;

/// <summary>
/// All tables of a project, in an order in which every table comes after those that it refers to. Files, workbook
/// sheets and tables of the store have these names.
/// </summary>
public static class ProjectLayout
{
    public static readonly IReadOnlyList<TableDefinition> Tables =
    [
        ProjectTable.Definition,
        CalendarTable.Definition,
        CalendarDayTable.Definition,
        PeriodTable.Definition,
        ScopeRevisionTable.Definition,
        ScopeTable.Definition,
        ScopeWordingTable.Definition,
        ScopePhraseTable.Definition,
        QueryTable.Definition,
        UnitTable.Definition,
        PersonTable.Definition,
        PartTypeTable.Definition,
        WorkSetTable.Definition,
        ElementTable.Definition,
        SplitWordTable.Definition,
        TraceTable.Definition,
        NotNeededTable.Definition,
        LeftOutTable.Definition,
        RegisterTable.Definition,
        AccountTable.Definition,
        DelegationTable.Definition,
        GroupTable.Definition,
        GroupMemberTable.Definition,
        PackageTable.Definition,
        BudgetTable.Definition,
        BudgetPeriodTable.Definition,
        MilestoneTable.Definition,
        CreditStepTable.Definition,
        ItemTable.Definition,
        EstimateTable.Definition,
        ActivityTable.Definition,
        LinkTable.Definition,
        StatusTable.Definition,
        ActivityStatusTable.Definition,
        MilestoneStatusTable.Definition,
        ItemStepTable.Definition,
        ActualTable.Definition,
        CommitmentTable.Definition,
        ChangeTable.Definition,
        PostingTable.Definition,
        AcceptedFindingTable.Definition,
    ];

    private static readonly FrozenDictionary<string, TableDefinition> ByName =
        Tables.ToFrozenDictionary(table => table.Name, StringComparer.OrdinalIgnoreCase);

    private static readonly Dictionary<TableDefinition, int> Index = Tables
        .Select((table, index) => (table, index))
        .ToDictionary(pair => pair.table, pair => pair.index);

    /// <summary>The table's place in <see cref="Tables"/>.</summary>
    public static int IndexOf(TableDefinition table) => Index[table];

    /// <summary>The table of a name, whatever its case; null if there is none.</summary>
    public static TableDefinition? Find(string name) => ByName.GetValueOrDefault(name);

    /// <summary>The table that a reference points into, by its place among the column's targets.</summary>
    public static TableDefinition Target(ColumnDefinition column, int target) =>
        ByName[column.Targets[target]];
}
