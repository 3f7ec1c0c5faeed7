using System.Globalization;
using Plenum.Core.Network.Assessment;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Tests.Network;

/// <summary>The 14-point assessment, metric by metric, on plans made so that the counts are known.</summary>
public class AssessmentTests
{
    private const string Status = "2026-03-15";

    /// <summary>
    /// Constructed: 200 tasks, 6 without predecessor, 5 without successor, 2 of them without both; 400 links, of which 12 have
    /// a lag, 1 a lead, 48 are not finish to start.
    /// </summary>
    [Fact]
    public void The_constructed_counts_of_logic_and_links()
    {
        var metrics = Assess(TwoHundredTasks());
        AssertMetric(metrics[0], "logic", 9, 200, 0.045m, true);
        AssertMetric(metrics[1], "leads", 1, 400, 0.0025m, false);
        AssertMetric(metrics[2], "lags", 12, 400, 0.03m, true);
        AssertMetric(metrics[3], "relationship_types", 352, 400, 0.88m, false);
        Assert.Equal(9, metrics[0].Activities.Count);
        Assert.Equal(48, metrics[3].Links.Count);
    }

    /// <summary>Constructed: 50 tasks due, 46 finished of which 3 were not yet due, 2 without baseline.</summary>
    [Fact]
    public void The_constructed_counts_of_baseline_execution()
    {
        var plan = new Plan(Status);
        for (var task = 1; task <= 53; task++)
        {
            var isDue = task <= 50;
            var code = "J.T" + Number(task);
            plan.Package(
                code,
                isDue ? "2026-02-02" : "2026-04-06",
                isDue ? "2026-02-06" : "2026-04-10"
            );
            if (task <= 43 || !isDue)
            {
                plan.Report(code, 9, "2026-03-02", "2026-03-06");
            }
        }

        // the package of the plan itself has no dates either
        plan.Package("J.U");
        var metrics = Assess(plan);
        AssertMetric(metrics[13], "baseline_execution_index", 46, 52, 46 / 52m, false);
        Assert.Equal(0.884615m, decimal.Round(metrics[13].Value!.Value, 6));
        // the 43 that were done four weeks late, and the 7 that are not done at all
        AssertMetric(metrics[10], "missed_tasks", 50, 50, 1, false);
        Assert.Equal(9, metrics[13].Activities.Count);
    }

    [Theory]
    [InlineData("start_on")]
    [InlineData("finish_on")]
    [InlineData("start_no_later")]
    [InlineData("finish_no_later")]
    public void Hard_constraints_are_on_dates_and_no_later_than_dates(string condition)
    {
        var metric = Assess(
            new Plan()
                .Activity("A", 5, (condition, "2026-01-14"))
                .Activity("B", 5, ("start_no_earlier", "2026-01-14"))
                .Activity("M", 0, (condition, "2026-01-14"))
        )[4];
        AssertMetric(metric, "hard_constraints", 1, 2, 0.5m, false);
    }

    [Fact]
    public void High_float_is_more_than_44_working_days_and_negative_float_less_than_none()
    {
        var plan = new Plan()
            .Activity("Long", 60)
            .Activity("A", 16)
            .Activity("B", 15)
            .Activity("C", 5, ("finish_no_later", "2026-01-08"));
        var metrics = Assess(plan);
        AssertMetric(metrics[5], "high_float", 1, 4, 0.25m, false);
        AssertMetric(metrics[6], "negative_float", 1, 4, 0.25m, false);
    }

    [Fact]
    public void High_duration_looks_at_the_planning_window_where_one_is_set()
    {
        Plan Two() =>
            new Plan()
                .Package("J.2", "2026-01-12", "2026-03-20")
                .Package("J.3", "2026-08-03", "2026-10-16");
        AssertMetric(Assess(Two())[7], "high_duration", 2, 3, 2 / 3m, false);
        var narrow = Assess(Two().Setting("assess_window_days", "60"))[7];
        AssertMetric(narrow, "high_duration", 1, 3, 1 / 3m, false);
    }

    [Fact]
    public void Invalid_dates_are_forecasts_before_and_actuals_after_the_status_date()
    {
        var metric = Assess(
            new Plan(Status)
                .Activity("Past", 2, ("start_on", "2026-03-12"))
                .Activity("Future", 5)
                .Activity("Sound", 5)
                .Report("Future", 12, "2026-03-25")
                .Report("Sound", 9, "2026-03-05")
        )[8];
        AssertMetric(metric, "invalid_dates", 2, 3, 2 / 3m, false);
    }

    [Fact]
    public void Resources_are_hours_or_money_of_the_package_and_asked_for_only_where_required()
    {
        Plan Two() =>
            new Plan()
                .Package("J.2", "2026-01-12", "2026-01-16", budget: "1000")
                .Package("J.3", "2026-01-12", "2026-01-16");
        var free = Assess(Two())[9];
        Assert.Null(free.Threshold);
        AssertMetric(free, "resources", 1, 3, 1 / 3m, true);
        Assert.False(Assess(Two().Setting("assess_resources", "0"))[9].Pass);
    }

    [Fact]
    public void A_delay_of_the_first_critical_task_arrives_at_the_end()
    {
        var metric = Assess(
            new Plan().Activity("A", 5).Activity("B", 5).Activity("C", 1).Link("A", "B")
        )[11];
        AssertMetric(metric, "critical_path_test", 600, 600, 1, true);
    }

    [Fact]
    public void A_date_that_holds_the_end_keeps_a_delay_from_arriving()
    {
        var plan = new Plan()
            .Activity("A", 5)
            .Activity("B", 5, ("start_on", "2026-06-01"))
            .Activity("C", 0)
            .Link("A", "B")
            .Link("B", "C")
            .Setting("assess_delay_days", "50");
        // the end is critical and held: the first critical task is the held one, and it does move the end
        var held = Assess(plan)[11];
        Assert.Equal(["B"], Codes(plan, held));
        Assert.True(held.Pass);
        // a critical task before the held one does not
        var before = new Plan()
            .Activity("A", 5, ("finish_no_later", "2026-01-08"))
            .Activity("B", 5, ("start_on", "2026-06-01"))
            .Link("A", "B")
            .Setting("assess_delay_days", "50");
        var metric = Assess(before)[11];
        Assert.Equal(["A"], Codes(before, metric));
        AssertMetric(metric, "critical_path_test", 0, 50, 0, false);
    }

    /// <summary>
    /// 720 days of work and a date 60 working days before its end: 0.917, in an encyclopaedia of defence acquisition, seen. 80
    /// days and 20 to spare: 1.25; 800 and 20: 1.03, in a guide of the National Defense Industrial Association, in digests.
    /// </summary>
    [Theory]
    [InlineData(720, -60, "0.917")]
    [InlineData(80, 20, "1.25")]
    [InlineData(800, 20, "1.03")]
    [InlineData(800, 200, "1.25")]
    public void The_critical_path_length_index_has_its_published_values(
        int length,
        int margin,
        string published
    )
    {
        var deadline = Plan.Start;
        for (var days = length + margin; days > 1; days--)
        {
            deadline = deadline.AddDays(deadline.DayOfWeek == DayOfWeek.Friday ? 3 : 1);
        }

        var metric = Assess(
            new Plan()
                .Activity("A", length)
                .Activity("M", 0, ("required_by", Plan.Iso(deadline)))
                .Link("A", "M")
        )[12];
        Assert.Equal((length + margin, length), (metric.Count, metric.Of));
        var digits = published.Length - published.IndexOf('.', StringComparison.Ordinal) - 1;
        Assert.Equal(
            decimal.Parse(published, CultureInfo.InvariantCulture),
            decimal.Round(metric.Value!.Value, digits, MidpointRounding.AwayFromZero)
        );
        Assert.Equal(margin >= 0 || length + margin >= 0.95m * length, metric.Pass);
    }

    [Fact]
    public void Without_status_date_and_baseline_there_is_no_execution_to_measure()
    {
        var metrics = Assess(new Plan().Activity("A", 5));
        Assert.Null(metrics[13].Value);
        Assert.Null(metrics[13].Pass);
        Assert.Null(metrics[12].Value);
        Assert.Null(metrics[12].Pass);
    }

    [Fact]
    public void Milestones_and_level_of_effort_are_no_tasks()
    {
        var metric = Assess(
            new Plan()
                .Activity("A", 5)
                .Activity("M", 0)
                .Package("J.2", "2026-01-12", "2026-01-16", "loe")
        )[0];
        Assert.Equal(1, metric.Of);
    }

    [Fact]
    public void Every_limit_can_be_set()
    {
        foreach (var key in AssessmentLimits.Keys.Keys)
        {
            var value = key.EndsWith("_index", StringComparison.Ordinal) ? "1.1" : "37";
            var limits = new AssessmentLimits().With(key, value);
            Assert.NotNull(limits);
            Assert.NotEqual(new AssessmentLimits(), limits);
            Assert.Null(new AssessmentLimits().With(key, "many"));
            Assert.Null(new AssessmentLimits().With(key, "-1"));
        }
    }

    [Fact]
    public void Measures_of_good_practice_count_what_they_say()
    {
        var practices = new AssessQuestion()
            .Ask(
                new Plan(Status)
                    .Activity("A", 10, ("low", "8"), ("high", "15"))
                    .Activity("B", 4)
                    .Activity("M", 0)
                    .Link("A", "B", "SS", 2)
                    .Link("B", "M")
                    .Report("A", 9, "2026-03-07")
                    .Import()
            )
            .Practices.ToDictionary(measure => measure.Name, StringComparer.Ordinal);
        Assert.Equal(2, practices["detail_activities"].Value);
        Assert.Equal(1, practices["milestones"].Value);
        Assert.Equal(2, practices["detail_activities_per_milestone"].Value);
        Assert.Equal(1, practices["dangling_finishes"].Value);
        Assert.Equal(1, practices["with_low_and_high_duration"].Value);
        // Saturday 7 March
        Assert.Equal(1, practices["actual_dates_on_non_working_days"].Value);
        // A has 5 of 10 days left, B 4
        Assert.Equal(4.5m, practices["median_remaining_days"].Value);
        Assert.Equal(2, practices["without_baseline_dates"].Value);
    }

    private static IReadOnlyList<AssessmentMetric> Assess(Plan plan) =>
        new AssessQuestion().Ask(plan.Import()).Metrics;

    private static IEnumerable<string> Codes(Plan plan, AssessmentMetric metric) =>
        new AssessQuestion().Ask(plan.Import()).ActivitiesOf(metric);

    private static void AssertMetric(
        AssessmentMetric metric,
        string name,
        int count,
        int of,
        decimal value,
        bool pass
    )
    {
        Assert.Equal(name, metric.Name);
        Assert.Equal((count, of), (metric.Count, metric.Of));
        Assert.Equal(decimal.Round(value, 10), decimal.Round(metric.Value!.Value, 10));
        Assert.Equal(pass, metric.Pass);
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>A start and an end milestone, and between them tasks 1 to 200 in rows of ten.</summary>
    private static Plan TwoHundredTasks()
    {
        var plan = new Plan().Activity("Begin", 0).Activity("End", 0);
        var links = 0;
        HashSet<int> noPredecessor = [1, 2, 3, 4, 5, 6];
        HashSet<int> noSuccessor = [5, 6, 198, 199, 200];
        for (var task = 1; task <= 200; task++)
        {
            plan.Activity("T" + Number(task), 5);
        }

        for (var task = 1; task <= 200; task++)
        {
            if (!noPredecessor.Contains(task))
            {
                var before = task - 10;
                Add(
                    before < 1 || noSuccessor.Contains(before) ? "Begin" : "T" + Number(before),
                    "T" + Number(task)
                );
            }

            var after = task + 10;
            if (!noSuccessor.Contains(task) && (after > 200 || noPredecessor.Contains(after)))
            {
                Add("T" + Number(task), "End");
            }
        }

        // the rest of the four hundred: into the same tasks from further back
        for (var task = 31; links < 400; task++)
        {
            var to = 31 + ((task - 31) % 170);
            var back = 20 + (10 * ((task - 31) / 170));
            if (!noSuccessor.Contains(to - back))
            {
                Add("T" + Number(to - back), "T" + Number(to));
            }
        }

        return plan;

        void Add(string from, string to)
        {
            links++;
            var lag =
                links <= 12 ? 3
                : links == 13 ? -2
                : 0;
            plan.Link(from, to, links is > 100 and <= 148 ? "SS" : "FS", lag);
        }
    }
}
