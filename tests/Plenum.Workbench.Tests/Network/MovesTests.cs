using Plenum.Core.Network.Moves;
using Plenum.Workbench.Questions;
using Plenum.Workbench.Words;

namespace Plenum.Workbench.Tests.Network;

/// <summary>Dates that have moved between two states of a plan, and what moved them. Cases constructed here.</summary>
public class MovesTests
{
    [Fact]
    public void A_longer_activity_moves_what_waits_for_it_and_nothing_else()
    {
        var answer = Between(Dig(duration: 5), Dig(duration: 8));
        Assert.Equal(["DIG", "POUR"], answer.Activities.Select(row => row.Code));
        Assert.All(answer.Activities, row => Assert.Equal(3, row.WorkDays));
        Assert.Equal((Plan.Day(1, 16), Plan.Day(1, 21)), Finish(answer, "POUR"));
        var change = Assert.Single(answer.Changes);
        Assert.Equal("DIG: duration 5 to 8", ChangeSentence.Of(change.Change));
        Assert.Equal(2, change.Moved);
        Assert.Equal("POUR", answer.Ender!.Code);
    }

    [Fact]
    public void Two_changes_share_a_move_and_their_parts_add_up_to_it()
    {
        var answer = Between(Dig(5), Dig(8, lag: 2));
        var pour = answer.Activities.Single(row => row.Code == "POUR");
        Assert.Equal(5, pour.WorkDays);
        Assert.Equal([(1, 3), (2, 2)], pour.Because);
        Assert.Equal(
            ["DIG: duration 5 to 8", "link DIG FS POUR is now FS +2"],
            answer.Changes.Select(row => ChangeSentence.Of(row.Change))
        );
    }

    [Fact]
    public void A_holiday_that_is_added_to_a_calendar_is_one_cause_for_all_its_activities()
    {
        var answer = Between(
            Dig(5).Calendar("K", "1111100").Setting("calendar", "K"),
            Dig(5)
                .Calendar("K", "1111100", ("2026-01-06", false), ("2026-01-14", false))
                .Setting("calendar", "K")
        );
        var change = Assert.Single(answer.Changes);
        Assert.Equal("days of calendar K", ChangeSentence.Of(change.Change));
        Assert.Equal(
            [("DIG", Plan.Day(1, 12)), ("POUR", Plan.Day(1, 20))],
            answer
                .Activities.Where(row => row.Code != "FENCE")
                .Select(row => (row.Code, row.FinishAfter))
        );
    }

    [Fact]
    public void A_link_that_is_added_or_taken_out_is_named_by_both_ends()
    {
        var without = new Plan().Activity("A", 5).Activity("B", 5);
        var with = new Plan().Activity("A", 5).Activity("B", 5).Link("A", "B", "SS", 3);
        Assert.Equal(
            ["link A SS +3 B added"],
            Between(without, with).Changes.Select(row => ChangeSentence.Of(row.Change))
        );
        var back = Between(with, without);
        Assert.Equal(
            ["link A SS +3 B taken out"],
            back.Changes.Select(row => ChangeSentence.Of(row.Change))
        );
        Assert.Equal(-3, Assert.Single(back.Activities).WorkDays);
    }

    [Fact]
    public void A_new_activity_moves_those_that_wait_for_it()
    {
        var answer = Between(
            new Plan().Activity("A", 5).Activity("B", 5).Link("A", "B"),
            new Plan()
                .Activity("A", 5)
                .Activity("TEST", 4)
                .Activity("B", 5)
                .Link("A", "B")
                .Link("A", "TEST")
                .Link("TEST", "B")
        );
        Assert.Equal(["TEST is new"], answer.Changes.Select(row => ChangeSentence.Of(row.Change)));
        Assert.Equal(("B", 4), answer.Activities.Select(row => (row.Code, row.WorkDays)).Single());
        var gone = Between(
            new Plan().Activity("A", 5).Activity("B", 5).Link("A", "B"),
            new Plan().Activity("B", 5)
        );
        Assert.Equal(ChangeKind.ActivityRemoved, Assert.Single(gone.Changes).Change.Kind);
        Assert.Equal(-5, Assert.Single(gone.Activities).WorkDays);
    }

    [Fact]
    public void Since_a_date_late_work_is_the_cause_of_what_it_drives()
    {
        var plan = new Plan("2026-01-18")
            .Activity("A", 10)
            .Activity("B", 5)
            .Activity("C", 3)
            .Link("A", "B")
            .Report("A", 1, "2026-01-05", remaining: 5)
            .Report("A", 2, remaining: 8)
            .Report("C", 1, "2026-01-05", "2026-01-07");
        var answer = new MovesQuestion(null, new DateOnly(2026, 1, 11)).Ask(plan.Import());
        Assert.Equal(["A", "B"], answer.Activities.Select(row => row.Code));
        Assert.All(answer.Activities, row => Assert.Equal(8, row.WorkDays));
        var cause = Assert.Single(answer.Changes, row => row.Moved > 0);
        Assert.Equal("A: 8 days remain", ChangeSentence.Of(cause.Change));
    }

    [Fact]
    public void Work_that_nobody_began_is_moved_by_the_time_that_has_passed()
    {
        var plan = new Plan("2026-01-18").Activity("A", 5).Activity("B", 5).Link("A", "B");
        var answer = new MovesQuestion(null, new DateOnly(2026, 1, 11)).Ask(plan.Import());
        var cause = Assert.Single(answer.Changes, row => row.Moved > 0);
        Assert.Equal(ChangeKind.StatusDate, cause.Change.Kind);
        Assert.Equal((2, 5), (cause.Moved, answer.Activities.First().WorkDays));
    }

    private static Plan Dig(int duration, int lag = 0) =>
        new Plan()
            .Activity("DIG", duration)
            .Activity("POUR", 5)
            .Activity("FENCE", 2)
            .Link("DIG", "POUR", lag: lag);

    private static MovesAnswer Between(Plan before, Plan after) =>
        new MovesQuestion(before.Import(), null).Ask(after.Import());

    private static (DateOnly, DateOnly) Finish(MovesAnswer answer, string code)
    {
        var row = answer.Activities.Single(row => row.Code == code);
        return (row.FinishBefore, row.FinishAfter);
    }
}
