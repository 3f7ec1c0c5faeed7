using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Tests.Network;

/// <summary>What the network says of an element: dates, float, stations of the driving chain.</summary>
public class ElementScheduleTests
{
    [Fact]
    public void A_package_has_the_dates_float_and_stations_of_its_activities()
    {
        var place = Ask(
            "J.1",
            new Plan().Activity("A", 5).Activity("B", 3).Activity("C", 2).Link("A", "B")
        );
        Assert.Equal((Plan.Start, Plan.Day(1, 14)), (place.EarlyStart, place.EarlyFinish));
        Assert.Equal(
            (3, 0, 0, 2),
            (place.Activities, place.Finished, place.LeastFloat, place.Critical)
        );
        Assert.Equal([1, 2], place.Stations);
        Assert.Equal(2, place.ChainLength);
    }

    [Fact]
    public void A_branch_has_those_of_all_packages_under_it()
    {
        var plan = new Plan().Package("J.2", "2026-01-05", "2026-01-30").Activity("A", 5);
        Assert.Equal([1], Ask("J.2", plan).Stations);
        Assert.Empty(Ask("J.1", plan).Stations);
        Assert.Equal(15, Ask("J.1", plan).LeastFloat);
        var whole = Ask("J", plan);
        Assert.Equal(
            (2, Plan.Day(1, 30), 0),
            (whole.Activities, whole.EarlyFinish, whole.LeastFloat)
        );
    }

    [Fact]
    public void Finished_work_has_no_float_left_to_tell() =>
        Assert.Null(
            Ask(
                "J.1",
                new Plan("2026-01-18").Activity("A", 5).Report("A", 1, "2026-01-05", "2026-01-09")
            ).LeastFloat
        );

    private static ElementScheduleAnswer Ask(string element, Plan plan) =>
        new ElementScheduleQuestion(element).Ask(plan.Import());
}
