using Plenum.Oracle.Tables;
using Plenum.Workbench.Questions;
using Plenum.Workbench.Tests.Audit;
using Plenum.Workbench.Tests.Oracle;

namespace Plenum.Workbench.Tests.Precision;

/// <summary>
/// Figures that can be checked by hand, from the definitions in docs/formulas.md. All projects are invented. One
/// account, four months, packages of 1 000.00 from 5 January to 27 March unless said otherwise.
/// </summary>
public class PrecisionExampleTests
{
    // 1 000 ÷ √12
    private const decimal Spread = 288.68m;

    [Theory]
    [InlineData("0/100", -500, 288.68, 1000)]
    [InlineData("50/50", 0, 288.68, 500)]
    [InlineData("25/75", -250, 288.68, 750)]
    [InlineData("100/0", 500, 288.68, 1000)]
    [InlineData("percent", 0, 57.74, 100)]
    [InlineData("loe", 0, 0, 0)]
    [InlineData("", -500, 288.68, 1000)]
    public void An_open_package_is_known_as_closely_as_its_technique_lets_it(
        string technique,
        double bias,
        double spread,
        double worst
    )
    {
        var text = OneAccount();
        Package(text, "A", technique);
        AssertError(bias, spread, worst, Row(text, "P1"));
    }

    [Fact]
    public void Before_its_start_and_from_its_finish_on_a_package_is_known()
    {
        var text = OneAccount();
        Package(text, "A", "50/50", start: "2026-02-02", finish: "2026-03-31");
        AssertError(0, 0, 0, Row(text, "P1"));
        AssertError(0, (double)Spread, 500, Row(text, "P2"));
        AssertError(0, 0, 0, Row(text, "P3"));
    }

    [Fact]
    public void Of_milestones_the_next_one_is_open_by_plan_and_later_by_what_is_reached()
    {
        var text = OneAccount();
        Package(text, "A", "milestones");
        Milestone(text, "first", "2", "2026-01-20");
        Milestone(text, "second", "3", "2026-02-20");
        Milestone(text, "third", "5", "2026-03-27");
        AssertError(-150, 86.60, 300, Row(text, "P1"));
        AssertError(-250, 144.34, 500, Row(text, "P2"));

        Started(text);
        AssertError(-100, 57.74, 200, Row(text, "P1"));
        text.Add(
            "milestone_status",
            ("package", "A"),
            ("milestone", "second"),
            ("period", "P1"),
            ("done", "2026-01-30")
        );
        AssertError(-100, 57.74, 200, Row(text, "P1"));
        text.Add(
            "milestone_status",
            ("package", "A"),
            ("milestone", "first"),
            ("period", "P1"),
            ("done", "2026-01-30")
        );
        AssertError(-250, 144.34, 500, Row(text, "P1"));
    }

    [Fact]
    public void Of_units_one_is_open_and_never_more_than_the_rest()
    {
        var text = OneAccount();
        Package(text, "A", "units");
        SoundProject.Element(text, "A")["quantity"] = "20";
        AssertError(-25, 14.43, 50, Row(text, "P1"));
        Started(text)["units_done"] = "19.5";
        AssertError(-12.5, 7.22, 25, Row(text, "P1"));
        text.Rows("status")[0]["quantity"] = "40";
        AssertError(-12.5, 7.22, 25, Row(text, "P1"));
    }

    [Fact]
    public void Of_items_the_next_step_of_the_first_item_that_is_not_through_is_open()
    {
        var text = OneAccount();
        Package(text, "A", "items");
        foreach (var (step, percent, order) in new[] { ("erect", "60", "1"), ("test", "40", "2") })
        {
            text.Add(
                "credit_steps",
                ("rule", "pipes"),
                ("step", step),
                ("percent", percent),
                ("order", order)
            );
        }

        foreach (var (item, hours) in new[] { ("line 1", "30"), ("line 2", "10") })
        {
            text.Add(
                "items",
                ("package", "A"),
                ("item", item),
                ("hours", hours),
                ("rule", "pipes"),
                ("quantity", "10")
            );
        }

        // line 1: 30 of 40 hours, erected 60 %: 0.45
        Started(text);
        AssertError(-225, 129.90, 450, Row(text, "P1"));
        Step(text, "line 1", "erect", "");
        AssertError(-150, 86.60, 300, Row(text, "P1"));
        Step(text, "line 1", "test", "");
        AssertError(-75, 43.30, 150, Row(text, "P1"));
        // reported by the metre: one of ten
        Step(text, "line 2", "erect", "4");
        AssertError(-7.5, 4.33, 15, Row(text, "P1"));
    }

    [Fact]
    public void Biases_and_worst_cases_add_and_spreads_add_by_root_of_squares()
    {
        var text = OneAccount();
        Package(text, "A", "0/100");
        Package(text, "B", "percent");
        var row = Row(text, "P1");
        AssertError(-500, 294.39, 1100, row);
        // √(500² + 294.39²) ÷ 2 000
        Assert.Equal(0.290115m, Math.Round(row.Precision!.Value, 6));
    }

    [Fact]
    public void Apportioned_effort_is_off_by_the_share_of_its_base_and_together_with_it()
    {
        var text = OneAccount();
        Package(text, "A", "50/50");
        Package(text, "B", "apportioned")["base"] = "A";
        AssertError(0, 2 * 288.675, 1000, Row(text, "P1"));
        Assert.Equal(1, Row(text, "P1").Open);
    }

    [Fact]
    public void What_has_not_started_by_report_has_no_progress_and_that_is_known()
    {
        var text = OneAccount();
        Package(text, "A", "0/100");
        Package(text, "B", "0/100");
        AssertError(-1000, 408.25, 2000, Row(text, "P1"));
        Started(text);
        AssertError(-500, 288.68, 1000, Row(text, "P1"));
        // later months are seen by their baseline dates
        AssertError(-1000, 408.25, 2000, Row(text, "P2"));
    }

    [Fact]
    public void Level_of_effort_is_left_out_and_its_share_is_told()
    {
        var text = OneAccount();
        Package(text, "A", "50/50");
        Package(text, "B", "loe");
        var row = Row(text, "P1");
        Assert.Equal(0.5m, row.LevelOfEffortShare);
        AssertError(0, 288.68, 500, row);
    }

    [Fact]
    public void An_account_is_too_coarse_from_its_threshold_on_and_what_to_split_brings_it_below()
    {
        var text = OneAccount();
        Package(text, "A", "0/100", amount: "1000");
        Package(text, "B", "0/100", amount: "400");
        Package(text, "C", "percent", amount: "2600");
        var row = Row(text, "P1");
        Assert.False(row.IsDetailedEnough);
        Assert.Equal(["A"], row.Split.Select(part => part.Package));
        // without A: bias −200, spread √(115.47² + 150.11²) = 189.39; precision 275.44 ÷ 4 000
        Assert.Equal(
            Math.Round(row.Precision!.Value - 0.068861m, 4),
            Math.Round(row.Split[0].Buys, 4)
        );
        SoundProject.Set(text, "variance_threshold", "20");
        Assert.True(Row(text, "P1").IsDetailedEnough);
    }

    [Fact]
    public void Neighbours_that_tell_no_more_apart_than_together_are_to_be_merged()
    {
        var text = OneAccount();
        Package(text, "A", "percent", amount: "1000000");
        Package(text, "B", "0/100", "2026-03-02", "2026-03-13", "500");
        Package(text, "C", "0/100", "2026-03-16", "2026-03-27", "500");
        var pair = Assert.Single(Row(text, "P3").Merge);
        Assert.Equal(("B", "C", 0m), (pair.First, pair.Second, pair.Costs));

        // done in February and 300 000 not begun: as one package that would not be known any more
        SoundProject.Package(text, "B")["start"] = "2026-02-02";
        SoundProject.Package(text, "B")["finish"] = "2026-02-27";
        SoundProject.Row(text, "budget", "C")["amount"] = "300000";
        Assert.Empty(
            new PrecisionQuestion().Ask(Answers.Import(text)).Rows.SelectMany(row => row.Merge)
        );
    }

    [Fact]
    public void A_variance_within_what_is_not_known_is_noise()
    {
        var text = OneAccount();
        Package(text, "A", "50/50");
        Started(text);
        Spent(text, "900");
        // earned 500; the true value lies evenly between 0 and 1 000, so between 25 and 975 with 95 %
        var noise = Certainty(text).CostVariance;
        Assert.Equal((-400m, -875m, 75m), (noise.Amount, noise.Low, noise.High));
        Assert.False(noise.IsToldFromZero);
        Assert.False(noise.NeedsExplanation);

        text.Rows("actuals")[0]["amount"] = "1000";
        Assert.True(Certainty(text).CostVariance.NeedsExplanation);
    }

    [Fact]
    public void A_variance_whose_sign_comes_from_the_technique_asks_for_no_explanation()
    {
        var text = OneAccount();
        Package(text, "A", "milestones");
        Milestone(text, "all", "1", "2026-03-27");
        Package(text, "B", "milestones");
        text.Add(
            "milestones",
            ("package", "B"),
            ("milestone", "all"),
            ("weight", "1"),
            ("planned", "2026-03-27")
        );
        Started(text);
        text.Add("status", ("package", "B"), ("period", "P1"), ("started", "2026-01-05"));
        Spent(text, "210");
        // earned 0; truly 1 000 in the middle, 224 to 1 776 with 95 %
        var certainty = Certainty(text).CostVariance;
        Assert.Equal(-210m, certainty.Amount);
        Assert.InRange(certainty.Low, 10m, 20m);
        Assert.True(certainty.IsToldFromZero);
        Assert.True(certainty.HasOtherSign);
        Assert.False(certainty.NeedsExplanation);
    }

    [Fact]
    public void The_package_that_would_tell_most_is_named()
    {
        var text = OneAccount();
        Package(text, "A", "50/50", amount: "1000");
        Package(text, "B", "percent", amount: "2000");
        var certainty = Certainty(text);
        Assert.Equal("A", certainty.Finest);
        Assert.InRange(certainty.FinestBuys!.Value, 0.05m, 0.1m);
    }

    [Fact]
    public void Rows_of_the_certainty_answer_are_those_of_the_accounts_answer()
    {
        var project = Answers.Import(SoundProject.Make());
        foreach (var cut in new[] { "account", "element", "unit", "package", "cost_element" })
        {
            var accounts = new AccountsQuestion(null, cut).Ask(project);
            var certainty = new CertaintyQuestion(null, cut).Ask(project);
            Assert.Equal(
                accounts.Rows.Select(row => (row.Code, row.CostVariance, row.ScheduleVariance)),
                certainty.Rows.Select(row =>
                    (row.Code, row.CostVariance.Amount, row.ScheduleVariance.Amount)
                )
            );
            Assert.Equal(accounts.Total.CostVariance, certainty.Total.CostVariance.Amount);
        }
    }

    private static TextProject OneAccount()
    {
        var text = new TextProject();
        SoundProject.Set(text, "currency", "EUR");
        SoundProject.Set(text, "start", "2026-01-01");
        foreach (
            var (period, end) in new[]
            {
                ("P1", "2026-01-31"),
                ("P2", "2026-02-28"),
                ("P3", "2026-03-31"),
                ("P4", "2026-04-30"),
            }
        )
        {
            text.Add("periods", ("period", period), ("end", end));
        }

        text.Add("units", ("unit", "U"));
        text.Add("people", ("person", "ann"));
        SoundProject.AddElement(text, "W", "", "Works", "project");
        text.Add(
            "accounts",
            ("account", "ACC"),
            ("element", "W"),
            ("unit", "U"),
            ("manager", "ann")
        );
        return text;
    }

    private static TextRow Package(
        TextProject text,
        string code,
        string technique,
        string start = "2026-01-05",
        string finish = "2026-03-27",
        string amount = "1000"
    )
    {
        SoundProject.AddElement(text, code, "W", code);
        return SoundProject.AddPackage(text, code, technique, start, finish, amount);
    }

    private static void Milestone(TextProject text, string code, string weight, string planned) =>
        text.Add(
            "milestones",
            ("package", "A"),
            ("milestone", code),
            ("weight", weight),
            ("planned", planned)
        );

    private static TextRow Started(TextProject text) =>
        text.Add("status", ("package", "A"), ("period", "P1"), ("started", "2026-01-05"));

    private static void Step(TextProject text, string item, string step, string quantity) =>
        text.Add(
            "item_steps",
            ("item", item),
            ("package", "A"),
            ("step", step),
            ("period", "P1"),
            ("quantity", quantity)
        );

    private static void Spent(TextProject text, string amount) =>
        text.Add(
            "actuals",
            ("document", "D"),
            ("line", "1"),
            ("charge", "A"),
            ("period", "P1"),
            ("cost_element", "labour"),
            ("amount", amount)
        );

    private static PrecisionRow Row(TextProject text, string period) =>
        new PrecisionQuestion(null, "ACC")
            .Ask(Answers.Import(text))
            .Rows.Single(row => row.Period == period);

    private static CertaintyRow Certainty(TextProject text) =>
        new CertaintyQuestion(new DateOnly(2026, 1, 31)).Ask(Answers.Import(text)).Rows.Single();

    private static void AssertError(double bias, double spread, double worst, PrecisionRow row)
    {
        Assert.Equal(bias, (double)row.Bias, 0.011);
        Assert.Equal(spread, (double)row.Spread, 0.011);
        Assert.Equal(worst, (double)row.Worst, 0.011);
    }
}
