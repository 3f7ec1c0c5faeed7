using Plenum.Core.Network;

namespace Plenum.Workbench.Tests.Network;

/// <summary>Progress at the status date. All examples are constructed; status on Sunday 18 January 2026.</summary>
public class ProgressTests
{
    private const string Status = "2026-01-18";

    [Fact]
    public void Without_a_status_date_no_progress_counts()
    {
        var row = new Plan().Activity("A", 5).Report("A", 1, "2026-01-07").Of("A");
        Assert.False(row.IsStarted);
        Assert.Equal(Plan.Day(1, 5), row.EarlyStart);
    }

    [Fact]
    public void Work_that_is_not_done_starts_after_the_status_date()
    {
        var row = new Plan(Status).Activity("A", 5).Of("A");
        Assert.Equal((Plan.Day(1, 19), Plan.Day(1, 23)), (row.EarlyStart, row.EarlyFinish));
    }

    [Fact]
    public void Finished_work_keeps_its_dates_and_has_no_float()
    {
        var row = new Plan(Status)
            .Activity("A", 5)
            .Activity("B", 5)
            .Report("A", 2, "2026-01-06", "2026-01-14")
            .Of("A");
        Assert.Equal((Plan.Day(1, 6), Plan.Day(1, 14)), (row.EarlyStart, row.EarlyFinish));
        Assert.Equal((Plan.Day(1, 6), Plan.Day(1, 14)), (row.LateStart, row.LateFinish));
        Assert.Null(row.TotalFloat);
        Assert.Null(row.FreeFloat);
    }

    [Fact]
    public void Remaining_work_goes_on_after_the_status_date()
    {
        var row = new Plan(Status)
            .Activity("A", 10)
            .Report("A", 2, "2026-01-07", remaining: 4)
            .Of("A");
        Assert.Equal((Plan.Day(1, 7), Plan.Day(1, 22)), (row.EarlyStart, row.EarlyFinish));
        Assert.Equal(Plan.Day(1, 19), row.WorkResumes);
    }

    [Theory]
    // since Wednesday 7 January eight working days have passed
    [InlineData(10, 2)]
    [InlineData(8, 1)]
    [InlineData(3, 1)]
    public void Remaining_work_that_is_not_reported_is_what_the_days_since_the_start_leave(
        int duration,
        int remaining
    ) =>
        Assert.Equal(
            remaining,
            new Plan(Status).Activity("A", duration).Report("A", 2, "2026-01-07").Of("A").Remaining
        );

    [Fact]
    public void A_later_report_holds_and_one_after_the_status_date_does_not()
    {
        var row = new Plan(Status)
            .Activity("A", 10)
            .Report("A", 1, "2026-01-07", remaining: 9)
            .Report("A", 2, remaining: 6)
            .Report("A", 3, remaining: 1)
            .Of("A");
        Assert.Equal(6, row.Remaining);
    }

    [Fact]
    public void A_package_with_activities_is_reported_by_them()
    {
        var plan = new Plan(Status)
            .Activity("A", 5)
            .Report("J.1", 1, "2026-01-05", "2026-01-09")
            .Package("J.2", "2026-01-05", "2026-01-09")
            .Report("J.2", 1, "2026-01-05", "2026-01-09");
        Assert.False(plan.Of("A").IsStarted);
        Assert.True(plan.Of("J.2").IsFinished);
    }

    [Theory]
    // A lasts until Friday 23 January, so what is left of B waits until Monday 26, or does not
    [InlineData("logic_holds", 26, 27)]
    [InlineData("progress_rules", 19, 20)]
    public void Out_of_sequence_work_waits_for_its_predecessor_or_does_not(
        string rule,
        int resumes,
        int finish
    )
    {
        var plan = new Plan(Status, rule)
            .Activity("A", 5)
            .Activity("B", 4)
            .Link("A", "B")
            .Report("B", 2, "2026-01-14", remaining: 2);
        var row = plan.Of("B");
        Assert.Equal(Plan.Day(1, resumes), row.WorkResumes);
        Assert.Equal(Plan.Day(1, finish), row.EarlyFinish);
        Assert.Equal(Plan.Day(1, 14), row.EarlyStart);
        var link = Assert.Single(plan.Ask().OutOfSequence);
        Assert.Equal(("A", "B"), (link.From, link.To));
    }

    [Fact]
    public void Where_progress_rules_a_link_to_the_finish_still_holds()
    {
        var plan = new Plan(Status, "progress_rules")
            .Activity("A", 5)
            .Activity("B", 4)
            .Link("A", "B", "FF")
            .Report("B", 2, "2026-01-14", remaining: 2);
        Assert.Equal(Plan.Day(1, 23), plan.Of("B").EarlyFinish);
        Assert.Empty(plan.Ask().OutOfSequence);
    }

    [Fact]
    public void A_lag_from_a_finished_predecessor_still_counts()
    {
        var plan = new Plan(Status)
            .Activity("A", 5)
            .Activity("B", 1)
            .Link("A", "B", lag: 10)
            .Report("A", 2, "2026-01-05", "2026-01-13");
        Assert.Equal(Plan.Day(1, 28), plan.Of("B").EarlyStart);
    }

    [Fact]
    public void A_lag_from_the_start_of_work_under_way_is_counted_from_its_actual_start()
    {
        var plan = new Plan(Status)
            .Activity("A", 20)
            .Activity("B", 1)
            .Link("A", "B", "SS", 12)
            .Report("A", 2, "2026-01-14");
        Assert.Equal(Plan.Day(1, 30), plan.Of("B").EarlyStart);
    }

    [Fact]
    public void An_on_date_in_the_past_stays_and_shows_that_it_cannot_be()
    {
        var plan = new Plan(Status).Activity("A", 2, ("start_on", "2026-01-12"));
        Assert.Equal(Plan.Day(1, 12), plan.Of("A").EarlyStart);
        Assert.Equal(["A"], plan.Found("forecast_in_the_past"));
    }

    [Fact]
    public void Conditions_on_the_start_mean_nothing_once_work_has_begun()
    {
        var row = new Plan(Status)
            .Activity("A", 10, ("start_no_earlier", "2026-02-02"))
            .Report("A", 2, "2026-01-14", remaining: 3)
            .Of("A");
        Assert.Equal(Plan.Day(1, 21), row.EarlyFinish);
    }

    [Fact]
    public void The_driving_chain_begins_with_what_holds_it()
    {
        var plan = new Plan(Status)
            .Activity("A", 10)
            .Activity("B", 4)
            .Activity("M", 0, ("required_by", "2026-01-30"))
            .Link("A", "B", lag: 1)
            .Link("B", "M")
            .Report("A", 2, "2026-01-14", remaining: 5);
        var chain = plan.Ask().Chain;
        Assert.Equal(["A", "B", "M"], chain.Select(station => station.Activity.Code));
        Assert.Equal(
            [Holder.Progress, Holder.Link, Holder.Link],
            chain.Select(station => station.HeldBy)
        );
        Assert.Equal(1, chain[0].Leaves!.Lag);
        Assert.Null(chain[2].Leaves);
        Assert.Equal([1, 2, 3], plan.Ask().Activities.Select(row => row.ChainPlace));
    }

    [Theory]
    [InlineData(null, Holder.ProjectStart)]
    [InlineData(Status, Holder.StatusDate)]
    public void An_activity_that_waits_for_nothing_begins_with_the_start_or_the_status_date(
        string? status,
        Holder holder
    ) => Assert.Equal(holder, new Plan(status).Activity("A", 5).Ask().Chain[0].HeldBy);

    [Fact]
    public void A_package_is_as_its_activities_make_it()
    {
        var package = Assert.Single(
            new Plan(Status)
                .Activity("A", 5)
                .Activity("B", 3)
                .Activity("C", 1)
                .Link("A", "B")
                .Ask()
                .Packages
        );
        Assert.Equal("J.1", package.Package);
        Assert.Equal((Plan.Day(1, 19), Plan.Day(1, 28)), (package.EarlyStart, package.EarlyFinish));
        Assert.Equal((0, true, 1), (package.TotalFloat, package.IsDriving, package.ChainPlace));
    }

    [Fact]
    public void Work_that_began_many_years_before_the_status_date_is_counted_in_full()
    {
        var row = new Plan("2036-03-02", start: "2026-01-05")
            .Activity("A", 3_000)
            .Report("A", 1, "2026-01-05")
            .Of("A");
        // 530 whole weeks, 2 650 working days, from Monday 5 January 2026 to Sunday 2 March 2036
        Assert.Equal(350, row.Remaining);
        Assert.Equal(Plan.Start, row.EarlyStart);
    }
}
