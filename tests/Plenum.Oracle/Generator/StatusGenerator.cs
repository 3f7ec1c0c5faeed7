using Plenum.Oracle.Model;
using Plenum.Oracle.Tables;

namespace Plenum.Oracle.Generator;

/// <summary>Makes up reported progress, period by period, such that every row is valid with those before it.</summary>
internal sealed class StatusGenerator(Draft draft)
{
    private readonly Dice dice = draft.Dice;

    public void AddTo()
    {
        foreach (
            var package in draft.Packages.Where(package =>
                package.Element.Kind != "planning_package"
            )
        )
        {
            if (dice.Chance(80))
            {
                AddStatus(package);
            }

            if (package.Technique == Technique.Milestones)
            {
                AddMilestoneStatus(package);
            }

            if (package.Technique == Technique.Items)
            {
                AddItemSteps(package);
            }
        }
    }

    private IEnumerable<DraftPeriod> Reported => draft.Periods.Take(draft.PeriodsReported);

    /// <summary>What is held after the rows so far, as far as later rows must agree with it.</summary>
    private sealed class State
    {
        public DateOnly? Started { get; set; }
        public DateOnly? Finished { get; set; }
        public HashSet<string> Held { get; } = new(StringComparer.Ordinal);
    }

    private void AddStatus(DraftPackage package)
    {
        var state = new State();
        // Units without a quantity in the breakdown: the first row brings it, and it is never withdrawn.
        var mustGiveQuantity =
            package.Technique == Technique.Units && package.Element.Quantity.Length == 0;
        foreach (var period in Reported.Where(_ => dice.Chance(60)))
        {
            var row = new TextRow();
            ReportDates(state, row, period);
            ReportProgress(package, state, row, mustGiveQuantity);
            if (row.Columns.Count == 0)
            {
                continue;
            }

            var remark = dice.Chance(10) ? "late, \"see\" note" : "";
            var added = draft.Text.Add(
                "status",
                ("package", package.Code),
                ("period", period.Code),
                ("remark", remark)
            );
            foreach (var column in row.Columns)
            {
                added[column] = row[column];
            }
        }
    }

    private void ReportDates(State state, TextRow row, DraftPeriod period)
    {
        if (state.Started is null)
        {
            if (dice.Chance(55))
            {
                state.Started = dice.Day(
                    dice.Chance(25) ? draft.FirstDay : period.Begin,
                    period.End
                );
                row["started"] = Draft.Iso(state.Started.Value);
            }
        }
        else if (state.Finished is null && dice.Chance(6))
        {
            state.Started = null;
            row["started"] = "-";
        }

        if (state.Started is { } started && state.Finished is null && dice.Chance(22))
        {
            state.Finished = dice.Day(started, period.End);
            row["finished"] = Draft.Iso(state.Finished.Value);
        }
        else if (state.Finished is not null && dice.Chance(12))
        {
            state.Finished = null;
            row["finished"] = "-";
        }
    }

    private void ReportProgress(
        DraftPackage package,
        State state,
        TextRow row,
        bool mustGiveQuantity
    )
    {
        if (package.Technique == Technique.Percent || dice.Chance(5))
        {
            Report(
                state,
                row,
                "percent",
                60,
                () => dice.Chance(10) ? "100" : draft.Decimal(dice.Between(0, 10_000), 2)
            );
        }

        if (package.Technique == Technique.Units)
        {
            if (mustGiveQuantity && !state.Held.Contains("quantity"))
            {
                state.Held.Add("quantity");
                row["quantity"] = draft.Decimal(dice.Between(1, 90_000), 2);
            }
            else
            {
                Report(
                    state,
                    row,
                    "quantity",
                    45,
                    () => draft.Decimal(dice.Between(1, 90_000), 2),
                    !mustGiveQuantity
                );
            }

            Report(state, row, "units_done", 65, () => draft.Decimal(dice.Between(0, 95_000), 2));
        }

        Report(
            state,
            row,
            "etc",
            12,
            () => draft.Money(dice.Between(0, dice.Pick(10, 10_000, 3_000_000)))
        );
        Report(state, row, "remaining", 10, () => draft.Decimal(dice.Between(0, 40), 0));
        if (dice.Chance(5))
        {
            row["assumed"] = dice.Pick("0", "1");
        }
    }

    private void Report(
        State state,
        TextRow row,
        string field,
        int percent,
        Func<string> value,
        bool mayWithdraw = true
    )
    {
        if (!dice.Chance(percent))
        {
            return;
        }

        if (mayWithdraw && state.Held.Contains(field) && dice.Chance(12))
        {
            state.Held.Remove(field);
            row[field] = "-";
            return;
        }

        state.Held.Add(field);
        row[field] = value();
    }

    private void AddMilestoneStatus(DraftPackage package)
    {
        foreach (
            var milestone in draft
                .Text.Rows("milestones")
                .Where(row => row["package"] == package.Code)
        )
        {
            var held = false;
            foreach (var period in Reported.Where(_ => dice.Chance(25)))
            {
                held = !held || dice.Chance(40);
                draft.Text.Add(
                    "milestone_status",
                    ("package", package.Code),
                    ("milestone", milestone["milestone"]),
                    ("period", period.Code),
                    ("done", held ? Draft.Iso(dice.Day(period.Begin, period.End)) : "-")
                );
            }
        }
    }

    private void AddItemSteps(DraftPackage package)
    {
        foreach (var item in draft.Text.Rows("items").Where(row => row["package"] == package.Code))
        {
            foreach (
                var step in draft
                    .Text.Rows("credit_steps")
                    .Where(row => row["rule"] == item["rule"])
            )
            {
                var held = false;
                foreach (var period in Reported.Where(_ => dice.Chance(25)))
                {
                    held = !held || dice.Chance(80);
                    draft.Text.Add(
                        "item_steps",
                        ("item", item["item"]),
                        ("package", package.Code),
                        ("step", step["step"]),
                        ("period", period.Code),
                        ("quantity", held ? QuantityDone(item["quantity"]) : "-")
                    );
                }
            }
        }
    }

    /// <summary>The whole (said by nothing), or up to a little more than the item's quantity.</summary>
    private string QuantityDone(string quantity)
    {
        if (quantity.Length == 0 || dice.Chance(35))
        {
            return "";
        }

        var hundredths = (Ratio.Parse(quantity) * Ratio.Of(100)).Numerator;
        return draft.Decimal(hundredths * dice.Between(0, 110) / 100, 2);
    }
}
