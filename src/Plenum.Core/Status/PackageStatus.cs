using Plenum.Core.Baseline;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Status;

/// <summary>
/// What was reported of each package, period by period. Each field holds from the last row that gives it; a row that
/// takes it back leaves nothing.
/// </summary>
public sealed class PackageStatus
{
    private readonly RowGroups rowsOf;
    private readonly int[] periodOfRow;
    private readonly Table status;

    public PackageStatus(PackageBaseline baseline, PeriodTimeline periods, Table status)
    {
        this.status = status;
        periodOfRow = PeriodsOf(status, StatusTable.Period, periods);
        rowsOf = RowGroups.By(
            baseline.OwnersOf(status, StatusTable.Package),
            baseline.Count,
            periodOfRow
        );
    }

    /// <summary>Rows of the status table of a package, by period.</summary>
    public ReadOnlySpan<int> RowsOf(int package) => rowsOf[package];

    /// <summary>Index of the period of a row of the status table.</summary>
    public int PeriodOf(int row) => periodOfRow[row];

    /// <summary>The index of the period of every row of a status table.</summary>
    public static int[] PeriodsOf(Table table, ColumnDefinition column, PeriodTimeline periods)
    {
        var ids = table.Ints(column);
        var indices = new int[ids.Length];
        for (var row = 0; row < indices.Length; row++)
        {
            indices[row] = periods.IndexOf(ids[row]);
        }

        return indices;
    }

    /// <summary>Actual start held at a period's end as a day number, or <see cref="Cell.NoInt"/>.</summary>
    public int StartedAt(int package, int period) => HeldInt(StatusTable.Started, package, period);

    /// <summary>Actual finish held at a period's end as a day number, or <see cref="Cell.NoInt"/>.</summary>
    public int FinishedAt(int package, int period) =>
        HeldInt(StatusTable.Finished, package, period);

    /// <summary>Remaining working days held at a period's end, or <see cref="Cell.NoInt"/>.</summary>
    public int RemainingAt(int package, int period) =>
        HeldInt(StatusTable.Remaining, package, period);

    /// <summary>
    /// Working days that a report says remain although the package is finished by then, on or before a period's end; 0 if
    /// there is none.
    /// </summary>
    public int RemainingBesideFinish(int package, int period)
    {
        var finishes = status.Ints(StatusTable.Finished);
        var remaining = status.Ints(StatusTable.Remaining);
        var isFinished = false;
        var days = 0;
        foreach (var row in rowsOf[package])
        {
            if (periodOfRow[row] > period)
            {
                break;
            }

            if (finishes[row] != Cell.NoInt)
            {
                isFinished = Cell.IsGiven(finishes[row]);
                days = 0;
            }

            days = isFinished && Cell.IsGiven(remaining[row]) ? remaining[row] : days;
        }

        return days;
    }

    /// <summary>
    /// The last report of cost still to come on or before a period's end: its period and amount; a period of −1 if
    /// there is none or it was taken back.
    /// </summary>
    public (int Period, long Amount) CostToComeAt(int package, int period)
    {
        var amounts = status.Longs(StatusTable.CostToCome);
        var rows = rowsOf[package];
        for (var i = rows.Length - 1; i >= 0; i--)
        {
            var row = rows[i];
            if (periodOfRow[row] <= period && amounts[row] != Cell.NoLong)
            {
                return Cell.IsGiven(amounts[row]) ? (periodOfRow[row], amounts[row]) : (-1, 0);
            }
        }

        return (-1, 0);
    }

    /// <summary>Index of the last period on or before one in which anything was reported; −1 if never.</summary>
    public int LastReportedAt(int package, int period)
    {
        var rows = rowsOf[package];
        for (var i = rows.Length - 1; i >= 0; i--)
        {
            if (periodOfRow[rows[i]] <= period)
            {
                return periodOfRow[rows[i]];
            }
        }

        return -1;
    }

    /// <summary>The current forecast of all units that holds at a period's end, or <see cref="Cell.NoDecimal"/>.</summary>
    public decimal QuantityAt(int package, int period)
    {
        var values = status.Decimals(StatusTable.Quantity);
        var rows = rowsOf[package];
        for (var i = rows.Length - 1; i >= 0; i--)
        {
            var row = rows[i];
            if (periodOfRow[row] <= period && values[row] != Cell.NoDecimal)
            {
                return Cell.IsGiven(values[row]) ? values[row] : Cell.NoDecimal;
            }
        }

        return Cell.NoDecimal;
    }

    private int HeldInt(ColumnDefinition column, int package, int period)
    {
        var values = status.Ints(column);
        var rows = rowsOf[package];
        for (var i = rows.Length - 1; i >= 0; i--)
        {
            var row = rows[i];
            if (periodOfRow[row] <= period && values[row] != Cell.NoInt)
            {
                return Cell.IsGiven(values[row]) ? values[row] : Cell.NoInt;
            }
        }

        return Cell.NoInt;
    }
}
