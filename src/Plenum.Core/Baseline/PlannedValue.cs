using System.Numerics;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Baseline;

/// <summary>
/// Planned value of every package and cost element over the periods. The planned share of a package at a period's end
/// is an exact ratio; each cost element's budget is multiplied by it and rounded once, half away from zero, on the
/// running total. Source of the measure: SAE EIA-748 guideline 8 (time-phased budget); the shares of the techniques
/// and spreads are defined in docs/formulas.md. Time: packages × periods that they touch.
/// </summary>
public sealed class PlannedValue
{
    private readonly PackageBaseline baseline;
    private readonly PeriodTimeline periods;
    private readonly int[] workNumberAtEnd;
    private readonly WorkCalendar calendar;

    private PlannedValue(PackageBaseline baseline, PeriodTimeline periods, WorkCalendar calendar)
    {
        this.baseline = baseline;
        this.periods = periods;
        this.calendar = calendar;
        workNumberAtEnd = new int[periods.Count];
        for (var period = 0; period < workNumberAtEnd.Length; period++)
        {
            workNumberAtEnd[period] = calendar.NumberOf(periods.End(period));
        }
    }

    /// <summary>Changes of planned value by atom (package × 5 + cost element) and period.</summary>
    public static PeriodSeries Of(
        PackageBaseline baseline,
        PeriodTimeline periods,
        WorkCalendar calendar
    )
    {
        var work = new PlannedValue(baseline, periods, calendar);
        var series = new PeriodSeries.Builder(baseline.Budget.Length);
        foreach (var package in ApportionedEffort.BasesFirst(baseline))
        {
            work.Add(package, series);
        }

        return series.Build();
    }

    /// <summary>
    /// The planned share of a package at a period's end. Not for apportioned effort, nor for amounts given by period
    /// and cost element.
    /// </summary>
    public static Share ShareAt(
        PackageBaseline baseline,
        PeriodTimeline periods,
        WorkCalendar calendar,
        int package,
        int period
    ) => new PlannedValue(baseline, periods, calendar).ShareAt(package, period);

    private void Add(int package, PeriodSeries.Builder series)
    {
        if (baseline.TotalBudget[package] == 0 || periods.Count == 0)
        {
            return;
        }

        if (baseline.Technique[package] == TechniqueCodec.Apportioned)
        {
            if (baseline.Base[package] >= 0)
            {
                ApportionedEffort.Follow(baseline, package, series);
            }
        }
        else if (baseline.IsScheduled(package))
        {
            var first = periods.FirstEndingFrom(DateOnly.FromDayNumber(baseline.Start[package]));
            var last = Math.Min(
                periods.FirstEndingFrom(DateOnly.FromDayNumber(baseline.Finish[package])),
                periods.Count - 1
            );
            if (IsGivenByCostElement(package))
            {
                AddGivenAmounts(package, series);
            }
            else
            {
                AddShares(package, first, last, series);
            }
        }
    }

    private void AddShares(int package, int first, int last, PeriodSeries.Builder series)
    {
        Span<long> before = stackalloc long[CostElements.Count];
        before.Clear();
        var shares = last - first + 1 <= 0 ? [] : new Share[last - first + 1];
        for (var period = first; period <= last; period++)
        {
            shares[period - first] = ShareAt(package, period);
        }

        for (var costElement = 0; costElement < CostElements.Count; costElement++)
        {
            var atom = (package * CostElements.Count) + costElement;
            var amount = baseline.Budget[atom];
            if (amount == 0)
            {
                continue;
            }

            for (var period = first; period <= last; period++)
            {
                var total = shares[period - first].Of(amount);
                series.Add(atom, period, total - before[costElement]);
                before[costElement] = total;
            }
        }
    }

    private Share ShareAt(int package, int period)
    {
        var end = periods.End(period).DayNumber;
        if (end < baseline.Start[package])
        {
            return Share.None;
        }

        if (end >= baseline.Finish[package])
        {
            return Share.Whole;
        }

        var technique = baseline.Technique[package];
        if (TechniqueCodec.IsStartFinish(technique))
        {
            return new Share(technique, 100);
        }

        return technique == TechniqueCodec.Milestones
            ? MilestoneShare(package, end)
            : SpreadShare(package, period);
    }

    private Share MilestoneShare(int package, int day)
    {
        var weights = baseline.Milestones.Decimals(MilestoneTable.Weight);
        var planned = baseline.Milestones.Ints(MilestoneTable.Planned);
        decimal due = 0;
        decimal all = 0;
        foreach (var row in baseline.MilestonesOf[package])
        {
            all += weights[row];
            if (planned[row] != Cell.NoInt && planned[row] <= day)
            {
                due += weights[row];
            }
        }

        return all == 0 ? Share.None : Share.From(ExactFraction.Of(due) / ExactFraction.Of(all));
    }

    private Share SpreadShare(int package, int period)
    {
        var spread = FollowsSpread(baseline.Technique[package])
            ? baseline.Spread[package]
            : PackageTable.Even;
        if (spread == PackageTable.Periods)
        {
            return GivenShare(package, period);
        }

        var beforeStart = calendar.NumberOf(DateOnly.FromDayNumber(baseline.Start[package] - 1));
        long whole =
            calendar.NumberOf(DateOnly.FromDayNumber(baseline.Finish[package])) - beforeStart;
        long done = workNumberAtEnd[period] - beforeStart;
        return whole == 0 ? Share.None : Spread(spread, done, whole);
    }

    /// <summary>
    /// With x = done / whole: even x, falling 1 − (1 − x)², rising x², s-shaped x²(3 − 2x). Definitions of our own.
    /// </summary>
    private static Share Spread(int spread, long done, long whole)
    {
        // spans of up to 2 million working days keep whole³ within 64 bits
        switch (spread)
        {
            case PackageTable.Even:
                return new Share(done, whole);
            case PackageTable.Falling:
                var left = whole - done;
                return new Share((whole * whole) - (left * left), whole * whole);
            case PackageTable.Rising:
                return new Share(done * done, whole * whole);
            default:
                return new Share(done * done * ((3 * whole) - (2 * done)), whole * whole * whole);
        }
    }

    private bool IsGivenByCostElement(int package)
    {
        if (
            baseline.Spread[package] != PackageTable.Periods
            || !FollowsSpread(baseline.Technique[package])
        )
        {
            return false;
        }

        var rows = baseline.PeriodAmountsOf[package];
        return rows.Length > 0
            && baseline.BudgetPeriods.Ints(BudgetPeriodTable.CostElement)[rows[0]] != Cell.NoInt;
    }

    /// <summary>True for techniques whose plan follows the package's spread; without a technique it is even.</summary>
    public static bool FollowsSpread(int technique) =>
        technique
            is TechniqueCodec.Percent
                or TechniqueCodec.Units
                or TechniqueCodec.Items
                or TechniqueCodec.LevelOfEffort;

    private Share GivenShare(int package, int period)
    {
        var amounts = baseline.BudgetPeriods.Longs(BudgetPeriodTable.Amount);
        var periodIds = baseline.BudgetPeriods.Ints(BudgetPeriodTable.Period);
        BigInteger due = 0;
        foreach (var row in baseline.PeriodAmountsOf[package])
        {
            if (periods.IndexOf(periodIds[row]) <= period)
            {
                due += amounts[row];
            }
        }

        return Share.Ratio(due, baseline.TotalBudget[package]);
    }

    private void AddGivenAmounts(int package, PeriodSeries.Builder series)
    {
        var amounts = baseline.BudgetPeriods.Longs(BudgetPeriodTable.Amount);
        var periodIds = baseline.BudgetPeriods.Ints(BudgetPeriodTable.Period);
        var costElements = baseline.BudgetPeriods.Ints(BudgetPeriodTable.CostElement);
        for (var costElement = 0; costElement < CostElements.Count; costElement++)
        {
            foreach (var row in baseline.PeriodAmountsOf[package])
            {
                if (costElements[row] == costElement)
                {
                    series.Add(
                        (package * CostElements.Count) + costElement,
                        periods.IndexOf(periodIds[row]),
                        amounts[row]
                    );
                }
            }
        }
    }
}
