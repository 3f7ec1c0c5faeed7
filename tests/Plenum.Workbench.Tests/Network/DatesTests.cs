using Plenum.Core.Network;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Tests.Network;

/// <summary>
/// Dates as a planner works them out on a calendar. All examples are constructed; January 2026: Monday 5, 12, 19, 26.
/// </summary>
public class DatesTests
{
    /// <summary>The example of docs/formulas.md.</summary>
    [Fact]
    public void The_example_of_the_formulas_page()
    {
        var plan = new Plan()
            .Activity("A", 4, ("start_no_earlier", "2026-01-08"))
            .Activity("B", 3)
            .Activity("C", 1)
            .Link("A", "B", lag: 2)
            .Link("A", "C", lag: -1);
        AssertDates(plan, "A", (1, 8), (1, 13));
        AssertDates(plan, "B", (1, 16), (1, 20));
        AssertDates(plan, "C", (1, 13), (1, 13));
        Assert.Equal(5, plan.Of("C").TotalFloat);
    }

    [Theory]
    // A takes Monday 5 to Wednesday 7 January; B takes two days
    [InlineData("FS", 0, 8, 9)]
    [InlineData("FS", 2, 12, 13)]
    [InlineData("FS", -1, 7, 8)]
    [InlineData("SS", 0, 5, 6)]
    [InlineData("SS", 3, 8, 9)]
    [InlineData("FF", 0, 6, 7)]
    [InlineData("FF", 2, 8, 9)]
    [InlineData("FF", 4, 12, 13)]
    [InlineData("SF", 0, 5, 6)]
    [InlineData("SF", 5, 8, 9)]
    public void A_link_with_lag_or_lead_dates_its_successor(
        string type,
        int lag,
        int start,
        int finish
    ) =>
        AssertDates(
            new Plan().Activity("A", 3).Activity("B", 2).Link("A", "B", type, lag),
            "B",
            (1, start),
            (1, finish)
        );

    [Fact]
    public void A_lag_is_counted_in_the_calendar_of_the_predecessor()
    {
        // concrete hardens every day of the week: 7 days on from Friday 9 is Friday 16, so B starts on Monday 19
        var plan = new Plan()
            .Calendar("all", "1111111")
            .Activity("A", 5, ("calendar", "all"))
            .Activity("B", 1)
            .Link("A", "B", lag: 7);
        AssertDates(plan, "A", (1, 5), (1, 9));
        AssertDates(plan, "B", (1, 19), (1, 19));
    }

    [Fact]
    public void Work_passes_over_holidays_and_uses_worked_Saturdays()
    {
        var plan = new Plan()
            .Calendar("site", "1111100", ("2026-01-07", false), ("2026-01-10", true))
            .Activity("A", 5, ("calendar", "site"));
        AssertDates(plan, "A", (1, 5), (1, 10));
    }

    [Fact]
    public void A_package_without_activities_takes_its_duration_from_the_baseline_and_nothing_else()
    {
        var plan = new Plan().Package("J.2", "2026-02-02", "2026-02-06");
        AssertDates(plan, "J.2", (1, 5), (1, 9));
        Assert.Equal(5, plan.Of("J.2").Duration);
    }

    [Fact]
    public void A_start_no_earlier_waits_for_the_later_of_logic_and_date()
    {
        var plan = new Plan().Activity("A", 3).Activity("B", 1).Activity("C", 1);
        plan.Link("A", "B").Link("A", "C");
        AssertDates(
            new Plan()
                .Activity("A", 3)
                .Activity("B", 1, ("start_no_earlier", "2026-01-06"))
                .Link("A", "B"),
            "B",
            (1, 8),
            (1, 8)
        );
        AssertDates(
            new Plan()
                .Activity("A", 3)
                .Activity("B", 1, ("start_no_earlier", "2026-01-17"))
                .Link("A", "B"),
            "B",
            (1, 19),
            (1, 19)
        );
    }

    [Fact]
    public void A_finish_no_earlier_moves_the_whole_of_the_work() =>
        AssertDates(
            new Plan().Activity("A", 3, ("finish_no_earlier", "2026-01-11")),
            "A",
            (1, 8),
            (1, 12)
        );

    [Fact]
    public void An_on_date_wins_against_logic_and_the_broken_link_is_reported()
    {
        var plan = new Plan()
            .Activity("A", 5)
            .Activity("B", 2, ("start_on", "2026-01-07"))
            .Link("A", "B");
        AssertDates(plan, "B", (1, 7), (1, 8));
        var broken = Assert.Single(plan.Ask().BrokenLinks);
        Assert.Equal(("A", "B", 3), (broken.From, broken.To, broken.WorkDays));
        // and the work before it cannot be in time for it
        Assert.Equal(-3, plan.Of("A").TotalFloat);
        Assert.Equal(
            ("B", DateCondition.StartOn),
            (plan.Of("A").Cause!.Activity, plan.Of("A").Cause!.Condition)
        );
    }

    [Fact]
    public void A_no_later_than_date_takes_float_away_and_is_named_as_the_cause()
    {
        var plan = new Plan()
            .Activity("A", 5)
            .Activity("B", 5)
            .Activity("C", 10, ("finish_no_later", "2026-01-28"))
            .Link("A", "B")
            .Link("B", "C");
        Assert.Equal([-2, -2, -2], plan.Ask().Activities.Select(row => row.TotalFloat));
        Assert.Equal(3, plan.Ask().CriticalCount);
        Assert.All(
            plan.Ask().Activities,
            row =>
                Assert.Equal(
                    ("C", "finish_no_later", Plan.Day(1, 28)),
                    (row.Cause!.Activity, row.Cause.Word, row.Cause.Date)
                )
        );
        Assert.Equal(Plan.Day(1, 30), plan.Ask().Finish);
    }

    [Fact]
    public void A_required_date_moves_nothing_and_is_compared()
    {
        var plan = new Plan().Activity("A", 5, ("required_by", "2026-01-07"));
        AssertDates(plan, "A", (1, 5), (1, 9));
        Assert.Equal((0, -2), (plan.Of("A").TotalFloat, plan.Of("A").RequiredFloat));
    }

    [Fact]
    public void A_milestone_is_dated_by_the_day_on_which_its_driver_ends()
    {
        var plan = new Plan()
            .Activity("A", 5)
            .Activity("M", 0)
            .Activity("B", 1)
            .Link("A", "M")
            .Link("M", "B");
        AssertDates(plan, "M", (1, 9), (1, 9));
        AssertDates(plan, "B", (1, 12), (1, 12));
    }

    [Fact]
    public void A_milestone_that_nothing_drives_is_dated_by_the_day_that_begins()
    {
        var plan = new Plan()
            .Activity("M", 0)
            .Activity("N", 0, ("start_no_earlier", "2026-01-17"))
            .Activity("E", 0, ("finish_no_earlier", "2026-01-17"))
            .Activity("A", 30);
        AssertDates(plan, "M", (1, 5), (1, 5));
        AssertDates(plan, "N", (1, 17), (1, 17));
        AssertDates(plan, "E", (1, 17), (1, 17));
    }

    [Fact]
    public void A_milestone_that_a_start_drives_is_dated_by_the_day_that_begins()
    {
        var plan = new Plan()
            .Activity("A", 5, ("start_no_earlier", "2026-01-12"))
            .Activity("M", 0)
            .Link("A", "M", "SS");
        AssertDates(plan, "M", (1, 12), (1, 12));
        AssertDates(
            new Plan()
                .Activity("A", 5, ("start_no_earlier", "2026-01-12"))
                .Activity("M", 0)
                .Link("A", "M", "SS", 2),
            "M",
            (1, 13),
            (1, 13)
        );
    }

    [Fact]
    public void A_milestone_after_a_milestone_has_the_same_date()
    {
        var plan = new Plan().Activity("M", 0).Activity("N", 0).Activity("A", 5);
        plan.Link("M", "N").Link("N", "A");
        AssertDates(plan, "N", (1, 5), (1, 5));
    }

    [Fact]
    public void Several_activities_end_the_project_and_the_greatest_float_among_them_is_critical()
    {
        var plan = new Plan()
            .Activity("A", 5, ("finish_no_later", "2026-01-08"))
            .Activity("B", 5)
            .Activity("C", 4);
        var answer = plan.Ask();
        Assert.Equal(0, answer.CriticalFloat);
        Assert.Equal(
            ["A", "B"],
            answer.Activities.Where(row => row.IsCritical).Select(row => row.Code)
        );
    }

    [Fact]
    public void Independent_and_interfering_float_divide_what_there_is()
    {
        // the long way A (10) and E (1); the short way A or P (3), then B (2), then E
        var plan = new Plan()
            .Activity("A", 10)
            .Activity("P", 3)
            .Activity("B", 2)
            .Activity("E", 1)
            .Link("A", "E")
            .Link("P", "B")
            .Link("B", "E");
        var before = plan.Of("P");
        var after = plan.Of("B");
        Assert.Equal((5, 0, 5, 0), Floats(before));
        Assert.Equal((5, 5, 0, 0), Floats(after));
        // a fixed date for P leaves B its float whatever P does
        var held = new Plan()
            .Activity("A", 10)
            .Activity("P", 3, ("finish_no_later", "2026-01-07"))
            .Activity("B", 2)
            .Activity("E", 1)
            .Link("A", "E")
            .Link("P", "B")
            .Link("B", "E");
        Assert.Equal((5, 5, 0, 5), Floats(held.Of("B")));

        static (int?, int?, int?, int?) Floats(ActivityRow row) =>
            (row.TotalFloat, row.FreeFloat, row.InterferingFloat, row.IndependentFloat);
    }

    private static void AssertDates(
        Plan plan,
        string code,
        (int Month, int Day) start,
        (int Month, int Day) finish
    )
    {
        var row = plan.Of(code);
        Assert.Equal(
            (Plan.Day(start.Month, start.Day), Plan.Day(finish.Month, finish.Day)),
            (row.EarlyStart, row.EarlyFinish)
        );
    }
}
