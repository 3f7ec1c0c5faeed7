using Plenum.Oracle.Model;

namespace Plenum.Oracle.Tests;

/// <summary>Earned schedule and the answer's date by hand; all figures constructed.</summary>
public sealed class TimeTests
{
    [Fact]
    public void Periods_of_a_row_begin_with_its_first_planned_value()
    {
        // Planned 50 in each of P2 and P3; 25 earned at the end of P3.
        var small = new Small()
            .Package("A", "percent", "100", 8, 21)
            .Status("A", 3, "percent", "25");
        var before = small.At(1);
        Assert.Equal((Ratio.Zero, 0), (before.Es, before.AtPeriods));
        Assert.Null(before.SpiT);
        var row = small.At(3);
        Assert.Equal(new Ratio(1, 2), row.Es);
        Assert.Equal(2, row.AtPeriods);
        Assert.Equal(new Ratio(1, 4), row.SpiT);
        // 2 / 0.25 = 8 periods from P2: the end of the ninth week.
        Assert.Equal(Small.End(9), row.ForecastFinish);
    }

    [Fact]
    public void Plateau_of_planned_value_is_passed_at_once()
    {
        // PV 50, 50, 100: with 50 earned the largest N with PV_N <= EV is 2.
        var small = new Small()
            .Package("A", "percent", "50", 1, 7)
            .Package("B", "percent", "50", 15, 21)
            .Status("A", 1, "percent", "100");
        Assert.Equal(Ratio.Of(2), small.At(1).Es);
    }

    [Fact]
    public void Actual_time_stops_when_the_last_planned_value_is_earned()
    {
        var small = new Small()
            .Package("A", "percent", "100", 1, 14)
            .Status("A", 1, "percent", "90")
            .Status("A", 3, "percent", "100");
        var row = small.At(4);
        Assert.Equal((Ratio.Of(2), 3), (row.Es, row.AtPeriods));
        Assert.Equal(new Ratio(2, 3), row.SpiT);
        Assert.Equal(Small.End(3), row.ForecastFinish);
    }

    [Fact]
    public void Work_done_before_its_first_period_has_no_index()
    {
        var small = new Small()
            .Package("A", "percent", "100", 15, 21)
            .Status("A", 1, "percent", "100");
        var row = small.At(4);
        Assert.Equal((Ratio.One, 0), (row.Es, row.AtPeriods));
        Assert.Null(row.SpiT);
        Assert.Null(row.ForecastFinish);
    }

    [Fact]
    public void Row_without_planned_value_has_no_schedule()
    {
        var row = new Small()
            .Package("A", "percent", "100", null, null)
            .Status("A", 1, "percent", "50")
            .At(2);
        Assert.Null(row.Es);
        Assert.Null(row.AtPeriods);
        Assert.Null(row.SpiT);
    }

    [Fact]
    public void Forecast_finish_needs_the_start_only_for_the_first_period()
    {
        static Small Example(bool start) =>
            new Small(start)
                .Package("A", "percent", "100", 1, 7)
                .Package("B", "percent", "100", 8, 14)
                .Status("A", 2, "percent", "60")
                .Status("B", 2, "percent", "60");
        // A: ES 0.6 after 2 periods, 1 / 0.3 = 3.33 periods: the fourth week, day 3 of 7.
        Assert.Equal(Small.FirstDay.AddDays(23), Example(true).At(2, "A").ForecastFinish);
        Assert.Null(Example(false).At(2, "A").ForecastFinish);
        // B: ES 0.6 after 1 period, 1.67 periods from P2: the third week, day 5 of 7.
        Assert.Equal(Small.FirstDay.AddDays(18), Example(false).At(2, "B").ForecastFinish);
    }

    [Fact]
    public void Measures_are_taken_at_the_last_period_end_on_or_before_the_date()
    {
        var model = new Small().Package("A", "percent", "100", 1, 28).Cost("A", 1, "5").Model();
        Assert.Equal(Small.End(1), model.Accounts(new Question(Small.End(2).AddDays(-1))).At);
        Assert.Equal(Small.End(2), model.Accounts(new Question(Small.End(2))).At);
        Assert.Equal(Small.End(4), model.Accounts(new Question(Small.End(4).AddDays(100))).At);
        // Without date nor status date: the last period with status or cost.
        Assert.Equal(Small.End(1), model.Accounts(new Question()).At);
    }

    [Fact]
    public void Status_date_is_the_date_when_none_is_asked_for()
    {
        var small = new Small().Package("A", "percent", "100", 1, 28).Cost("A", 4, "5");
        small.Add("project", ("key", "status_date"), ("value", Small.Iso(Small.End(2).AddDays(2))));
        Assert.Equal(Small.End(2), small.Model().Accounts(new Question()).At);
    }

    [Fact]
    public void Before_the_first_period_end_only_the_budget_stands()
    {
        var model = new Small().Package("A", "percent", "100", 1, 28).Cost("A", 1, "5").Model();
        var answer = model.Accounts(new Question(Small.End(1).AddDays(-1), "package"));
        Assert.Null(answer.At);
        var row = answer.Row("A");
        Assert.Equal(
            (10000, 0, 0, 0, 10000),
            ((int)row.Bac, (int)row.Pv, (int)row.Ev, (int)row.Ac, (int)row.Eac)
        );
        Assert.Null(row.Spi);
        Assert.Equal((Ratio.Zero, 0), (row.Es, row.AtPeriods));
    }
}
