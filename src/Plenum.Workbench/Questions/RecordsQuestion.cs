using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Status;

namespace Plenum.Workbench.Questions;

/// <summary>Which records make the figures of a package, or the cost that is charged to an account as such?</summary>
/// <param name="Code">Code of a package or of a control account.</param>
/// <param name="At">At the last period end on or before it; null for the status date.</param>
public sealed record RecordsQuestion(string Code, DateOnly? At)
{
    /// <exception cref="QuestionException">It is neither a package nor a control account.</exception>
    public RecordsAnswer Ask(Project project)
    {
        var period = At is { } date ? project.Periods.LastEndedBy(date) : project.CurrentPeriod();
        var element = project.Tree.Elements.RowOfCode(Code);
        var package = element >= 0 ? project.Tree.PackageOfRow[element] : -1;
        var account = package >= 0 ? -1 : project.Placement.Accounts.RowOfCode(Code);
        if (package < 0 && account < 0)
        {
            throw new QuestionException(
                $"\"{Code}\" is neither a package nor a control account; only these have records of their own."
            );
        }

        return new RecordsAnswer(
            Code,
            period < 0 ? null : project.Periods.End(period),
            package,
            package < 0 ? [] : Budget(project, package, period),
            package < 0 ? [] : Milestones(project, package, period),
            package < 0 ? [] : Status(project, package, period),
            Ledger(project, package, account, period),
            package < 0 ? [] : Orders(project, package, period)
        );
    }

    private static List<BudgetRecord> Budget(Project project, int package, int period)
    {
        List<BudgetRecord> records = [];
        var phased = project.TimePhased;
        for (var costElement = 0; costElement < CostElements.Count; costElement++)
        {
            var atom = (package * CostElements.Count) + costElement;
            if (project.Baseline.Budget[atom] != 0)
            {
                records.Add(
                    new BudgetRecord(
                        CostElements.Words.Words[costElement],
                        Major(project, project.Baseline.Budget[atom]),
                        Major(project, phased.Planned.At(atom, period)),
                        Major(project, phased.Earned.At(atom, period))
                    )
                );
            }
        }

        return records;
    }

    private static List<MilestoneRecord> Milestones(Project project, int package, int period)
    {
        var milestones = project.Baseline.Milestones;
        var rows = project.Baseline.MilestonesOf[package].ToArray();
        if (rows.Length == 0)
        {
            return [];
        }

        var reports = project[MilestoneStatusTable.Definition];
        var periods = PackageStatus.PeriodsOf(
            reports,
            MilestoneStatusTable.Period,
            project.Periods
        );
        var id = project.Tree.Elements.Ids[project.Tree.PackageRows[package]];
        Dictionary<string, (int Period, DateOnly? Done)> done = new(StringComparer.Ordinal);
        for (var row = 0; row < reports.Count; row++)
        {
            var name = reports.Texts(MilestoneStatusTable.Milestone)[row]!;
            var day = reports.Ints(MilestoneStatusTable.Done)[row];
            if (
                reports.Ints(MilestoneStatusTable.Package)[row] == id
                && periods[row] <= period
                && day != Cell.NoInt
                && (!done.TryGetValue(name, out var known) || known.Period <= periods[row])
            )
            {
                done[name] = (periods[row], DayOf(day));
            }
        }

        return
        [
            .. rows.Select(row => new MilestoneRecord(
                milestones.Texts(MilestoneTable.Milestone)[row]!,
                milestones.Decimals(MilestoneTable.Weight)[row],
                DayOf(milestones.Ints(MilestoneTable.Planned)[row]),
                done.GetValueOrDefault(milestones.Texts(MilestoneTable.Milestone)[row]!).Done
            )),
        ];
    }

    private static List<StatusRecord> Status(Project project, int package, int period)
    {
        var status = project[StatusTable.Definition];
        List<StatusRecord> records = [];
        foreach (var row in project.Status.RowsOf(package))
        {
            var at = project.Status.PeriodOf(row);
            if (at <= period)
            {
                records.Add(
                    new StatusRecord(
                        project.Periods.Codes[at],
                        project.Periods.End(at),
                        Text(project, status, row, StatusTable.Started),
                        Text(project, status, row, StatusTable.Finished),
                        Text(project, status, row, StatusTable.Percent),
                        Text(project, status, row, StatusTable.UnitsDone),
                        Text(project, status, row, StatusTable.CostToCome),
                        Text(project, status, row, StatusTable.Assumed) == "1",
                        status.Texts(StatusTable.Remark)[row],
                        status.Texts(StatusTable.By)[row]
                    )
                );
            }
        }

        return records;
    }

    private static List<LedgerRecord> Ledger(Project project, int package, int account, int period)
    {
        var ledger = project[ActualTable.Definition];
        var wanted =
            package >= 0
                ? project.Tree.Elements.Ids[project.Tree.PackageRows[package]]
                : project.Placement.Accounts.Ids[account];
        var periods = PackageStatus.PeriodsOf(ledger, ActualTable.Period, project.Periods);
        var charges = ledger.Ints(ActualTable.Charge);
        List<LedgerRecord> records = [];
        for (var row = 0; row < charges.Length; row++)
        {
            var (target, id) = ActualTable.Charge.DecodeReference(charges[row]);
            if (
                id != wanted
                || target == ActualTable.ChargedPackage != package >= 0
                || periods[row] > period
            )
            {
                continue;
            }

            var amount = Major(project, ledger.Longs(ActualTable.Converted)[row]);
            var isAccrual = ledger.Ints(ActualTable.Kind)[row] == ActualTable.Accrual;
            records.Add(
                Record(
                    project,
                    ledger,
                    row,
                    periods[row],
                    amount,
                    isAccrual ? "accrual" : "invoiced"
                )
            );
            if (isAccrual && project.Settings.AccrualsReversed && periods[row] < period)
            {
                records.Add(
                    Record(project, ledger, row, periods[row] + 1, -amount, "accrual reversed")
                );
            }
        }

        records.Sort((a, b) => a.End.CompareTo(b.End));
        return records;
    }

    private static LedgerRecord Record(
        Project project,
        Table ledger,
        int row,
        int period,
        decimal amount,
        string kind
    ) =>
        new(
            ledger.Texts(ActualTable.Document)[row]!,
            ledger.Texts(ActualTable.Line)[row]!,
            project.Periods.Codes[period],
            project.Periods.End(period),
            CostElements.Words.Words[ledger.Ints(ActualTable.CostElement)[row]],
            amount,
            Text(project, ledger, row, ActualTable.Hours),
            kind
        );

    private static List<OrderRecord> Orders(Project project, int package, int period)
    {
        var orders = project[CommitmentTable.Definition];
        var id = project.Tree.Elements.Ids[project.Tree.PackageRows[package]];
        var end = period < 0 ? int.MinValue : project.Periods.End(period).DayNumber;
        List<OrderRecord> records = [];
        for (var row = 0; row < orders.Count; row++)
        {
            if (
                orders.Ints(CommitmentTable.Package)[row] == id
                && period >= 0
                && orders.Ints(CommitmentTable.Date)[row] <= end
            )
            {
                records.Add(
                    new OrderRecord(
                        orders.Texts(CommitmentTable.Order)[row]!,
                        orders.Texts(CommitmentTable.Line)[row]!,
                        CostElements.Words.Words[orders.Ints(CommitmentTable.CostElement)[row]],
                        Major(project, orders.Longs(CommitmentTable.Amount)[row]),
                        orders.Texts(CommitmentTable.Supplier)[row],
                        DayOf(orders.Ints(CommitmentTable.Date)[row])
                    )
                );
            }
        }

        return records;
    }

    private static string Text(Project project, Table table, int row, ColumnDefinition column) =>
        new ProjectText(project).Of(table, row, column) ?? "";

    private static decimal Major(Project project, long minorUnits) =>
        project.Settings.Currency.ToMajorUnits(minorUnits);

    private static DateOnly? DayOf(int day) =>
        Cell.IsGiven(day) ? DateOnly.FromDayNumber(day) : null;
}

/// <summary>The records behind the figures of one package or account, all up to <see cref="At"/>.</summary>
/// <param name="Code">Code of the package or account.</param>
/// <param name="At">The period end up to which records count; null before the first.</param>
/// <param name="Package">Number of the package; −1 for an account.</param>
/// <param name="Budget">By cost element: adds up to BAC, PV and EV.</param>
/// <param name="Milestones">Weighted milestones.</param>
/// <param name="Status">What was reported, period by period.</param>
/// <param name="Ledger">Adds up to AC.</param>
/// <param name="Orders">Adds up to what is committed.</param>
public sealed record RecordsAnswer(
    string Code,
    DateOnly? At,
    int Package,
    IReadOnlyList<BudgetRecord> Budget,
    IReadOnlyList<MilestoneRecord> Milestones,
    IReadOnlyList<StatusRecord> Status,
    IReadOnlyList<LedgerRecord> Ledger,
    IReadOnlyList<OrderRecord> Orders
);

/// <summary>Money in major units of the project's currency.</summary>
public sealed record BudgetRecord(
    string CostElement,
    decimal Budget,
    decimal Planned,
    decimal Earned
);

public sealed record MilestoneRecord(
    string Milestone,
    decimal Weight,
    DateOnly? Planned,
    DateOnly? Done
);

/// <summary>One status row as it was given: empty where a field was not given, a hyphen where it was taken back.</summary>
public sealed record StatusRecord(
    string Period,
    DateOnly End,
    string Started,
    string Finished,
    string Percent,
    string UnitsDone,
    string CostToCome,
    bool Assumed,
    string? Remark,
    string? By
);

/// <summary>A ledger row in the project's currency; an accrual that was reversed stands twice.</summary>
public sealed record LedgerRecord(
    string Document,
    string Line,
    string Period,
    DateOnly End,
    string CostElement,
    decimal Amount,
    string Hours,
    string Kind
);

public sealed record OrderRecord(
    string Order,
    string Line,
    string CostElement,
    decimal Amount,
    string? Supplier,
    DateOnly? Date
);
