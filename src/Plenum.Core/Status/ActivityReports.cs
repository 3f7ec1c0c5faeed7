using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Status;

/// <summary>
/// What was reported of each activity, period by period. Each field holds from the last row that gives it; a row that
/// takes it back leaves nothing.
/// </summary>
public sealed class ActivityReports
{
    private readonly Table status;
    private readonly int[] periodOfRow;
    private readonly RowGroups rowsOf;

    public ActivityReports(Table status, Table activities, PeriodTimeline periods)
    {
        this.status = status;
        periodOfRow = PackageStatus.PeriodsOf(status, ActivityStatusTable.Period, periods);
        var owners = Array.ConvertAll(
            status.Ints(ActivityStatusTable.Activity).ToArray(),
            activities.RowOf
        );
        rowsOf = RowGroups.By(owners, activities.Count, periodOfRow);
    }

    /// <summary>
    /// Actual start, actual finish and remaining working days that hold at a period's end, each
    /// <see cref="Cell.NoInt"/> where there is none.
    /// </summary>
    /// <param name="row">Row of the activity in its table.</param>
    /// <param name="period">Index of the period.</param>
    public (int Started, int Finished, int Remaining) At(int row, int period) =>
        (
            Held(ActivityStatusTable.Started, row, period),
            Held(ActivityStatusTable.Finished, row, period),
            Held(ActivityStatusTable.Remaining, row, period)
        );

    private int Held(ColumnDefinition column, int row, int period)
    {
        var values = status.Ints(column);
        var rows = rowsOf[row];
        for (var i = rows.Length - 1; i >= 0; i--)
        {
            if (periodOfRow[rows[i]] <= period && values[rows[i]] != Cell.NoInt)
            {
                return Cell.IsGiven(values[rows[i]]) ? values[rows[i]] : Cell.NoInt;
            }
        }

        return Cell.NoInt;
    }
}
