using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo.Tables;

/// <summary>activity_status, milestone_status, item_steps.</summary>
internal static class StatusDetailTables
{
    private const int Last = DemoTime.Closed - 1;

    public static void Write(DemoPlan plan, TableFolder tables)
    {
        var activities = tables.Open(
            "activity_status",
            "activity",
            "period",
            "started",
            "finished",
            "remaining"
        );
        var milestones = tables.Open("milestone_status", "package", "milestone", "period", "done");
        var steps = tables.Open("item_steps", "item", "package", "step", "period", "quantity");
        foreach (var package in plan.Packages.Where(package => package.Progress.IsStarted))
        {
            for (var i = 0; i < package.Activities.Count; i++)
            {
                WriteActivity(activities, package, i);
            }
            if (package.Milestone is { } milestone && package.Progress.IsFinished)
            {
                var day = package.Progress.Finish;
                activities
                    .Text(milestone.Code)
                    .Text(DemoTime.Periods[DemoTime.PeriodOf(day)].Name)
                    .Date(DemoTime.Date(day))
                    .Date(DemoTime.Date(day))
                    .Empty()
                    .EndRow();
            }
            WriteMilestones(milestones, package);
            if (package.Items.Count > 0)
            {
                WriteSteps(steps, package);
            }
        }
    }

    private static void WriteActivity(TableWriter table, Package package, int activity)
    {
        var (start, finish) = Activities.Actual(package, activity);
        if (start > DemoTime.StatusWorkDay)
        {
            return;
        }
        var code = package.Activities[activity].Code;
        var begun = DemoTime.PeriodOf(start);
        var isFinished = finish <= DemoTime.StatusWorkDay;
        var ended = isFinished ? DemoTime.PeriodOf(finish) : Last;
        if (ended > begun)
        {
            table
                .Text(code)
                .Text(DemoTime.Periods[begun].Name)
                .Date(DemoTime.Date(start))
                .Empty()
                .Empty()
                .EndRow();
        }
        table
            .Text(code)
            .Text(DemoTime.Periods[ended].Name)
            .DateOrEmpty(ended > begun ? null : DemoTime.Date(start))
            .DateOrEmpty(isFinished ? DemoTime.Date(finish) : null);
        var calendar = package.Activities[activity].Calendar;
        var left = isFinished
            ? 0
            : Activities.DaysOf(calendar, DemoTime.StatusDate.AddDays(1), DemoTime.Date(finish));
        table.WholeOrEmpty(isFinished ? null : Math.Max(1, left)).EndRow();
    }

    private static void WriteMilestones(TableWriter table, Package package)
    {
        var lastReport = DemoTime.Periods[package.Progress.LastReport ?? Last].LastWorkDay;
        for (var i = 0; i < package.Milestones.Count; i++)
        {
            var day = package.Progress.DayOf(package, i);
            if (day <= lastReport)
            {
                table
                    .Text(package.Code)
                    .Text(package.Milestones[i].Name)
                    .Text(DemoTime.Periods[DemoTime.PeriodOf(day)].Name)
                    .Date(DemoTime.Date(day))
                    .EndRow();
            }
        }
    }

    /// <summary>A row wherever the quantity done has grown; a step that is not counted is done as a whole.</summary>
    private static void WriteSteps(TableWriter table, Package package)
    {
        var steps = CreditRules.Of(package.CreditRule);
        for (var item = 0; item < package.Items.Count; item++)
        {
            for (var step = 0; step < steps.Count; step++)
            {
                var before = 0;
                for (var period = 0; period <= (package.Progress.LastReport ?? Last); period++)
                {
                    var done = Progress.StepQuantity(package, item, step, period);
                    if (done > before)
                    {
                        table
                            .Text(package.Items[item].Code)
                            .Text(package.Code)
                            .Text(steps[step].Step)
                            .Text(DemoTime.Periods[period].Name)
                            .WholeOrEmpty(package.Items[item].Quantity == 1 ? null : done)
                            .EndRow();
                        before = done;
                    }
                }
            }
        }
    }
}
