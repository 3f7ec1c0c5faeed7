using System.Globalization;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.People;

/// <summary>What must hold for delegations: their dates follow the order of the steps and end at the state.</summary>
public static class DelegationRules
{
    public static void Check(Table delegations, IRowFaults faults)
    {
        var states = delegations.Ints(DelegationTable.State);
        for (var row = 0; row < delegations.Count; row++)
        {
            var last = Cell.NoInt;
            ColumnDefinition? lastStep = null;
            for (var step = 0; step < DelegationTable.Dates.Count; step++)
            {
                var column = DelegationTable.Dates[step];
                var day = delegations.Ints(column)[row];
                if (day == Cell.NoInt)
                {
                    continue;
                }

                if (Cell.IsGiven(states[row]) && step > states[row])
                {
                    var state = DelegationTable.States.Format(states[row]);
                    faults.Add(
                        delegations,
                        row,
                        column,
                        $"no date of a step after {state}",
                        $"the state is {state}, and {column.Name} has a date"
                    );
                }
                else if (lastStep is not null && day < last)
                {
                    faults.Add(
                        delegations,
                        row,
                        column,
                        $"{Day(last)} or later",
                        $"{column.Name} on {Day(day)} lies before {lastStep.Name} on {Day(last)}"
                    );
                }

                (last, lastStep) = (day, column);
            }
        }
    }

    private static string Day(int number) =>
        DateOnly.FromDayNumber(number).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
