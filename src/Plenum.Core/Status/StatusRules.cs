using System.Globalization;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Status;

/// <summary>What must hold for reported status.</summary>
public sealed class StatusRules(PackageBaseline baseline, PeriodTimeline periods, IRowFaults faults)
{
    /// <summary>
    /// Actual dates lie on or before their period's end; no finish without a start or before it; nothing remains of what is
    /// finished; units done have a quantity to be measured against.
    /// </summary>
    public void CheckPackages(Table status)
    {
        var periodOfRow = PackageStatus.PeriodsOf(status, StatusTable.Period, periods);
        var rowsOf = RowGroups.By(
            baseline.OwnersOf(status, StatusTable.Package),
            baseline.Count,
            periodOfRow
        );
        var unitsDone = status.Decimals(StatusTable.UnitsDone);
        var quantities = status.Decimals(StatusTable.Quantity);
        var planned = baseline.Tree.Elements.Decimals(ElementTable.Quantity);
        for (var package = 0; package < baseline.Count; package++)
        {
            var rows = rowsOf[package];
            if (rows.Length == 0)
            {
                continue;
            }

            CheckDates(
                status,
                rows,
                periodOfRow,
                StatusTable.Started,
                StatusTable.Finished,
                null,
                baseline.Code(package)
            );
            var quantity = planned[baseline.Tree.PackageRows[package]];
            var held = Cell.NoDecimal;
            foreach (var row in rows)
            {
                held = quantities[row] == Cell.NoDecimal ? held : quantities[row];
                var current = Cell.IsGiven(held) ? held : quantity;
                if (Cell.IsGiven(unitsDone[row]) && (!Cell.IsGiven(current) || current == 0))
                {
                    faults.Add(
                        status,
                        row,
                        StatusTable.UnitsDone,
                        "a quantity above zero, in this column's row or in the element",
                        $"package {baseline.Code(package)} reports units done but has no quantity to measure them against"
                    );
                }
            }
        }
    }

    /// <summary>The same for activities.</summary>
    public void CheckActivities(Table status, Table activities)
    {
        var periodOfRow = PackageStatus.PeriodsOf(status, ActivityStatusTable.Period, periods);
        var owners = Array.ConvertAll(
            status.Ints(ActivityStatusTable.Activity).ToArray(),
            activities.RowOf
        );
        var rowsOf = RowGroups.By(owners, activities.Count, periodOfRow);
        for (var activity = 0; activity < activities.Count; activity++)
        {
            CheckDates(
                status,
                rowsOf[activity],
                periodOfRow,
                ActivityStatusTable.Started,
                ActivityStatusTable.Finished,
                ActivityStatusTable.Remaining,
                activities.Codes[activity]!
            );
        }
    }

    /// <summary>Milestones exist and are reached on or before the end of the period that says so.</summary>
    public void CheckMilestones(Table status)
    {
        var periodOfRow = PackageStatus.PeriodsOf(status, MilestoneStatusTable.Period, periods);
        var owners = baseline.OwnersOf(status, MilestoneStatusTable.Package);
        var codes = status.Texts(MilestoneStatusTable.Milestone);
        var done = status.Ints(MilestoneStatusTable.Done);
        var known = baseline.Milestones.Texts(MilestoneTable.Milestone);
        for (var row = 0; row < status.Count; row++)
        {
            if (owners[row] < 0)
            {
                continue;
            }

            var found = false;
            foreach (var milestone in baseline.MilestonesOf[owners[row]])
            {
                found |= known[milestone] == codes[row];
            }

            if (!found)
            {
                faults.Add(
                    status,
                    row,
                    MilestoneStatusTable.Milestone,
                    "a milestone of the package",
                    $"\"{codes[row]}\" is no milestone of package {baseline.Code(owners[row])}"
                );
            }

            CheckInPeriod(status, row, MilestoneStatusTable.Done, done[row], periodOfRow[row]);
        }
    }

    /// <summary>Steps of a rule of credit add up to 100 %.</summary>
    public static void CheckCreditSteps(Table steps, IRowFaults faults)
    {
        var rules = steps.Texts(CreditStepTable.Rule);
        var percents = steps.Ints(CreditStepTable.Percent);
        Dictionary<string, (long Sum, int Last)> sums = new(StringComparer.Ordinal);
        for (var row = 0; row < steps.Count; row++)
        {
            var sum = sums.GetValueOrDefault(rules[row]!).Sum + Math.Max(0, percents[row]);
            sums[rules[row]!] = (sum, row);
        }

        foreach (var (rule, (sum, last)) in sums)
        {
            if (sum != Fraction.Whole)
            {
                faults.Add(
                    steps,
                    last,
                    CreditStepTable.Percent,
                    "steps that add up to 100",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"the steps of rule {rule} add up to {Ratio.Normal(sum / 100m)} %"
                    )
                );
            }
        }
    }

    /// <summary>Items name rules that exist; steps done are steps of their item's rule, measured if they are counted.</summary>
    public void CheckItems(Table items, Table creditSteps, Table itemSteps)
    {
        HashSet<string> rules = new(StringComparer.Ordinal);
        HashSet<(string, string)> steps = [];
        for (var row = 0; row < creditSteps.Count; row++)
        {
            var rule = creditSteps.Texts(CreditStepTable.Rule)[row]!;
            rules.Add(rule);
            steps.Add((rule, creditSteps.Texts(CreditStepTable.Step)[row]!));
        }

        Dictionary<(int, string), int> itemRow = [];
        var owners = baseline.OwnersOf(items, ItemTable.Package);
        for (var row = 0; row < items.Count; row++)
        {
            itemRow[(owners[row], items.Texts(ItemTable.Item)[row]!)] = row;
            if (items.Texts(ItemTable.Rule)[row] is { } rule && !rules.Contains(rule))
            {
                faults.Add(
                    items,
                    row,
                    ItemTable.Rule,
                    "a rule that credit_steps has, or none",
                    $"\"{rule}\" is no rule of credit"
                );
            }
        }

        var stepOwners = baseline.OwnersOf(itemSteps, ItemStepTable.Package);
        for (var row = 0; row < itemSteps.Count; row++)
        {
            var item = itemSteps.Texts(ItemStepTable.Item)[row]!;
            if (stepOwners[row] < 0)
            {
                continue;
            }

            if (!itemRow.TryGetValue((stepOwners[row], item), out var at))
            {
                Refuse(
                    row,
                    ItemStepTable.Item,
                    "an item of the package",
                    $"\"{item}\" is no item of package {baseline.Code(stepOwners[row])}"
                );
                continue;
            }

            var step = itemSteps.Texts(ItemStepTable.Step)[row]!;
            var rule = items.Texts(ItemTable.Rule)[at];
            if (rule is null || !steps.Contains((rule, step)))
            {
                Refuse(
                    row,
                    ItemStepTable.Step,
                    "a step of the item's rule of credit",
                    $"\"{step}\" is no step of item {item}"
                );
            }

            var quantity = items.Decimals(ItemTable.Quantity)[at];
            if (
                Cell.IsGiven(itemSteps.Decimals(ItemStepTable.Quantity)[row])
                && (!Cell.IsGiven(quantity) || quantity == 0)
            )
            {
                Refuse(
                    row,
                    ItemStepTable.Quantity,
                    "no quantity, or an item with a quantity",
                    $"item {item} has no quantity to measure against"
                );
            }
        }

        void Refuse(int row, ColumnDefinition column, string expected, string message) =>
            faults.Add(itemSteps, row, column, expected, message);
    }

    private void CheckDates(
        Table status,
        ReadOnlySpan<int> rows,
        int[] periodOfRow,
        ColumnDefinition startedColumn,
        ColumnDefinition finishedColumn,
        ColumnDefinition? remainingColumn,
        string code
    )
    {
        var starts = status.Ints(startedColumn);
        var finishes = status.Ints(finishedColumn);
        // what a package reports beside its finish is left alone: only activities are computed from it
        var remaining = remainingColumn is null ? [] : status.Ints(remainingColumn);
        var started = Cell.NoInt;
        var finished = Cell.NoInt;
        var contradicts = -1;
        foreach (var row in rows)
        {
            // a finish that is taken back was a mistake, and what was said to remain beside it was right
            contradicts = finishes[row] == Cell.WithdrawnInt ? -1 : contradicts;
            CheckInPeriod(status, row, startedColumn, starts[row], periodOfRow[row]);
            CheckInPeriod(status, row, finishedColumn, finishes[row], periodOfRow[row]);
            started = starts[row] == Cell.NoInt ? started : starts[row];
            finished = finishes[row] == Cell.NoInt ? finished : finishes[row];
            if (!Cell.IsGiven(finished))
            {
                continue;
            }

            if (!Cell.IsGiven(started))
            {
                faults.Add(
                    status,
                    row,
                    finishedColumn,
                    "an actual start, in this row or an earlier period's",
                    $"{code} is finished without having started"
                );
            }
            else if (finished < started)
            {
                faults.Add(
                    status,
                    row,
                    finishedColumn,
                    "a finish on or after the actual start",
                    $"{code} finished before it started"
                );
            }

            if (remainingColumn is not null && Cell.IsGiven(remaining[row]) && remaining[row] > 0)
            {
                contradicts = contradicts < 0 ? row : contradicts;
            }
        }

        if (contradicts >= 0 && remainingColumn is not null)
        {
            faults.Add(
                status,
                contradicts,
                remainingColumn,
                "nothing, or 0, once there is an actual finish",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{code} is finished and still reports {remaining[contradicts]} working days remaining"
                )
            );
        }
    }

    private void CheckInPeriod(Table status, int row, ColumnDefinition column, int day, int period)
    {
        if (Cell.IsGiven(day) && day > periods.End(period).DayNumber)
        {
            faults.Add(
                status,
                row,
                column,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"a date on or before {periods.End(period):yyyy-MM-dd}, or the period in which it lies"
                ),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{DateOnly.FromDayNumber(day):yyyy-MM-dd} is after the end of period {periods.Codes[period]}"
                )
            );
        }
    }
}
