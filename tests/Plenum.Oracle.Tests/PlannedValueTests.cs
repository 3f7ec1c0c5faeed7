namespace Plenum.Oracle.Tests;

/// <summary>Planned value by hand. Weeks of five working days; day 1 is a Monday. All figures constructed.</summary>
public sealed class PlannedValueTests
{
    [Theory]
    [InlineData("", 2500, 5000)]
    [InlineData("even", 2500, 5000)]
    [InlineData("falling", 4375, 7500)]
    [InlineData("rising", 625, 2500)]
    [InlineData("s_shaped", 1563, 5000)] // 0.0625 x 2.5 x 100.00 = 15.625
    public void Spread_is_taken_over_working_days(
        string spread,
        int afterOneWeek,
        int afterTwoWeeks
    )
    {
        var small = new Small().Package("A", "percent", "100", 1, 28, spread);
        Assert.Equal(afterOneWeek, small.At(1).Pv);
        Assert.Equal(afterTwoWeeks, small.At(2).Pv);
        Assert.Equal(10000, small.At(4).Pv);
    }

    [Theory]
    [InlineData("0/100", 0)]
    [InlineData("30/70", 3000)]
    public void Share_at_start_is_planned_from_the_start_and_the_rest_at_the_finish(
        string technique,
        int underWay
    )
    {
        var small = new Small().Package("A", technique, "100", 8, 21);
        Assert.Equal(0, small.At(1).Pv);
        Assert.Equal(underWay, small.At(2).Pv);
        Assert.Equal(10000, small.At(3).Pv);
    }

    [Fact]
    public void Share_at_start_counts_on_the_day_of_the_start() =>
        Assert.Equal(3000, new Small().Package("A", "30/70", "100", 7, 9).At(1).Pv);

    [Fact]
    public void Without_working_day_all_is_planned_at_the_finish()
    {
        // Day 7 and 8 are Sunday and, by exception, a Monday off.
        var small = new Small()
            .Package("A", "percent", "100", 7, 8)
            .Add("project", ("key", "calendar"), ("value", "c"))
            .Add("calendars", ("calendar", "c"), ("working", "1111100"))
            .Add("calendar_days", ("calendar", "c"), ("date", "2026-01-12"), ("working", "0"));
        Assert.Equal(0, small.At(1).Pv);
        Assert.Equal(10000, small.At(2).Pv);
    }

    [Theory]
    [InlineData("percent")]
    [InlineData("50/50")]
    [InlineData("loe")]
    public void Nothing_is_planned_without_both_dates(string technique)
    {
        Assert.Equal(0, new Small().Package("A", technique, "100", null, null).At(4).Pv);
        Assert.Equal(0, new Small().Package("A", technique, "100", 1, null).At(4).Pv);
        Assert.Equal(0, new Small().Package("A", technique, "100", null, 7).At(4).Pv);
    }

    [Fact]
    public void Milestones_are_planned_by_weight_and_those_without_date_at_the_finish()
    {
        var small = new Small()
            .Package("A", "milestones", "100", 1, 21)
            .Add(
                "milestones",
                ("package", "A"),
                ("milestone", "1"),
                ("weight", "0.5"),
                ("planned", Small.Day(7))
            )
            .Add(
                "milestones",
                ("package", "A"),
                ("milestone", "2"),
                ("weight", "1"),
                ("planned", Small.Day(8))
            )
            .Add(
                "milestones",
                ("package", "A"),
                ("milestone", "3"),
                ("weight", "1.5"),
                ("planned", "")
            );
        Assert.Equal(1667, small.At(1).Pv);
        Assert.Equal(5000, small.At(2).Pv);
        Assert.Equal(10000, small.At(3).Pv);
    }

    [Fact]
    public void Amounts_per_period_are_planned_at_their_period_end()
    {
        var small = new Small()
            .Package("A", "percent", "60", 1, 21, "periods")
            .Budget("A", "material", "40")
            .Add("budget_periods", ("package", "A"), ("period", "P1"), ("amount", "10"))
            .Add("budget_periods", ("package", "A"), ("period", "P3"), ("amount", "90"));
        Assert.Equal(600, small.At(2, "labour", "cost_element").Pv);
        Assert.Equal(400, small.At(2, "material", "cost_element").Pv);
        Assert.Equal(10000, small.At(3).Pv);
    }

    [Fact]
    public void Amounts_per_period_and_cost_element_stay_with_their_cost_element()
    {
        var small = new Small()
            .Package("A", "percent", "60", 1, 14, "periods")
            .Budget("A", "material", "40")
            .Add(
                "budget_periods",
                ("package", "A"),
                ("period", "P1"),
                ("amount", "60"),
                ("cost_element", "labour")
            )
            .Add(
                "budget_periods",
                ("package", "A"),
                ("period", "P2"),
                ("amount", "40"),
                ("cost_element", "material")
            );
        Assert.Equal(6000, small.At(1, "labour", "cost_element").Pv);
        Assert.Equal(0, small.At(1, "material", "cost_element").Pv);
        Assert.Equal(4000, small.At(2, "material", "cost_element").Pv);
    }

    [Fact]
    public void Apportioned_package_follows_the_rounded_planned_value_of_its_base()
    {
        // A: 0.02 x 1/4 = 0.005, rounded to 0.01, half of its budget; so B plans half of 100.00, and C half of B.
        var small = new Small()
            .Package("A", "percent", "0.02", 1, 28)
            .Package("B", "apportioned", "100", null, null, basis: "A")
            .Package("C", "apportioned", "1", null, null, basis: "B");
        Assert.Equal(1, small.At(1, "A").Pv);
        Assert.Equal(5000, small.At(1, "B").Pv);
        Assert.Equal(50, small.At(1, "C").Pv);
    }

    [Fact]
    public void Each_cost_element_is_rounded_by_itself()
    {
        // Three elements of 0.02: each 0.005, rounded to 0.01.
        var small = new Small()
            .Package("A", "percent", "0.02", 1, 28)
            .Budget("A", "material", "0.02")
            .Budget("A", "other", "0.02");
        Assert.Equal(3, small.At(1).Pv);
    }
}
