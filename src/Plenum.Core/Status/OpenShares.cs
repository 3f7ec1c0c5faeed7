using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Status;

/// <summary>
/// What the techniques of open packages leave open at a period's end. In periods up to the present one it follows from
/// what was reported; in later periods, and where nothing was ever reported, from the baseline dates. Level of effort is
/// never open: it earns what was planned. Apportioned effort is as open as its base.
/// </summary>
public sealed class OpenShares
{
    private readonly PackageBaseline baseline;
    private readonly PackageStatus status;
    private readonly PeriodTimeline periods;
    private readonly MilestoneProgress milestones;
    private readonly ItemProgress items;
    private readonly PeriodSeries planned;
    private readonly PeriodSeries earned;
    private readonly int lastKnown;
    private readonly double assessorError;

    // for each package the periods outside which it is certainly not open; none where the first is greater
    private readonly int[] firstOpen;
    private readonly int[] lastOpen;

    /// <param name="baseline">The baseline.</param>
    /// <param name="status">What was reported of packages.</param>
    /// <param name="sources">The tables of reports.</param>
    /// <param name="planned">Planned value by atom.</param>
    /// <param name="earned">Earned value by atom.</param>
    /// <param name="present">The period up to which reports are in; −1 before the first.</param>
    /// <param name="assessorError">Greatest error of a judged per cent complete.</param>
    public OpenShares(
        PackageBaseline baseline,
        PackageStatus status,
        StatusSources sources,
        PeriodSeries planned,
        PeriodSeries earned,
        int present,
        Fraction assessorError
    )
    {
        this.baseline = baseline;
        this.status = status;
        periods = sources.Periods;
        this.planned = planned;
        this.earned = earned;
        this.assessorError = (double)assessorError.BasisPoints / Fraction.Whole;
        milestones = new MilestoneProgress(baseline, periods, sources.MilestoneStatus);
        items = new ItemProgress(baseline, sources);
        var reported =
            sources.Status.Count + sources.MilestoneStatus.Count + sources.ItemSteps.Count > 0;
        lastKnown = reported ? present : -1;
        firstOpen = new int[baseline.Count];
        lastOpen = new int[baseline.Count];
        for (var package = 0; package < baseline.Count; package++)
        {
            (firstOpen[package], lastOpen[package]) = Bounds(package);
        }
    }

    private (int First, int Last) Bounds(int package)
    {
        if (baseline.TotalBudget[package] == 0)
        {
            return (1, 0);
        }

        var first = periods.Count;
        var last = -1;
        if (baseline.IsScheduled(package))
        {
            first = periods.FirstEndingFrom(DateOnly.FromDayNumber(baseline.Start[package]));
            last = periods.FirstEndingFrom(DateOnly.FromDayNumber(baseline.Finish[package]));
        }

        foreach (var row in status.RowsOf(package))
        {
            first = Math.Min(first, status.PeriodOf(row));
            last = Math.Max(last, lastKnown);
        }

        for (var costElement = 0; costElement < CostElements.Count; costElement++)
        {
            var changes = earned.PeriodsOf((package * CostElements.Count) + costElement);
            if (changes.Length > 0)
            {
                first = Math.Min(first, changes[0]);
                last = Math.Max(last, lastKnown);
            }
        }

        return (first, last);
    }

    /// <summary>At a period's end; nothing for a package that is not open.</summary>
    public OpenShare At(int package, int period)
    {
        var root = RootOf(package);
        return
            root < 0 || period < firstOpen[root] || period > lastOpen[root] || !IsOpen(root, period)
            ? OpenShare.None
            : Of(root, period);
    }

    /// <summary>
    /// Under way by then: in periods of which reports are in, started and not finished; in later ones between start and
    /// finish, actual where reported, else baseline.
    /// </summary>
    public bool IsOpen(int package, int period)
    {
        if (baseline.TotalBudget[package] == 0)
        {
            return false;
        }

        if (period <= lastKnown)
        {
            return !Cell.IsGiven(status.FinishedAt(package, period))
                && (Cell.IsGiven(status.StartedAt(package, period)) || EarnedAny(package, period));
        }

        if (lastKnown >= 0 && Cell.IsGiven(status.FinishedAt(package, lastKnown)))
        {
            return false;
        }

        var end = periods.End(period).DayNumber;
        var start =
            lastKnown >= 0
                ? OpenPackages.StartDay(baseline, status, package, lastKnown)
                : baseline.Start[package];
        return Cell.IsGiven(start)
            && Cell.IsGiven(baseline.Finish[package])
            && start <= end
            && end < baseline.Finish[package];
    }

    /// <summary>The package whose progress decides: for apportioned effort its base's; −1 where a base is missing.</summary>
    public int RootOf(int package)
    {
        if (baseline.Technique[package] != TechniqueCodec.Apportioned)
        {
            return package;
        }

        var at = package;
        for (var steps = 0; steps <= baseline.Count; steps++)
        {
            if (at < 0 || baseline.Technique[at] != TechniqueCodec.Apportioned)
            {
                return at;
            }

            at = baseline.Base[at];
        }

        return -1;
    }

    private OpenShare Of(int package, int period)
    {
        var technique = baseline.Technique[package];
        return technique switch
        {
            Cell.NoInt => OpenShare.StartFinish(0),
            TechniqueCodec.LevelOfEffort => OpenShare.None,
            TechniqueCodec.Percent => OpenShare.Judged(assessorError),
            TechniqueCodec.Milestones => OpenShare.Step(
                period <= lastKnown
                    ? milestones.NextWeight(package, period)
                    : MilestoneProgress.PlannedNextWeight(
                        baseline,
                        package,
                        periods.End(period).DayNumber
                    )
            ),
            TechniqueCodec.Units => OpenShare.Step(UnitWeight(package, period)),
            TechniqueCodec.Items => OpenShare.Step(
                period <= lastKnown
                    ? items.NextWeight(package, period)
                    : items.PlannedNextWeight(package, ShareOf(planned, package, period))
            ),
            _ => OpenShare.StartFinish(technique / 100.0),
        };
    }

    private double UnitWeight(int package, int period)
    {
        var quantity = status.QuantityAt(package, Math.Min(period, lastKnown));
        if (!Cell.IsGiven(quantity))
        {
            quantity = baseline.Tree.Elements.Decimals(ElementTable.Quantity)[
                baseline.Tree.PackageRows[package]
            ];
        }

        var left = period <= lastKnown ? 1 - ShareOf(earned, package, period) : 1;
        return Cell.IsGiven(quantity) && quantity >= 1
            ? Math.Min(left, 1 / (double)quantity)
            : left;
    }

    private bool EarnedAny(int package, int period) => ShareOf(earned, package, period) > 0;

    private double ShareOf(PeriodSeries series, int package, int period)
    {
        var sum = 0L;
        for (var costElement = 0; costElement < CostElements.Count; costElement++)
        {
            sum += series.At((package * CostElements.Count) + costElement, period);
        }

        return (double)sum / baseline.TotalBudget[package];
    }
}
