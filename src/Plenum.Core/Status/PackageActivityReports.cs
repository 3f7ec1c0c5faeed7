using Plenum.Core.Baseline;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;
using Plenum.Core.Network;

namespace Plenum.Core.Status;

/// <summary>What the activities of a package together say of its start and finish.</summary>
public readonly record struct ActivitiesTogether(bool AnyStarted, bool AllFinished);

/// <summary>What was reported of the activities of each package.</summary>
public sealed class PackageActivityReports
{
    private readonly RowGroups activitiesOf;
    private readonly RowGroups rowsOf;
    private readonly int[] periodOfRow;
    private readonly Table status;

    public PackageActivityReports(
        PackageBaseline baseline,
        PeriodTimeline periods,
        Table activities,
        Table status
    )
    {
        this.status = status;
        activitiesOf = RowGroups.By(
            baseline.OwnersOf(activities, ActivityTable.Package),
            baseline.Count
        );
        periodOfRow = PackageStatus.PeriodsOf(status, ActivityStatusTable.Period, periods);
        var ids = status.Ints(ActivityStatusTable.Activity);
        var owners = new int[ids.Length];
        for (var row = 0; row < owners.Length; row++)
        {
            owners[row] = activities.RowOf(ids[row]);
        }

        rowsOf = RowGroups.By(owners, activities.Count, periodOfRow);
    }

    /// <summary>At a period's end; null where none of the activities has ever been reported.</summary>
    public ActivitiesTogether? Of(int package, int period)
    {
        var reported = false;
        var anyStarted = false;
        var allFinished = true;
        foreach (var activity in activitiesOf[package])
        {
            var (any, started, finished) = Held(activity, period);
            reported |= any;
            anyStarted |= started;
            allFinished &= finished;
        }

        return reported ? new ActivitiesTogether(anyStarted, allFinished) : null;
    }

    private (bool Any, bool Started, bool Finished) Held(int activity, int period)
    {
        var started = status.Ints(ActivityStatusTable.Started);
        var finished = status.Ints(ActivityStatusTable.Finished);
        var (any, hasStarted, hasFinished) = (false, false, false);
        foreach (var row in rowsOf[activity])
        {
            if (periodOfRow[row] > period)
            {
                break;
            }

            any = true;
            hasStarted = started[row] == Cell.NoInt ? hasStarted : Cell.IsGiven(started[row]);
            hasFinished = finished[row] == Cell.NoInt ? hasFinished : Cell.IsGiven(finished[row]);
        }

        return (any, hasStarted, hasFinished);
    }
}
