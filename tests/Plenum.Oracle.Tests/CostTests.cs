namespace Plenum.Oracle.Tests;

/// <summary>Actual cost, commitments and estimates by hand; all figures constructed.</summary>
public sealed class CostTests
{
    [Theory]
    [InlineData("reversed", 700, 300)]
    [InlineData("", 700, 300)]
    [InlineData("as_booked", 700, 1000)]
    public void Accrual_counts_in_its_period_and_is_reversed_in_the_next(
        string setting,
        int first,
        int second
    )
    {
        var small = new Small()
            .Package("A", "percent", "100", 1, 28)
            .Add("project", ("key", "accruals"), ("value", setting))
            .Cost("A", 1, "7", "accrual")
            .Cost("A", 2, "3");
        Assert.Equal(first, small.At(1).Ac);
        Assert.Equal(second, small.At(2).Ac);
        Assert.Equal(second - first, small.At(2, alone: true).Ac);
    }

    [Fact]
    public void Committed_are_orders_up_to_the_date_and_those_without_date()
    {
        var small = new Small()
            .Package("A", "percent", "100", 1, 28)
            .Add(
                "commitments",
                ("order", "1"),
                ("line", "1"),
                ("package", "A"),
                ("cost_element", "labour"),
                ("amount", "5"),
                ("pending", "50"),
                ("date", "2026-01-18")
            )
            .Add(
                "commitments",
                ("order", "1"),
                ("line", "2"),
                ("package", "A"),
                ("cost_element", "labour"),
                ("amount", "1"),
                ("pending", ""),
                ("date", "")
            );
        Assert.Equal(100, small.At(1).Committed);
        Assert.Equal(600, small.At(2).Committed);
        Assert.Equal(500, small.At(2, alone: true).Committed);
    }

    [Fact]
    public void Estimate_at_completion_is_cost_plus_the_budget_of_remaining_work()
    {
        var small = new Small()
            .Package("A", "percent", "100", 1, 28)
            .Status("A", 1, "percent", "25")
            .Cost("A", 1, "40");
        var row = small.At(1);
        Assert.Equal((11500, 7500, -1500), ((int)row.Eac, (int)row.Etc, (int)row.Vac));
    }

    [Fact]
    public void Finished_package_has_nothing_to_come_unless_it_was_reported()
    {
        var small = new Small()
            .Package("A", "percent", "100", 1, 28)
            .Status("A", 1, "finished", "2026-01-06")
            .Cost("A", 1, "90");
        Assert.Equal(9000, small.At(1).Eac);
        Assert.Equal(9700, small.Status("A", 2, "etc", "7").At(2).Eac);
    }

    [Fact]
    public void Reported_cost_to_come_falls_with_what_is_booked_later_but_not_below_zero()
    {
        var small = new Small()
            .Package("A", "percent", "100", 1, 28)
            .Cost("A", 1, "20", "accrual")
            .Status("A", 1, "etc", "50")
            .Cost("A", 2, "30")
            .Cost("A", 3, "60");
        Assert.Equal(5000, small.At(1).Etc);
        Assert.Equal(4000, small.At(2).Etc); // 30 booked, the accrual of 20 taken back
        Assert.Equal(0, small.At(3).Etc);
        Assert.Equal(10000, small.Status("A", 4, "etc", "-").At(4).Etc);
    }

    [Fact]
    public void Reported_cost_to_come_is_divided_like_the_remaining_work()
    {
        // 0.10 over 1 : 1 : 1 by running totals: 0.03, 0.07, 0.10.
        var small = new Small()
            .Package("A", "percent", "1", 1, 28)
            .Budget("A", "material", "1")
            .Budget("A", "subcontract", "1")
            .Status("A", 1, "etc", "0.10");
        Assert.Equal(3, small.At(1, "labour", "cost_element").Etc);
        Assert.Equal(4, small.At(1, "material", "cost_element").Etc);
        Assert.Equal(3, small.At(1, "subcontract", "cost_element").Etc);
    }

    [Fact]
    public void Cost_element_whose_work_is_done_gets_nothing_of_the_reported_cost_to_come()
    {
        var small = new Small()
            .Package("A", "loe", "60", 1, 14, "periods")
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
            )
            .Status("A", 1, "etc", "7");
        Assert.Equal(0, small.At(1, "labour", "cost_element").Etc);
        Assert.Equal(700, small.At(1, "material", "cost_element").Etc);
    }

    [Fact]
    public void Reported_cost_to_come_of_finished_work_is_divided_like_the_budget_and_without_budget_it_is_other()
    {
        var small = new Small()
            .Package("A", "percent", "1", 1, 28)
            .Budget("A", "material", "3")
            .Status("A", 1, "percent", "100")
            .Status("A", 2, "etc", "0.40")
            .Package("B", "percent", "", 1, 28)
            .Status("B", 2, "etc", "0.05");
        Assert.Equal(10, small.At(2, "labour", "cost_element").Etc);
        Assert.Equal(30, small.At(2, "material", "cost_element").Etc);
        Assert.Equal(5, small.At(2, "other", "cost_element").Etc);
    }

    [Fact]
    public void Forecast_by_index_needs_a_positive_index()
    {
        var small = new Small()
            .Package("A", "percent", "100", 1, 28)
            .Status("A", 2, "percent", "50")
            .Cost("A", 1, "20")
            .Cost("A", 2, "40");
        var before = small.At(1);
        Assert.Null(before.EacCpi);
        Assert.Null(before.EacCpiSpi);
        Assert.Null(before.EacCpi3);
        var after = small.At(2);
        Assert.Equal(12000, after.EacCpi);
        Assert.Equal(12000, after.EacCpiSpi);
        Assert.Equal(12000, after.EacCpi3);
        Assert.Equal(11000, after.EacPlan);
    }

    [Fact]
    public void Index_of_three_periods_leaves_out_what_lies_before()
    {
        // Over periods 2 to 4: 30 earned, 60 spent; 60 remain.
        var small = new Small()
            .Package("A", "percent", "100", 1, 28)
            .Status("A", 1, "percent", "10")
            .Status("A", 4, "percent", "40")
            .Cost("A", 1, "500")
            .Cost("A", 2, "60");
        Assert.Equal(56000 + 12000, small.At(4).EacCpi3);
    }

    [Fact]
    public void Offsets_are_sums_over_packages_and_account_charges()
    {
        var small = new Small()
            .Add("units", ("unit", "U"))
            .Account("CA", "R", "U")
            .Package("A", "percent", "100", 1, 28)
            .Package("B", "percent", "100", 1, 28)
            .Status("A", 1, "percent", "50")
            .Status("B", 1, "percent", "10")
            .Cost("A", 1, "20")
            .Cost("B", 1, "20")
            .Cost("CA", 1, "8");
        var row = small.At(1, "CA", "account");
        Assert.Equal((3000, -1800), ((int)row.CvFavourable, (int)row.CvUnfavourable));
        Assert.Equal(new Model.Ratio(3, 4), row.CvMasking); // 1 - 12 / 48
        Assert.Equal((2500, -1500), ((int)row.SvFavourable, (int)row.SvUnfavourable));
        Assert.Equal(new Model.Ratio(3, 4), row.SvMasking); // 1 - 10 / 40
    }

    [Fact]
    public void Offsets_of_a_period_are_differences_of_running_variances()
    {
        var small = new Small()
            .Package("A", "percent", "100", 1, 28)
            .Status("A", 1, "percent", "50")
            .Cost("A", 1, "20")
            .Cost("A", 2, "5");
        var row = small.At(2, alone: true);
        Assert.Equal((0, -500), ((int)row.CvFavourable, (int)row.CvUnfavourable));
        Assert.Equal((0, -2500), ((int)row.SvFavourable, (int)row.SvUnfavourable));
        Assert.Equal(new Model.Ratio(0, 1), row.CvMasking);
    }
}
