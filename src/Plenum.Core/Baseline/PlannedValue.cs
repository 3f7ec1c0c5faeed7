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
    private readonly int[] periodOfDay;
    private readonly WorkCalendar calendar;
    private readonly Share[] shares;
    private readonly long[] parts;
    private readonly long[] totals;

    private PlannedValue(PackageBaseline baseline, PeriodTimeline periods, WorkCalendar calendar)
    {
        this.baseline = baseline;
        this.periods = periods;
        this.calendar = calendar;
        shares = new Share[periods.Count];
        parts = new long[periods.Count];
        totals = new long[periods.Count];
        periodOfDay = periods.FirstEndingFromEach();
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
        var series = new PeriodSeries.Builder(baseline.Budget.Length, work.MostChanges());
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
    )
    {
        var work = new PlannedValue(baseline, periods, calendar);
        return work.ShareAt(package, work.WorkOf(package), period);
    }

    /// <summary>How often plans change at most: in every period that a package touches, or at its start and finish.</summary>
    private int MostChanges()
    {
        var changes = 0L;
        for (var package = 0; package < baseline.Count; package++)
        {
            if (baseline.TotalBudget[package] != 0 && baseline.IsScheduled(package))
            {
                var (first, last) = PeriodsOf(package);
                var touched = Math.Max(0, last - first + 1);
                var budgets = baseline.Budget.AsSpan(
                    package * CostElements.Count,
                    CostElements.Count
                );
                changes +=
                    (long)(CostElements.Count - budgets.Count(0))
                    * (
                        TechniqueCodec.IsStartFinish(baseline.Technique[package])
                            ? Math.Min(2, touched)
                            : touched
                    );
            }
        }

        return (int)Math.Min(changes, Array.MaxLength / 2);
    }

    /// <summary>The first and the last period that a scheduled package touches.</summary>
    private (int First, int Last) PeriodsOf(int package) =>
        (
            FirstEndingFrom(baseline.Start[package]),
            Math.Min(FirstEndingFrom(baseline.Finish[package]), periods.Count - 1)
        );

    private int FirstEndingFrom(int day)
    {
        var afterFirst = periods.Count == 0 ? 0 : day - periods.End(0).DayNumber;
        return afterFirst <= 0 ? 0
            : afterFirst < periodOfDay.Length ? periodOfDay[afterFirst]
            : periods.Count;
    }

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
            if (IsGivenByCostElement(package))
            {
                AddGivenAmounts(package, series);
            }
            else if (IsSpread(package))
            {
                AddSpread(package, series);
            }
            else
            {
                AddShares(package, series);
            }
        }
    }

    /// <summary>The same as <see cref="AddShares"/> where all shares are parts of one whole, as with most packages.</summary>
    private void AddSpread(int package, PeriodSeries.Builder series)
    {
        var (first, last) = PeriodsOf(package);
        var work = WorkOf(package);
        var spread = SpreadOf(package);
        var whole = work.Days == 0 ? 1 : SpreadPart(spread, work.Days, work.Days);
        var (start, finish) = (baseline.Start[package], baseline.Finish[package]);
        var due = parts.AsSpan(0, Math.Max(0, last - first + 1));
        for (var i = 0; i < due.Length; i++)
        {
            var end = periods.End(first + i).DayNumber;
            due[i] =
                end >= finish ? whole
                : end < start ? 0
                : SpreadPart(spread, workNumberAtEnd[first + i] - work.BeforeStart, work.Days);
        }

        var planned = totals.AsSpan(0, due.Length);
        for (var costElement = 0; costElement < CostElements.Count; costElement++)
        {
            var atom = (package * CostElements.Count) + costElement;
            if (baseline.Budget[atom] is var amount and not 0)
            {
                Share.Totals(amount, due, whole, planned);
                series.AddTotals(atom, first, planned);
            }
        }
    }

    private void AddShares(int package, PeriodSeries.Builder series)
    {
        var (first, last) = PeriodsOf(package);
        var work = WorkOf(package);
        var touched = Math.Max(0, last - first + 1);
        var due = shares.AsSpan(0, touched);
        for (var i = 0; i < due.Length; i++)
        {
            due[i] = ShareAt(package, work, first + i);
        }

        for (var costElement = 0; costElement < CostElements.Count; costElement++)
        {
            var atom = (package * CostElements.Count) + costElement;
            var amount = baseline.Budget[atom];
            if (amount == 0)
            {
                continue;
            }

            var planned = totals.AsSpan(0, touched);
            for (var i = 0; i < due.Length; i++)
            {
                planned[i] = due[i].Of(amount);
            }

            series.AddTotals(atom, first, planned);
        }
    }

    private Share ShareAt(int package, WorkSpan work, int period)
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
            : SpreadShare(package, work, period);
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

    private WorkSpan WorkOf(int package)
    {
        var before = calendar.NumberOf(DateOnly.FromDayNumber(baseline.Start[package] - 1));
        var finish = calendar.NumberOf(DateOnly.FromDayNumber(baseline.Finish[package]));
        return new WorkSpan(before, finish - before);
    }

    private Share SpreadShare(int package, WorkSpan work, int period)
    {
        var spread = SpreadOf(package);
        if (spread == PackageTable.Periods)
        {
            return GivenShare(package, period);
        }

        return work.Days == 0
            ? Share.None
            : new Share(
                SpreadPart(spread, workNumberAtEnd[period] - work.BeforeStart, work.Days),
                SpreadPart(spread, work.Days, work.Days)
            );
    }

    /// <summary>
    /// With x = done / whole: even x, falling 1 − (1 − x)², rising x², s-shaped x²(3 − 2x). Definitions of our own.
    /// Given as the numerator; the denominator is the same where everything is done.
    /// </summary>
    private static long SpreadPart(int spread, long done, long whole) =>
        // spans of up to 2 million working days keep whole³ within 64 bits
        spread switch
        {
            PackageTable.Even => done,
            PackageTable.Falling => (whole * whole) - ((whole - done) * (whole - done)),
            PackageTable.Rising => done * done,
            _ => done * done * ((3 * whole) - (2 * done)),
        };

    /// <summary>True if the plan follows a curve over working days.</summary>
    private bool IsSpread(int package) =>
        baseline.Technique[package] != TechniqueCodec.Milestones
        && !TechniqueCodec.IsStartFinish(baseline.Technique[package])
        && SpreadOf(package) != PackageTable.Periods;

    private int SpreadOf(int package) =>
        FollowsSpread(baseline.Technique[package]) ? baseline.Spread[package] : PackageTable.Even;

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

    /// <summary>Working days of a package, and the number of the last working day before it.</summary>
    private readonly record struct WorkSpan(long BeforeStart, long Days);
}
