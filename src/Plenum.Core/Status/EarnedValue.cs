using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Status;

/// <summary>
/// Earned value of every package and cost element over the periods: each cost element's budget times the exact earned
/// share that the reports of the periods so far give, rounded once, half away from zero, on the running total.
/// Source of the techniques: GAO-20-195G, SAE EIA-748 guideline 10; their exact definition is in docs/formulas.md.
/// </summary>
public sealed class EarnedValue
{
    private readonly PackageBaseline baseline;
    private readonly PackageStatus reports;
    private readonly ReportColumns columns;
    private readonly PeriodSeries planned;
    private readonly MilestoneProgress milestones;
    private readonly ItemProgress items;
    private readonly List<int> changing = [];
    private readonly List<Share> shares = [];

    private EarnedValue(
        PackageBaseline baseline,
        PackageStatus reports,
        StatusSources sources,
        PeriodSeries planned
    )
    {
        this.baseline = baseline;
        this.reports = reports;
        this.planned = planned;
        columns = new ReportColumns(sources.Status);
        milestones = new MilestoneProgress(baseline, sources.Periods, sources.MilestoneStatus);
        items = new ItemProgress(baseline, sources);
    }

    /// <summary>Changes of earned value by atom (package × 5 + cost element) and period.</summary>
    public static PeriodSeries Of(
        PackageBaseline baseline,
        PackageStatus reports,
        StatusSources sources,
        PeriodSeries planned
    )
    {
        var work = new EarnedValue(baseline, reports, sources, planned);
        var series = new PeriodSeries.Builder(baseline.Budget.Length, work.ReportedChanges());
        foreach (var package in ApportionedEffort.BasesFirst(baseline))
        {
            work.Add(package, series);
        }

        return series.Build();
    }

    /// <summary>Reports of every package, for each cost element with a budget, and plans that are copied.</summary>
    private int ReportedChanges()
    {
        var changes = 0L;
        for (var atom = 0; atom < baseline.Budget.Length; atom++)
        {
            var package = atom / CostElements.Count;
            if (baseline.Budget[atom] != 0)
            {
                changes +=
                    baseline.Technique[package] == TechniqueCodec.LevelOfEffort
                        ? planned.PeriodsOf(atom).Length
                        : reports.RowsOf(package).Length;
            }
        }

        return (int)Math.Min(changes, Array.MaxLength / 2);
    }

    private void Add(int package, PeriodSeries.Builder series)
    {
        var technique = baseline.Technique[package];
        if (baseline.TotalBudget[package] == 0 || technique == Cell.NoInt)
        {
            return;
        }

        if (technique == TechniqueCodec.Apportioned)
        {
            if (baseline.Base[package] >= 0)
            {
                ApportionedEffort.Follow(baseline, package, series);
            }
        }
        else if (technique == TechniqueCodec.LevelOfEffort)
        {
            CopyPlan(package, series);
        }
        else
        {
            AddReports(package, technique, series);
        }
    }

    private void CopyPlan(int package, PeriodSeries.Builder series)
    {
        for (var costElement = 0; costElement < CostElements.Count; costElement++)
        {
            var atom = (package * CostElements.Count) + costElement;
            var periods = planned.PeriodsOf(atom);
            for (var i = 0; i < periods.Length; i++)
            {
                series.Add(atom, periods[i], planned.ChangesOf(atom)[i]);
            }
        }
    }

    private void AddReports(int package, int technique, PeriodSeries.Builder series)
    {
        FindReportedPeriods(package, technique);
        shares.Clear();
        var state = new State(columns, reports.RowsOf(package), reports);
        foreach (var period in changing)
        {
            state.GoTo(period);
            shares.Add(ShareOf(package, technique, ref state, period));
        }

        for (var costElement = 0; costElement < CostElements.Count; costElement++)
        {
            var atom = (package * CostElements.Count) + costElement;
            var amount = baseline.Budget[atom];
            var before = 0L;
            for (var i = 0; amount != 0 && i < changing.Count; i++)
            {
                var total = shares[i].Of(amount);
                series.Add(atom, changing[i], total - before);
                before = total;
            }
        }
    }

    /// <summary>The periods in which the earned share may change, each once, in order.</summary>
    private void FindReportedPeriods(int package, int technique)
    {
        var extra =
            technique == TechniqueCodec.Milestones ? milestones.PeriodsOf(package)
            : technique == TechniqueCodec.Items ? items.PeriodsOf(package)
            : [];
        changing.Clear();
        foreach (var row in reports.RowsOf(package))
        {
            changing.Add(reports.PeriodOf(row));
        }

        if (extra.Length > 0)
        {
            changing.AddRange(extra);
            int[] inOrder = [.. changing.Distinct().Order()];
            changing.Clear();
            changing.AddRange(inOrder);
        }
    }

    private Share ShareOf(int package, int technique, scoped ref State state, int period)
    {
        if (Cell.IsGiven(state.Finished))
        {
            return Share.Whole;
        }

        if (TechniqueCodec.IsStartFinish(technique))
        {
            return Cell.IsGiven(state.Started) ? new Share(technique, 100) : Share.None;
        }

        return technique switch
        {
            TechniqueCodec.Milestones => milestones.ShareAt(package, period),
            TechniqueCodec.Items => items.ShareAt(package, period),
            TechniqueCodec.Units => UnitsShare(package, ref state),
            _ => Cell.IsGiven(state.Percent) ? new Fraction(state.Percent).AsShare() : Share.None,
        };
    }

    private Share UnitsShare(int package, scoped ref State state)
    {
        var row = baseline.Tree.PackageRows[package];
        var quantity = Cell.IsGiven(state.Quantity)
            ? state.Quantity
            : baseline.Tree.Elements.Decimals(ElementTable.Quantity)[row];
        return Cell.IsGiven(state.UnitsDone) && Cell.IsGiven(quantity) && quantity > 0
            ? Share.From(ExactFraction.Of(state.UnitsDone) / ExactFraction.Of(quantity))
            : Share.None;
    }

    /// <summary>The fields that hold at a period, moved forward row by row.</summary>
    private ref struct State(ReportColumns columns, ReadOnlySpan<int> rows, PackageStatus reports)
    {
        private readonly ReadOnlySpan<int> rows = rows;
        private int next = 0;

        public int Started { get; private set; } = Cell.NoInt;

        public int Finished { get; private set; } = Cell.NoInt;

        public int Percent { get; private set; } = Cell.NoInt;

        public decimal UnitsDone { get; private set; } = Cell.NoDecimal;

        public decimal Quantity { get; private set; } = Cell.NoDecimal;

        public void GoTo(int period)
        {
            for (; next < rows.Length && reports.PeriodOf(rows[next]) <= period; next++)
            {
                var row = rows[next];
                Started = Later(columns.Started.Values[row], Started);
                Finished = Later(columns.Finished.Values[row], Finished);
                Percent = Later(columns.Percent.Values[row], Percent);
                UnitsDone = Later(columns.UnitsDone.Values[row], UnitsDone);
                Quantity = Later(columns.Quantity.Values[row], Quantity);
            }
        }

        private static int Later(int given, int held) => given == Cell.NoInt ? held : given;

        private static decimal Later(decimal given, decimal held) =>
            given == Cell.NoDecimal ? held : given;
    }
}

/// <summary>The columns of the status table from which value is earned.</summary>
internal sealed class ReportColumns(Table status)
{
    public NumberColumn<int> Started { get; } = (NumberColumn<int>)status[StatusTable.Started];

    public NumberColumn<int> Finished { get; } = (NumberColumn<int>)status[StatusTable.Finished];

    public NumberColumn<int> Percent { get; } = (NumberColumn<int>)status[StatusTable.Percent];

    public NumberColumn<decimal> UnitsDone { get; } =
        (NumberColumn<decimal>)status[StatusTable.UnitsDone];

    public NumberColumn<decimal> Quantity { get; } =
        (NumberColumn<decimal>)status[StatusTable.Quantity];
}

/// <summary>The tables that tell what was reported.</summary>
public sealed record StatusSources(
    PeriodTimeline Periods,
    Table Status,
    Table MilestoneStatus,
    Table Items,
    Table CreditSteps,
    Table ItemSteps
);
