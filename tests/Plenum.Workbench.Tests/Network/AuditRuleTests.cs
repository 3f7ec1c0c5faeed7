namespace Plenum.Workbench.Tests.Network;

/// <summary>Each rule of the audit on the network: a plan that it complains of, and one that is in order.</summary>
public class AuditRuleTests
{
    private const string Status = "2026-01-18";

    [Fact]
    public void Network_not_computed() =>
        AssertRule(
            "network_not_computed",
            bad: new Plan(start: null).Activity("A", 5),
            ["J"],
            good: InOrder()
        );

    [Fact]
    public void Open_start() =>
        AssertRule("open_start", InOrder().Activity("X", 5).Link("X", "Z"), ["X"], InOrder());

    [Fact]
    public void Open_finish() =>
        AssertRule("open_finish", InOrder().Activity("X", 5).Link("A", "X"), ["X"], InOrder());

    [Fact]
    public void Dangling_start() =>
        AssertRule(
            "dangling_start",
            InOrder().Activity("X", 5).Link("A", "X", "FF").Link("X", "Z"),
            ["X"],
            InOrder().Activity("X", 5).Link("A", "X", "FF").Link("S", "X").Link("X", "Z")
        );

    [Fact]
    public void Dangling_finish() =>
        AssertRule(
            "dangling_finish",
            InOrder().Activity("X", 5).Link("A", "X").Link("X", "B", "SS"),
            ["X"],
            InOrder().Activity("X", 5).Link("A", "X").Link("X", "B", "SS").Link("X", "Z")
        );

    [Fact]
    public void Link_with_lead() =>
        AssertRule(
            "link_with_lead",
            InOrder().Activity("X", 5).Link("A", "X", lag: -2).Link("X", "Z"),
            ["X"],
            InOrder().Activity("X", 5).Link("A", "X", lag: 2).Link("X", "Z")
        );

    [Fact]
    public void Start_to_finish_link() =>
        AssertRule(
            "start_to_finish_link",
            InOrder().Activity("X", 5).Link("A", "X").Link("B", "X", "SF").Link("X", "Z"),
            ["X"],
            InOrder().Activity("X", 5).Link("A", "X").Link("X", "Z")
        );

    [Fact]
    public void Redundant_link() =>
        AssertRule(
            "redundant_link",
            InOrder().Link("S", "B"),
            ["B"],
            // a lag says more than the way through A
            InOrder().Link("S", "B", lag: 20)
        );

    [Theory]
    [InlineData("start_on")]
    [InlineData("finish_on")]
    [InlineData("start_no_later")]
    [InlineData("finish_no_later")]
    public void Hard_condition(string condition) =>
        AssertRule(
            "hard_condition",
            InOrder().Activity("X", 5, (condition, "2026-01-15")).Link("S", "X").Link("X", "Z"),
            ["X"],
            InOrder()
                .Activity("X", 5, ("start_no_earlier", "2026-01-15"))
                .Link("S", "X")
                .Link("X", "Z")
        );

    [Fact]
    public void Negative_float() =>
        AssertRule(
            "negative_float",
            InOrder()
                .Activity("X", 5, ("finish_no_later", "2026-01-08"))
                .Link("S", "X")
                .Link("X", "Z"),
            ["S", "X"],
            InOrder()
                .Activity("X", 5, ("finish_no_later", "2026-01-09"))
                .Link("S", "X")
                .Link("X", "Z")
        );

    [Fact]
    public void Required_date_missed() =>
        AssertRule(
            "required_date_missed",
            InOrder().Activity("M", 0, ("required_by", "2026-01-15")).Link("B", "M"),
            ["M"],
            InOrder().Activity("M", 0, ("required_by", "2026-01-16")).Link("B", "M")
        );

    [Fact]
    public void Required_before_start() =>
        AssertRule(
            "required_before_start",
            InOrder()
                .Activity(
                    "X",
                    1,
                    ("start_no_earlier", "2026-02-02"),
                    ("required_by", "2026-01-30")
                ),
            ["X"],
            InOrder()
                .Activity("X", 1, ("start_no_earlier", "2026-02-02"), ("required_by", "2026-02-02"))
        );

    [Fact]
    public void Date_breaks_link() =>
        AssertRule(
            "date_breaks_link",
            InOrder().Activity("X", 5, ("start_on", "2026-01-09")).Link("A", "X"),
            ["X"],
            InOrder().Activity("X", 5, ("start_on", "2026-01-12")).Link("A", "X")
        );

    [Fact]
    public void Out_of_sequence() =>
        AssertRule(
            "out_of_sequence",
            InOrder(Status)
                .Report("S", 1, "2026-01-05", "2026-01-05")
                .Report("A", 1, "2026-01-06")
                .Report("B", 2, "2026-01-14"),
            ["B"],
            InOrder(Status)
                .Report("S", 1, "2026-01-05", "2026-01-05")
                .Report("A", 1, "2026-01-06", "2026-01-09")
                .Report("B", 2, "2026-01-14")
        );

    [Fact]
    public void Forecast_in_the_past() =>
        AssertRule(
            "forecast_in_the_past",
            InOrder(Status).Activity("X", 2, ("start_on", "2026-01-12")),
            ["X"],
            InOrder(Status).Activity("X", 2, ("start_on", "2026-01-19"))
        );

    [Fact]
    public void Actual_in_the_future() =>
        AssertRule(
            "actual_in_the_future",
            InOrder(Status).Report("A", 3, "2026-01-20"),
            ["A"],
            InOrder(Status).Report("A", 2, "2026-01-16")
        );

    [Fact]
    public void Long_activity() =>
        AssertRule(
            "long_activity",
            InOrder().Activity("X", 45).Link("S", "X").Link("X", "Z"),
            ["X"],
            InOrder().Activity("X", 44).Link("S", "X").Link("X", "Z")
        );

    [Fact]
    public void Long_activity_by_the_limit_of_the_project() =>
        AssertRule(
            "long_activity",
            InOrder().Setting("assess_duration_days", "4"),
            ["A", "B"],
            InOrder().Setting("assess_duration_days", "5")
        );

    [Fact]
    public void Unnamed_activity() =>
        AssertRule("unnamed_activity", InOrder().Activity("X", 5, ("name", "")), ["X"], InOrder());

    [Fact]
    public void Level_of_effort_drives() =>
        AssertRule(
            "level_of_effort_drives",
            InOrder().Package("J.9", "2026-01-05", "2026-03-27", "loe"),
            ["J.9"],
            InOrder().Package("J.9", "2026-01-05", "2026-01-09", "loe")
        );

    private static void AssertRule(string rule, Plan bad, string[] found, Plan good)
    {
        Assert.Equal(found, bad.Found(rule));
        Assert.Empty(good.Found(rule));
    }

    /// <summary>A start, two weeks of work one after the other, an end: nothing to complain of.</summary>
    private static Plan InOrder(string? status = null) =>
        new Plan(status)
            .Activity("S", 0)
            .Activity("A", 5)
            .Activity("B", 5)
            .Activity("Z", 0)
            .Link("S", "A")
            .Link("A", "B")
            .Link("B", "Z");
}
