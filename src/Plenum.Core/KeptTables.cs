using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Estimate;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;
using Plenum.Core.Network;
using Plenum.Core.People;
using Plenum.Core.Scope;
using Plenum.Core.Status;

namespace Plenum.Core;

/// <summary>
/// What of a value of a project need not be computed anew, because all that it follows from is the same in the value
/// before. Tables are the same if they are one object; of the elements it also counts which columns have changed.
/// </summary>
internal readonly struct KeptTables
{
    private readonly Project? now;
    private readonly Project? before;

    public KeptTables(Project now, Project? before)
    {
        this.now = before is null ? null : now;
        this.before = before;
        if (before is null)
        {
            return;
        }

        Elements = Same(ElementTable.Definition);
        Shape =
            Elements
            || ElementTree.HaveOneShape(
                now[ElementTable.Definition],
                before[ElementTable.Definition]
            );
        Settings = Same(ProjectTable.Definition);
        Periods = Settings && Same(PeriodTable.Definition);
        Calendars = Settings && Same(CalendarTable.Definition) && Same(CalendarDayTable.Definition);
        Baseline =
            Shape
            && Periods
            && Same(PackageTable.Definition)
            && Same(BudgetTable.Definition)
            && Same(BudgetPeriodTable.Definition)
            && Same(MilestoneTable.Definition);
        Placement =
            Shape
            && Same(PackageTable.Definition)
            && Same(AccountTable.Definition)
            && SameInts(ElementTable.Unit);
        Scope =
            Shape
            && Same(ScopeTable.Definition)
            && Same(ScopePhraseTable.Definition)
            && Same(TraceTable.Definition);
        Status = Shape && Periods && Same(StatusTable.Definition);
        Planned = Baseline && Calendars;
        Earned =
            Planned
            && Status
            && Same(MilestoneStatusTable.Definition)
            && Same(ItemTable.Definition)
            && Same(CreditStepTable.Definition)
            && Same(ItemStepTable.Definition)
            && (
                Elements
                || now[ElementTable.Definition]
                    .Decimals(ElementTable.Quantity)
                    .SequenceEqual(before[ElementTable.Definition].Decimals(ElementTable.Quantity))
            );
        Actual = Shape && Periods && Same(AccountTable.Definition) && Same(ActualTable.Definition);
        TimePhased =
            Elements
            && Placement
            && Earned
            && Actual
            && Same(CommitmentTable.Definition)
            && Same(PostingTable.Definition);
        OpenShares = Earned && SamePresent();
        ActivityMatrix =
            Totals(ElementTable.AllottedHours)
            && Same(WorkSetTable.Definition)
            && Same(NotNeededTable.Definition)
            && SameInts(ElementTable.PartType)
            && (
                Elements
                || ReferenceEquals(
                    now[ElementTable.Definition][ElementTable.Activity],
                    before[ElementTable.Definition][ElementTable.Activity]
                )
            );
        Estimate = Shape && Settings && Same(EstimateTable.Definition);
        Links = Shape && Same(ActivityTable.Definition) && Same(LinkTable.Definition);
        Network =
            Baseline
            && Calendars
            && Status
            && Same(ActivityTable.Definition)
            && Same(LinkTable.Definition)
            && Same(ActivityStatusTable.Definition)
            && (
                Elements
                || now[ElementTable.Definition]
                    .Codes.SequenceEqual(before[ElementTable.Definition].Codes)
            );
    }

    public bool Elements { get; }

    /// <summary>Which elements there are, in what order, under what parents and of what kinds.</summary>
    public bool Shape { get; }

    public bool Settings { get; }

    public bool Periods { get; }

    public bool Calendars { get; }

    public bool Baseline { get; }

    public bool Placement { get; }

    /// <summary>Which scope items the elements answer.</summary>
    public bool Scope { get; }

    public bool Status { get; }

    public bool Planned { get; }

    public bool Earned { get; }

    public bool Actual { get; }

    public bool TimePhased { get; }

    public bool OpenShares { get; }

    public bool ActivityMatrix { get; }

    public bool Estimate { get; }

    public bool Links { get; }

    public bool Network { get; }

    /// <summary>Totals of what a column allots.</summary>
    public bool Totals(ColumnDefinition allotted) =>
        before is not null
        && Baseline
        && (
            Elements
            || now!
                [ElementTable.Definition]
                .Longs(allotted)
                .SequenceEqual(before[ElementTable.Definition].Longs(allotted))
        );

    private bool Same(TableDefinition table) => ReferenceEquals(now![table], before![table]);

    private bool SameInts(ColumnDefinition column) =>
        Elements
        || now![column.Table].Ints(column).SequenceEqual(before![column.Table].Ints(column));

    /// <summary>The present period is named by a status date, or follows from the same tables.</summary>
    private bool SamePresent()
    {
        if (before!.Settings.StatusDate is not null)
        {
            return true;
        }

        foreach (var table in ProjectLayout.Tables)
        {
            if (table.ClosedWith is not null && !Same(table))
            {
                return false;
            }
        }

        return true;
    }
}
