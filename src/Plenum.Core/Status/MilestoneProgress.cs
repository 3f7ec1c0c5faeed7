using Plenum.Core.Baseline;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Status;

/// <summary>Weighted milestones: the earned share is the weights of the milestones reached over all weights.</summary>
internal sealed class MilestoneProgress
{
    private readonly PackageBaseline baseline;
    private readonly Table status;
    private readonly RowGroups rowsOf;
    private readonly int[] periodOfRow;

    public MilestoneProgress(PackageBaseline baseline, PeriodTimeline periods, Table status)
    {
        this.baseline = baseline;
        this.status = status;
        periodOfRow = PackageStatus.PeriodsOf(status, MilestoneStatusTable.Period, periods);
        rowsOf = RowGroups.By(
            baseline.OwnersOf(status, MilestoneStatusTable.Package),
            baseline.Count,
            periodOfRow
        );
    }

    public int[] PeriodsOf(int package) => PeriodsOf(rowsOf[package], periodOfRow);

    public Share ShareAt(int package, int period)
    {
        var codes = baseline.Milestones.Texts(MilestoneTable.Milestone);
        var weights = baseline.Milestones.Decimals(MilestoneTable.Weight);
        decimal reached = 0;
        decimal all = 0;
        foreach (var row in baseline.MilestonesOf[package])
        {
            all += weights[row];
            if (IsReached(package, codes[row]!, period))
            {
                reached += weights[row];
            }
        }

        return all == 0
            ? Share.None
            : Share.From(ExactFraction.Of(reached) / ExactFraction.Of(all));
    }

    /// <summary>
    /// The share that the next milestone earns: of those that are not reached, the one that is planned first. 0 when
    /// all are reached; the whole where there is no weight at all.
    /// </summary>
    public double NextWeight(int package, int period) =>
        NextWeight(baseline, package, (_, code) => !IsReached(package, code, period));

    /// <summary>The same by plan: of those that are planned after a day.</summary>
    public static double PlannedNextWeight(PackageBaseline baseline, int package, int day)
    {
        var planned = (NumberColumn<int>)baseline.Milestones[MilestoneTable.Planned];
        return NextWeight(
            baseline,
            package,
            (row, _) =>
                (planned.IsMissing(row) ? baseline.Finish[package] : planned.Values[row]) > day
        );
    }

    private static double NextWeight(
        PackageBaseline baseline,
        int package,
        Func<int, string, bool> isOpen
    )
    {
        var codes = baseline.Milestones.Texts(MilestoneTable.Milestone);
        var weights = baseline.Milestones.Decimals(MilestoneTable.Weight);
        var planned = baseline.Milestones.Ints(MilestoneTable.Planned);
        var all = 0m;
        var next = -1;
        foreach (var row in baseline.MilestonesOf[package])
        {
            all += weights[row];
            if (
                isOpen(row, codes[row]!) && (next < 0 || DayOf(planned[row]) < DayOf(planned[next]))
            )
            {
                next = row;
            }
        }

        return all == 0 ? 1
            : next < 0 ? 0
            : (double)(weights[next] / all);

        static int DayOf(int planned) => planned == Cell.NoInt ? int.MaxValue : planned;
    }

    internal static int[] PeriodsOf(ReadOnlySpan<int> rows, int[] periodOfRow)
    {
        var periods = new int[rows.Length];
        for (var i = 0; i < rows.Length; i++)
        {
            periods[i] = periodOfRow[rows[i]];
        }

        return periods;
    }

    private bool IsReached(int package, string milestone, int period)
    {
        var codes = status.Texts(MilestoneStatusTable.Milestone);
        var done = status.Ints(MilestoneStatusTable.Done);
        var reached = false;
        foreach (var row in rowsOf[package])
        {
            if (periodOfRow[row] <= period && codes[row] == milestone && done[row] != Cell.NoInt)
            {
                reached = Cell.IsGiven(done[row]);
            }
        }

        return reached;
    }
}
