using Plenum.Core;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Exchange.Import;

/// <summary>
/// Keeps what was closed before the import as it is: a period is closed when its end is on or before the project's
/// status date. Corrections are posted in the open period.
/// </summary>
public sealed class ClosedPeriods
{
    private readonly Project before;
    private readonly int lastClosed;

    public ClosedPeriods(Project before)
    {
        this.before = before;
        lastClosed = before.Settings.StatusDate is { } date ? before.Periods.LastEndedBy(date) : -1;
    }

    public void Check(
        Table old,
        Table table,
        TableChange change,
        IRowFaults faults,
        InputErrors errors
    )
    {
        if (lastClosed < 0)
        {
            return;
        }

        if (table.Definition == PeriodTable.Definition)
        {
            CheckPeriods(old, table, change, faults, errors);
        }
        else if (table.Definition.ClosedWith is { } column)
        {
            foreach (var id in change.Added.Concat(change.Updated))
            {
                var row = table.RowOf(id);
                if (IsClosed(table.Ints(column)[row]))
                {
                    faults.Add(
                        table,
                        row,
                        column,
                        OpenPeriod(),
                        $"period {Code(table.Ints(column)[row])} is closed"
                    );
                }
            }

            foreach (var id in change.Removed)
            {
                var periodId = old.Ints(column)[old.RowOf(id)];
                if (IsClosed(periodId))
                {
                    errors.Add(
                        table.Definition.Name,
                        null,
                        column.Name,
                        Code(periodId),
                        OpenPeriod(),
                        $"a row of the closed period {Code(periodId)} would be removed: keep all rows of "
                            + "closed periods in the file"
                    );
                }
            }
        }
    }

    private void CheckPeriods(
        Table old,
        Table table,
        TableChange change,
        IRowFaults faults,
        InputErrors errors
    )
    {
        var lastEnd = before.Periods.End(lastClosed).DayNumber;
        foreach (var id in change.Added.Concat(change.Updated))
        {
            var row = table.RowOf(id);
            if (!Cell.IsGiven(table.Ints(PeriodTable.End)[row]))
            {
                continue; // complained of when it was read
            }

            var was = old.RowOf(id) is var oldRow and >= 0
                ? old.Ints(PeriodTable.End)[oldRow]
                : int.MaxValue;
            if (was <= lastEnd || table.Ints(PeriodTable.End)[row] <= lastEnd)
            {
                faults.Add(
                    table,
                    row,
                    PeriodTable.End,
                    $"an end after that of the closed period {before.Periods.Codes[lastClosed]}",
                    $"period {table.Codes[row]} would change the closed periods, which stay as they are"
                );
            }
        }

        foreach (var id in change.Removed.Where(IsClosed))
        {
            errors.Add(
                table.Definition.Name,
                null,
                PeriodTable.Period.Name,
                Code(id),
                "all closed periods",
                $"the closed period {Code(id)} would be removed: keep all closed periods in the file"
            );
        }
    }

    private string OpenPeriod() =>
        $"a period after {before.Periods.Codes[lastClosed]}; post a correction there and say what it corrects";

    private bool IsClosed(int periodId)
    {
        var periods = before[PeriodTable.Definition];
        return Cell.IsGiven(periodId)
            && periods.RowOf(periodId) >= 0
            && before.Periods.IndexOf(periodId) <= lastClosed;
    }

    private string Code(int periodId) => before.Periods.Codes[before.Periods.IndexOf(periodId)];
}
