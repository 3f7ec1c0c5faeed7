using Plenum.Core.Baseline;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;
using Plenum.Core.People;
using Plenum.Core.Status;

namespace Plenum.Core.Accounts;

/// <summary>
/// Planned value, earned value, actual cost and commitments of every package over all periods: what every measure of
/// every cut at every date is summed from. Made once for a value of the project.
/// </summary>
public sealed class TimePhased
{
    private readonly int[] committedAtom;
    private readonly long[] committedAmount;
    private readonly int[] committedDay;

    public TimePhased(
        PackageBaseline baseline,
        PackageStatus status,
        AccountPlacement placement,
        PeriodTimeline periods,
        PeriodSeries planned,
        PeriodSeries earned,
        ActualCost actual,
        Table commitments,
        long undistributed
    )
    {
        Baseline = baseline;
        Status = status;
        Placement = placement;
        Periods = periods;
        Planned = planned;
        Earned = earned;
        Actual = actual;
        Undistributed = undistributed;

        var owners = baseline.OwnersOf(commitments, CommitmentTable.Package);
        var costElements = commitments.Ints(CommitmentTable.CostElement);
        committedAtom = new int[owners.Length];
        for (var row = 0; row < owners.Length; row++)
        {
            committedAtom[row] =
                owners[row] < 0 ? -1 : (owners[row] * CostElements.Count) + costElements[row];
        }

        committedAmount = commitments.Longs(CommitmentTable.Amount).ToArray();
        committedDay = commitments.Ints(CommitmentTable.Date).ToArray();
    }

    public PackageBaseline Baseline { get; }

    public PackageStatus Status { get; }

    public AccountPlacement Placement { get; }

    public PeriodTimeline Periods { get; }

    /// <summary>Planned value by atom.</summary>
    public PeriodSeries Planned { get; }

    /// <summary>Earned value by atom.</summary>
    public PeriodSeries Earned { get; }

    public ActualCost Actual { get; }

    /// <summary>Undistributed budget and allowances, in minor units.</summary>
    public long Undistributed { get; }

    /// <summary>True if a cost element has any budget, cost or commitment, at whatever date.</summary>
    public bool Uses(int costElement)
    {
        for (var atom = costElement; atom < Baseline.Budget.Length; atom += CostElements.Count)
        {
            if (Baseline.Budget[atom] != 0 || Actual.Packages.PeriodsOf(atom).Length > 0)
            {
                return true;
            }
        }

        for (var series = costElement; series < Actual.Accounts.Count; series += CostElements.Count)
        {
            if (Actual.Accounts.PeriodsOf(series).Length > 0)
            {
                return true;
            }
        }

        for (var row = 0; row < committedAtom.Length; row++)
        {
            if (
                committedAtom[row] >= 0
                && committedAtom[row] % CostElements.Count == costElement
                && committedAmount[row] != 0
            )
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>
    /// Committed by atom: rows dated on or before a period's end, and undated rows always; nothing before the first
    /// period's end.
    /// </summary>
    public long[] CommittedAt(int period)
    {
        var committed = new long[Baseline.Budget.Length];
        if (period < 0)
        {
            return committed;
        }

        var end = Periods.End(period).DayNumber;
        for (var row = 0; row < committedAtom.Length; row++)
        {
            // a row without a date has the least number of all
            if (committedAtom[row] >= 0 && committedDay[row] <= end)
            {
                committed[committedAtom[row]] += committedAmount[row];
            }
        }

        return committed;
    }
}
