using Plenum.Core.Accounts;
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
/// A project at one revision: an immutable value made of tables. A command makes a new value that shares every table
/// and column that it did not touch. What follows from the tables (tree, placement, measures over time) is computed
/// when first asked for and kept with the value; it may be asked for from several threads.
/// </summary>
public sealed class Project
{
    private readonly Table[] tables;
    private readonly Lazy<ProjectSettings> settings;
    private readonly Lazy<PeriodTimeline> periods;
    private readonly Lazy<WorkCalendar> calendar;
    private readonly Lazy<ElementTree> tree;
    private readonly Lazy<PackageBaseline> baseline;
    private readonly Lazy<AccountPlacement> placement;
    private readonly Lazy<ScopeCoverage> scopeCoverage;
    private readonly Lazy<PackageStatus> status;
    private readonly Lazy<PeriodSeries> planned;
    private readonly Lazy<PeriodSeries> earned;
    private readonly Lazy<ActualCost> actual;
    private readonly Lazy<TimePhased> timePhased;
    private readonly Lazy<OpenShares> openShares;
    private readonly Lazy<ElementTotals> totals;
    private readonly Lazy<ElementTotals> hourTotals;
    private readonly Lazy<ActivityMatrix> activityMatrix;
    private readonly Lazy<EstimateSums> estimate;
    private readonly Lazy<PackageLinks> links;
    private readonly Lazy<ProjectNetwork> network;

    public Project(IEnumerable<Table> tables, long revision)
        : this([.. tables], revision, null) { }

    /// <param name="before">
    /// The value that this one came from: what follows from tables that are the same is taken over from it, as far as it
    /// was computed there. The value itself is not kept.
    /// </param>
    private Project(Table[] tables, long revision, Project? before)
    {
        this.tables = tables;
        Revision = revision;
        var kept = new KeptTables(this, before);
        settings = Kept(
            before?.settings,
            kept.Settings,
            () => ProjectSettings.Read(this[ProjectTable.Definition], null, null)
        );
        periods = Kept(
            before?.periods,
            kept.Periods,
            () => new PeriodTimeline(this[PeriodTable.Definition], Settings.Start)
        );
        calendar = Kept(before?.calendar, kept.Calendars, () => CalendarOf(Settings.Calendar));
        tree = Moved(
            before?.tree,
            kept.Elements,
            kept.Shape,
            same => same.Over(this[ElementTable.Definition]),
            () => new ElementTree(this[ElementTable.Definition])
        );
        baseline = Moved(
            before?.baseline,
            kept.Baseline && kept.Elements,
            kept.Baseline,
            same => same.Over(Tree),
            () =>
                new PackageBaseline(
                    Tree,
                    Periods,
                    this[PackageTable.Definition],
                    this[BudgetTable.Definition],
                    this[BudgetPeriodTable.Definition],
                    this[MilestoneTable.Definition]
                )
        );
        placement = Kept(
            before?.placement,
            kept.Placement,
            () => new AccountPlacement(Tree, this[AccountTable.Definition], Baseline.NamedAccount)
        );
        scopeCoverage = Kept(
            before?.scopeCoverage,
            kept.Scope,
            () =>
                new ScopeCoverage(
                    Tree,
                    this[ScopeTable.Definition],
                    this[TraceTable.Definition],
                    this[ScopePhraseTable.Definition]
                )
        );
        status = Kept(
            before?.status,
            kept.Status,
            () => new PackageStatus(Baseline, Periods, this[StatusTable.Definition])
        );
        planned = Kept(
            before?.planned,
            kept.Planned,
            () => PlannedValue.Of(Baseline, Periods, Calendar)
        );
        earned = Kept(
            before?.earned,
            kept.Earned,
            () =>
                Plenum.Core.Status.EarnedValue.Of(Baseline, Status, StatusSources(), planned.Value)
        );
        actual = Kept(before?.actual, kept.Actual, MakeActual);
        timePhased = Kept(before?.timePhased, kept.TimePhased, MakeTimePhased);
        openShares = Kept(before?.openShares, kept.OpenShares, MakeOpenShares);
        totals = Kept(
            before?.totals,
            kept.Totals(ElementTable.Allotted),
            () =>
                new ElementTotals(
                    Tree,
                    Tree.Elements.Longs(ElementTable.Allotted),
                    Baseline.TotalBudget
                )
        );
        hourTotals = Kept(
            before?.hourTotals,
            kept.Totals(ElementTable.AllottedHours),
            () =>
                new ElementTotals(
                    Tree,
                    Tree.Elements.Longs(ElementTable.AllottedHours),
                    Baseline.BudgetHours
                )
        );
        activityMatrix = Moved(
            before?.activityMatrix,
            kept.ActivityMatrix && kept.Elements,
            kept.ActivityMatrix,
            same => same.Over(Tree),
            () =>
                new ActivityMatrix(
                    Tree,
                    this[WorkSetTable.Definition],
                    this[NotNeededTable.Definition],
                    HourTotals.BudgetOrAllotted()
                )
        );
        estimate = Kept(
            before?.estimate,
            kept.Estimate,
            () => new EstimateSums(Tree, this[EstimateTable.Definition], Settings.Currency)
        );
        links = Kept(
            before?.links,
            kept.Links,
            () =>
                new PackageLinks(
                    Baseline,
                    this[ActivityTable.Definition],
                    this[LinkTable.Definition]
                )
        );
        network = Moved(
            before?.network,
            false,
            kept.Network,
            same => same.Over(this),
            () => ProjectNetwork.At(this, Settings.StatusDate)
        );
    }

    /// <summary>A project without a single row.</summary>
    public static Project Empty { get; } = new(ProjectLayout.Tables.Select(Table.Empty), 0);

    /// <summary>Counts the commands that changed the project.</summary>
    public long Revision { get; }

    /// <summary>All tables, in the order of <see cref="ProjectLayout.Tables"/>.</summary>
    public IReadOnlyList<Table> Tables => tables;

    public ProjectSettings Settings => settings.Value;

    public PeriodTimeline Periods => periods.Value;

    /// <summary>The project's own calendar.</summary>
    public WorkCalendar Calendar => calendar.Value;

    public ElementTree Tree => tree.Value;

    public PackageBaseline Baseline => baseline.Value;

    public AccountPlacement Placement => placement.Value;

    /// <summary>Which scope items the breakdown answers, and what nobody asked for.</summary>
    public ScopeCoverage ScopeCoverage => scopeCoverage.Value;

    public PackageStatus Status => status.Value;

    /// <summary>Earned value by atom, over all periods.</summary>
    public PeriodSeries EarnedValue => earned.Value;

    /// <summary>Actual cost over all periods.</summary>
    public ActualCost ActualCost => actual.Value;

    /// <summary>Which packages wait for which.</summary>
    public PackageLinks Links => links.Value;

    /// <summary>Planned value, earned value, actual cost and commitments over all periods.</summary>
    public TimePhased TimePhased => timePhased.Value;

    /// <summary>What the techniques of open packages leave open.</summary>
    public OpenShares OpenShares => openShares.Value;

    /// <summary>Budgets, allotted money and gaps at every element, in minor units.</summary>
    public ElementTotals Totals => totals.Value;

    /// <summary>The same for hours, in hundredths.</summary>
    public ElementTotals HourTotals => hourTotals.Value;

    /// <summary>Parts against the activities that they need.</summary>
    public ActivityMatrix ActivityMatrix => activityMatrix.Value;

    /// <summary>The estimate at every element.</summary>
    /// <exception cref="OverflowException">A sum does not fit.</exception>
    public EstimateSums Estimate => estimate.Value;

    /// <summary>The network at the project's status date.</summary>
    /// <exception cref="Plenum.Core.Network.NetworkException">
    /// The project has no start, its links form a ring, or work leads beyond its calendar.
    /// </exception>
    public ProjectNetwork Network => network.Value;

    /// <summary>The cuts of the project, or of what lies under an element (by its position; −1 for all).</summary>
    public Cuts CutsUnder(int under) =>
        new(
            Tree,
            Placement,
            this[UnitTable.Definition],
            this[GroupTable.Definition],
            this[GroupMemberTable.Definition],
            under
        );

    public Table this[TableDefinition definition] => tables[ProjectLayout.IndexOf(definition)];

    /// <summary>The project with some tables changed, one revision later.</summary>
    public Project With(IEnumerable<Table> changed)
    {
        var next = tables.ToArray();
        foreach (var table in changed)
        {
            next[ProjectLayout.IndexOf(table.Definition)] = table;
        }

        return new Project(next, Revision + 1, this);
    }

    private static Lazy<T> Kept<T>(Lazy<T>? before, bool isSame, Func<T> make) =>
        isSame && before is { IsValueCreated: true } ? before : new(make);

    /// <summary>Kept as it is; or, where only names around it have changed, moved over to them.</summary>
    private static Lazy<T> Moved<T>(
        Lazy<T>? before,
        bool isSame,
        bool isMovable,
        Func<T, T> move,
        Func<T> make
    )
    {
        if (before is not { IsValueCreated: true } || !isMovable)
        {
            return new(make);
        }

        var value = before.Value;
        return isSame ? before : new(() => move(value));
    }

    /// <summary>
    /// Index of the period that answers are taken at when no date is asked for: the last that ended by the status
    /// date, else the last that has status or actual cost; −1 if there is none.
    /// </summary>
    public int CurrentPeriod()
    {
        if (Settings.StatusDate is { } date)
        {
            return Periods.LastEndedBy(date);
        }

        var last = -1;
        foreach (var table in tables)
        {
            if (table.Definition.ClosedWith is { } column)
            {
                foreach (var id in table.Ints(column))
                {
                    last = Math.Max(last, Periods.IndexOf(id));
                }
            }
        }

        return last;
    }

    /// <summary>The calendar of a code; Monday to Friday for none.</summary>
    public WorkCalendar CalendarOf(string? code)
    {
        var calendars = this[CalendarTable.Definition];
        var row = code is null ? -1 : calendars.RowOfCode(code);
        if (row < 0)
        {
            return WorkCalendar.MondayToFriday;
        }

        var bits = calendars.Ints(CalendarTable.Working)[row];
        var pattern = new bool[7];
        for (var day = 0; day < 7; day++)
        {
            pattern[day] = ((bits >> day) & 1) == 1;
        }

        var days = this[CalendarDayTable.Definition];
        Dictionary<DateOnly, bool> exceptions = [];
        for (var day = 0; day < days.Count; day++)
        {
            if (days.Ints(CalendarDayTable.Calendar)[day] == calendars.Ids[row])
            {
                exceptions[DateOnly.FromDayNumber(days.Ints(CalendarDayTable.Date)[day])] =
                    days.Ints(CalendarDayTable.Working)[day] == 1;
            }
        }

        return new WorkCalendar(pattern, exceptions);
    }

    private StatusSources StatusSources() =>
        new(
            Periods,
            this[StatusTable.Definition],
            this[MilestoneStatusTable.Definition],
            this[ItemTable.Definition],
            this[CreditStepTable.Definition],
            this[ItemStepTable.Definition]
        );

    private ActualCost MakeActual() =>
        Plenum.Core.Status.ActualCost.Of(
            Baseline,
            this[AccountTable.Definition],
            Periods,
            this[ActualTable.Definition],
            Settings.AccrualsReversed
        );

    private TimePhased MakeTimePhased() =>
        new(
            Baseline,
            Status,
            Placement,
            Periods,
            planned.Value,
            earned.Value,
            actual.Value,
            this[CommitmentTable.Definition],
            BudgetLedger.Undistributed(this[PostingTable.Definition])
        );

    private OpenShares MakeOpenShares() =>
        new(
            Baseline,
            Status,
            StatusSources(),
            planned.Value,
            earned.Value,
            CurrentPeriod(),
            Settings.Audit.AssessorError
        );
}
