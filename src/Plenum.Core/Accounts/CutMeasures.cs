using Plenum.Core.Foundation.Tables;
using Plenum.Core.Status;

namespace Plenum.Core.Accounts;

/// <summary>Sums the measures of a cut at a period's end.</summary>
public static class CutMeasures
{
    /// <param name="source">The project over time.</param>
    /// <param name="cut">The cut.</param>
    /// <param name="period">Index of the period at whose end everything is taken; −1 before the first.</param>
    /// <param name="periodOnly">Offsets are those of the period alone, and what was before it is given too.</param>
    /// <returns>One for each row of the cut, rolled up; and the total of all, undistributed budget included.</returns>
    /// <exception cref="OverflowException">A sum does not fit.</exception>
    public static (MeasureSums[] Rows, MeasureSums Total) At(
        TimePhased source,
        Cut cut,
        int period,
        bool periodOnly
    )
    {
        var rows = new MeasureSums[cut.Rows.Count];
        // by cost element the rows' offsets are finer than those of the total, which are the same in every cut
        MeasureSums whole = default;
        AddPackages(source, cut, period, periodOnly, rows, ref whole);
        AddCharges(source, cut, period, periodOnly, rows, ref whole);
        if (cut.RowOfUndistributed >= 0)
        {
            rows[cut.RowOfUndistributed]
                .Add(
                    new MeasureSums
                    {
                        BudgetAtCompletion = source.Undistributed,
                        Remaining = source.Undistributed,
                    }
                );
        }

        var total = RollUp(cut, rows);
        if (cut.ByCostElement)
        {
            total.TakeOffsets(whole);
        }

        return (rows, total);
    }

    /// <summary>Measures of one package at a period's end.</summary>
    /// <param name="source">The project over time.</param>
    /// <param name="package">Its number.</param>
    /// <param name="period">Index of the period; −1 before the first.</param>
    /// <param name="committed">What <see cref="TimePhased.CommittedAt"/> gives for the period.</param>
    /// <exception cref="OverflowException">A sum does not fit.</exception>
    public static MeasureSums OfPackage(
        TimePhased source,
        int package,
        int period,
        long[] committed
    )
    {
        Span<MeasureSums> atoms = stackalloc MeasureSums[CostElements.Count];
        new AtomReader(source, period, committed).Read(package, atoms);
        MeasureSums sum = default;
        foreach (ref readonly var atom in atoms)
        {
            sum.Add(atom);
        }

        sum.Packages = 1;
        sum.BookOffsets();
        return sum;
    }

    private static void AddPackages(
        TimePhased source,
        Cut cut,
        int period,
        bool periodOnly,
        MeasureSums[] rows,
        ref MeasureSums whole
    )
    {
        var reader = new AtomReader(source, period, periodOnly);
        Span<MeasureSums> atoms = stackalloc MeasureSums[CostElements.Count];
        var (first, end) = cut.CostElementRange;
        for (var package = 0; package < cut.RowOfPackage.Length; package++)
        {
            var row = cut.RowOfPackage[package];
            if (row < 0)
            {
                continue;
            }

            reader.Read(package, atoms);
            MeasureSums sum = default;
            foreach (ref readonly var atom in atoms[first..end])
            {
                sum.Add(atom);
            }

            sum.Packages = 1;
            sum.BookOffsets();
            if (cut.ByCostElement)
            {
                AddByCostElement(atoms, rows);
                whole.Add(sum);
            }
            else
            {
                rows[row].Add(sum);
            }
        }
    }

    /// <summary>
    /// What is charged to an account as such counts there like one more package without budget, in cost only.
    /// </summary>
    private static void AddCharges(
        TimePhased source,
        Cut cut,
        int period,
        bool periodOnly,
        MeasureSums[] rows,
        ref MeasureSums whole
    )
    {
        var actual = source.Actual.Accounts;
        Span<MeasureSums> atoms = stackalloc MeasureSums[CostElements.Count];
        var (first, end) = cut.CostElementRange;
        for (var account = 0; account < cut.RowOfCharges.Length; account++)
        {
            var row = cut.RowOfCharges[account];
            if (row < 0)
            {
                continue;
            }

            MeasureSums sum = default;
            atoms.Clear();
            for (var costElement = first; costElement < end; costElement++)
            {
                var series = (account * CostElements.Count) + costElement;
                atoms[costElement].ActualCost = actual.At(series, period);
                atoms[costElement].ActualBefore = periodOnly ? actual.At(series, period - 1) : 0;
                atoms[costElement].ActualThreeBefore = actual.At(series, period - 3);
                sum.Add(atoms[costElement]);
            }

            sum.BookOffsets();
            if (cut.ByCostElement)
            {
                AddByCostElement(atoms, rows);
                whole.Add(sum);
            }
            else
            {
                rows[row].Add(sum);
            }
        }
    }

    private static void AddByCostElement(Span<MeasureSums> atoms, MeasureSums[] rows)
    {
        for (var costElement = 0; costElement < CostElements.Count; costElement++)
        {
            atoms[costElement].BookOffsets();
            rows[costElement].Add(atoms[costElement]);
        }
    }

    private static MeasureSums RollUp(Cut cut, MeasureSums[] rows)
    {
        var deepest = 0;
        foreach (var row in cut.Rows)
        {
            deepest = Math.Max(deepest, row.Level);
        }

        var below = new MeasureSums[deepest + 2];
        for (var row = rows.Length - 1; row >= 0; row--)
        {
            var level = cut.Rows[row].Level;
            rows[row].Add(below[level + 1]);
            below[level + 1] = default;
            below[level].Add(rows[row]);
        }

        return below[0];
    }

    /// <summary>Reads the measures of a package by cost element.</summary>
    private readonly struct AtomReader
    {
        private readonly TimePhased source;
        private readonly int period;
        private readonly bool periodOnly;
        private readonly long[] committed;
        private readonly long[] committedBefore;

        public AtomReader(TimePhased source, int period, bool periodOnly)
        {
            this.source = source;
            this.period = period;
            this.periodOnly = periodOnly;
            committed = source.CommittedAt(period);
            committedBefore = periodOnly ? source.CommittedAt(period - 1) : [];
        }

        public AtomReader(TimePhased source, int period, long[] committed)
        {
            this.source = source;
            this.period = period;
            this.committed = committed;
            committedBefore = [];
        }

        public void Read(int package, Span<MeasureSums> atoms)
        {
            Span<long> earned = stackalloc long[CostElements.Count];
            Span<long> remaining = stackalloc long[CostElements.Count];
            var first = package * CostElements.Count;
            for (var costElement = 0; costElement < CostElements.Count; costElement++)
            {
                earned[costElement] = source.Earned.At(first + costElement, period);
            }

            CostToCome.Fill(
                source.Baseline,
                source.Status,
                source.Actual.Packages,
                package,
                period,
                earned,
                remaining
            );
            for (var costElement = 0; costElement < CostElements.Count; costElement++)
            {
                var atom = first + costElement;
                MeasureSums sums = new()
                {
                    BudgetAtCompletion = source.Baseline.Budget[atom],
                    PlannedValue = source.Planned.At(atom, period),
                    EarnedValue = earned[costElement],
                    ActualCost = source.Actual.Packages.At(atom, period),
                    Committed = committed[atom],
                    Remaining = remaining[costElement],
                    EarnedThreeBefore = source.Earned.At(atom, period - 3),
                    ActualThreeBefore = source.Actual.Packages.At(atom, period - 3),
                };
                if (periodOnly)
                {
                    sums.PlannedBefore = source.Planned.At(atom, period - 1);
                    sums.EarnedBefore = source.Earned.At(atom, period - 1);
                    sums.ActualBefore = source.Actual.Packages.At(atom, period - 1);
                    sums.CommittedBefore = committedBefore[atom];
                }

                atoms[costElement] = sums;
            }
        }
    }
}
