namespace Plenum.Oracle.Tests;

/// <summary>Earned value by hand; all figures constructed.</summary>
public sealed class EarnedValueTests
{
    [Fact]
    public void Field_holds_from_the_last_row_that_gives_it_until_it_is_withdrawn()
    {
        // The rows stand out of order; the row of P3 says nothing of the percent.
        var small = new Small()
            .Package("A", "percent", "100", 1, 28)
            .Status("A", 4, "percent", "-")
            .Status("A", 2, "percent", "40.25")
            .Status("A", 3, "started", "2026-01-20")
            .Status("A", 1, "percent", "50");
        Assert.Equal(
            [5000, 4025, 4025, 0],
            Enumerable.Range(1, 4).Select(period => (int)small.At(period).Ev)
        );
    }

    [Theory]
    [InlineData("0/100", 10000)]
    [InlineData("40/60", 10000)]
    [InlineData("milestones", 10000)]
    [InlineData("percent", 10000)]
    [InlineData("units", 10000)]
    [InlineData("items", 10000)]
    [InlineData("loe", 2500)]
    [InlineData("", 0)]
    public void Finished_package_has_earned_everything_but_for_level_of_effort(
        string technique,
        int earned
    )
    {
        var small = new Small()
            .Package("A", technique, "100", 1, 28, quantity: "10")
            .Add("milestones", ("package", "A"), ("milestone", "1"), ("weight", "1"))
            .Status("A", 1, "finished", "2026-01-07");
        Assert.Equal(earned, small.At(1).Ev);
    }

    [Theory]
    [InlineData("0/100", 0)]
    [InlineData("40/60", 4000)]
    public void Started_package_has_earned_the_share_at_start(string technique, int earned)
    {
        var small = new Small()
            .Package("A", technique, "100", 1, 28)
            .Status("A", 2, "started", "2026-01-05");
        Assert.Equal(0, small.At(1).Ev);
        Assert.Equal(earned, small.At(2).Ev);
    }

    [Fact]
    public void Milestones_earn_by_weight_and_can_be_withdrawn()
    {
        var small = new Small()
            .Package("A", "milestones", "100", 1, 28)
            .Add("milestones", ("package", "A"), ("milestone", "1"), ("weight", "1"))
            .Add("milestones", ("package", "A"), ("milestone", "2"), ("weight", "2"))
            .Add(
                "milestone_status",
                ("package", "A"),
                ("milestone", "2"),
                ("period", "P1"),
                ("done", "2026-01-06")
            )
            .Add(
                "milestone_status",
                ("package", "A"),
                ("milestone", "2"),
                ("period", "P3"),
                ("done", "-")
            );
        Assert.Equal(6667, small.At(2).Ev);
        Assert.Equal(0, small.At(3).Ev);
    }

    [Fact]
    public void Units_are_measured_against_the_current_quantity_and_never_above_it()
    {
        var small = new Small()
            .Package("A", "units", "100", 1, 28, quantity: "40")
            .Status("A", 1, "units_done", "10")
            .Status("A", 2, "quantity", "50")
            .Status("A", 3, "units_done", "60")
            .Status("A", 4, "quantity", "-");
        Assert.Equal(
            [2500, 2000, 10000, 10000],
            Enumerable.Range(1, 4).Select(period => (int)small.At(period).Ev)
        );
    }

    [Fact]
    public void Items_earn_hours_by_the_steps_of_their_rule()
    {
        // Hours 30 and 10; item 1: 40 % whole and 60 % x 5/20, item 2: 40 % taken back in P2.
        var small = new Small()
            .Package("A", "items", "100", 1, 28)
            .Add("credit_steps", ("rule", "r"), ("step", "set"), ("percent", "40"))
            .Add("credit_steps", ("rule", "r"), ("step", "test"), ("percent", "60"))
            .Add(
                "items",
                ("package", "A"),
                ("item", "1"),
                ("quantity", "20"),
                ("hours", "30"),
                ("rule", "r")
            )
            .Add(
                "items",
                ("package", "A"),
                ("item", "2"),
                ("quantity", ""),
                ("hours", "10"),
                ("rule", "r")
            )
            .Add(
                "item_steps",
                ("item", "1"),
                ("package", "A"),
                ("step", "set"),
                ("period", "P1"),
                ("quantity", "")
            )
            .Add(
                "item_steps",
                ("item", "1"),
                ("package", "A"),
                ("step", "test"),
                ("period", "P1"),
                ("quantity", "5")
            )
            .Add(
                "item_steps",
                ("item", "2"),
                ("package", "A"),
                ("step", "set"),
                ("period", "P1"),
                ("quantity", "")
            )
            .Add(
                "item_steps",
                ("item", "2"),
                ("package", "A"),
                ("step", "set"),
                ("period", "P2"),
                ("quantity", "-")
            )
            .Add(
                "item_steps",
                ("item", "1"),
                ("package", "A"),
                ("step", "test"),
                ("period", "P3"),
                ("quantity", "21")
            );
        Assert.Equal(5125, small.At(1).Ev); // (30 x 0.55 + 10 x 0.4) / 40
        Assert.Equal(4125, small.At(2).Ev);
        Assert.Equal(7500, small.At(3).Ev);
    }

    [Fact]
    public void Items_without_hours_earn_nothing()
    {
        var small = new Small()
            .Package("A", "items", "100", 1, 28)
            .Add("credit_steps", ("rule", "r"), ("step", "set"), ("percent", "100"))
            .Add("items", ("package", "A"), ("item", "1"), ("hours", "0"), ("rule", "r"))
            .Add(
                "item_steps",
                ("item", "1"),
                ("package", "A"),
                ("step", "set"),
                ("period", "P1"),
                ("quantity", "")
            );
        Assert.Equal(0, small.At(1).Ev);
    }

    [Fact]
    public void Apportioned_package_earns_like_its_base_whatever_its_own_status_says()
    {
        var small = new Small()
            .Package("A", "percent", "80", 1, 28)
            .Package("B", "apportioned", "10", 1, 28, basis: "A")
            .Status("A", 1, "percent", "25")
            .Status("B", 1, "finished", "2026-01-06");
        Assert.Equal(250, small.At(1, "B").Ev);
    }
}
