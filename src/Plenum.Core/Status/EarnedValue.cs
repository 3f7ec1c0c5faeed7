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
    private readonly Table status;
    private readonly PeriodSeries planned;
    private readonly MilestoneProgress milestones;
    private readonly ItemProgress items;

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
        status = sources.Status;
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
        var series = new PeriodSeries.Builder(baseline.Budget.Length);
        foreach (var package in ApportionedEffort.BasesFirst(baseline))
        {
            work.Add(package, series);
        }

        return series.Build();
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
        var changing = ReportedPeriods(package, technique);
        if (changing.Length == 0)
        {
            return;
        }

        var shares = new Share[changing.Length];
        var state = new State(status, reports.RowsOf(package), reports);
        for (var i = 0; i < changing.Length; i++)
        {
            state.GoTo(changing[i]);
            shares[i] = ShareOf(package, technique, ref state, changing[i]);
        }

        for (var costElement = 0; costElement < CostElements.Count; costElement++)
        {
            var atom = (package * CostElements.Count) + costElement;
            var before = 0L;
            for (var i = 0; i < changing.Length; i++)
            {
                var total = shares[i].Of(baseline.Budget[atom]);
                series.Add(atom, changing[i], total - before);
                before = total;
            }
        }
    }

    private int[] ReportedPeriods(int package, int technique)
    {
        var own = reports.RowsOf(package);
        var extra =
            technique == TechniqueCodec.Milestones ? milestones.PeriodsOf(package)
            : technique == TechniqueCodec.Items ? items.PeriodsOf(package)
            : [];
        var changing = new int[own.Length + extra.Length];
        for (var i = 0; i < own.Length; i++)
        {
            changing[i] = reports.PeriodOf(own[i]);
        }

        if (extra.Length > 0)
        {
            extra.CopyTo(changing.AsSpan(own.Length));
            changing = [.. changing.Distinct().Order()];
        }

        return changing;
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
    private ref struct State(Table status, ReadOnlySpan<int> rows, PackageStatus reports)
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
                Started = Later(status.Ints(StatusTable.Started)[row], Started);
                Finished = Later(status.Ints(StatusTable.Finished)[row], Finished);
                Percent = Later(status.Ints(StatusTable.Percent)[row], Percent);
                UnitsDone = Later(status.Decimals(StatusTable.UnitsDone)[row], UnitsDone);
                Quantity = Later(status.Decimals(StatusTable.Quantity)[row], Quantity);
            }
        }

        private static int Later(int given, int held) => given == Cell.NoInt ? held : given;

        private static decimal Later(decimal given, decimal held) =>
            given == Cell.NoDecimal ? held : given;
    }
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
