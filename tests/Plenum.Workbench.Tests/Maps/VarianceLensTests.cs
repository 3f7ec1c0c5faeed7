using Plenum.Core;
using Plenum.Oracle.Tables;
using Plenum.Workbench.Maps;
using Plenum.Workbench.Questions;
using Plenum.Workbench.Tests.Oracle;

namespace Plenum.Workbench.Tests.Maps;

public class VarianceLensTests
{
    [Theory]
    [InlineData(LensQuestion.Cost)]
    [InlineData(LensQuestion.Schedule)]
    [InlineData(LensQuestion.Completion)]
    public void The_class_of_an_element_is_that_of_its_row_in_the_accounts(string word) =>
        Documents.ForMany(
            (which, project) =>
            {
                foreach (var at in DatesOf(project))
                {
                    var lens = new LensQuestion(word, at).Ask(project);
                    var read = Documents.Read(lens);
                    var answer = new AccountsQuestion(at, "element").Ask(project);
                    var rows = answer.Rows.Where(row => !row.Code.StartsWith('*')).ToList();
                    Assert.Equal(project.Tree.Count, rows.Count);
                    Assert.Equal(rows.Count, read.ClassOf.Count);
                    Assert.Equal(answer.At, lens.Text.At);
                    Assert.Equal(answer.Revision, read.Revision);
                    Assert.Equal(lens.Legend.Classes.Count, read.Classes);
                    Assert.False(read.IsMix);
                    for (var i = 0; i < rows.Count; i++)
                    {
                        var expected = ClassOf(word, rows[i]);
                        var found = lens.Legend.Classes[read.ClassOf[i]].Key;
                        Assert.True(
                            expected == found,
                            $"{which}, {at}, {rows[i].Code}: {expected} expected, {found} found"
                        );
                    }
                }
            }
        );

    [Theory]
    [InlineData("97.00", "within")]
    [InlineData("97.01", "within")]
    [InlineData("103.00", "within")]
    [InlineData("103.01", "worse")]
    [InlineData("110.00", "worse")]
    [InlineData("110.01", "far_worse")]
    [InlineData("96.99", "better")]
    [InlineData("90.00", "better")]
    [InlineData("89.99", "far_better")]
    [InlineData("0", "far_better")]
    public void A_limit_belongs_to_the_milder_step(string actualCost, string expected) =>
        Assert.Equal(expected, CostClass(OnePackage("100", actualCost, "", "100")));

    [Theory]
    [InlineData("101.50", "within")]
    [InlineData("101.51", "worse")]
    [InlineData("120", "worse")]
    [InlineData("120.01", "far_worse")]
    public void The_project_sets_the_limits(string actualCost, string expected) =>
        Assert.Equal(expected, CostClass(OnePackage("100", actualCost, "1.5 20", "100")));

    [Fact]
    public void Cost_without_anything_earned_is_told_from_work_that_has_not_started()
    {
        Assert.Equal("nothing_earned", CostClass(OnePackage("100", "12", "", "")));
        Assert.Equal("not_started", CostClass(OnePackage("100", "0", "", "")));
    }

    [Fact]
    public void Before_the_first_period_ends_nothing_has_started()
    {
        var project = OnePackage("100", "12", "", "");
        foreach (var (word, key) in NothingYet)
        {
            var lens = new LensQuestion(word, new DateOnly(2026, 1, 30)).Ask(project);
            Assert.Null(lens.Text.At);
            Assert.Equal(key, lens.ClassAt(0).Key);
        }
    }

    [Fact]
    public void The_legend_and_the_words_say_limits_share_and_amount()
    {
        var lens = new LensQuestion(LensQuestion.Cost).Ask(
            OnePackage("100", "104", "2.5 10", "100")
        );
        Assert.Equal("Cost variance as a share of earned value", lens.Text.Says);
        Assert.Equal(
            [
                "better than +10\u00A0%",
                "+2.5 to +10\u00A0%",
                "within ±2.5\u00A0%",
                "−2.5 to −10\u00A0%",
                "worse than −10\u00A0%",
                "cost, nothing earned yet",
                "not started",
            ],
            lens.Legend.Classes.Select(one => one.Word)
        );
        Assert.Equal("−4.0 % of earned value, −4.00 EUR", lens.ValueText(1));
        Assert.Equal("−2.5 to −10\u00A0%, −4.0 % of earned value, −4.00 EUR", lens.Words(1));
    }

    [Theory]
    [InlineData("10 3")]
    [InlineData("3 3")]
    [InlineData("3")]
    [InlineData("3 101")]
    [InlineData("3 10 20")]
    [InlineData("-3 10")]
    public void Limits_that_are_not_two_rising_per_cents_are_refused(string steps)
    {
        using var folder = new TemporaryFolder();
        folder.Write("project.csv", $"key,value\nvariance_steps,{steps}\n");
        var result = Exchange.Import.Importer.Run(
            Project.Empty,
            [folder.Path],
            replace: false,
            ct: TestContext.Current.CancellationToken
        );
        var error = Assert.Single(result.Errors.Items);
        Assert.Equal("two per cents, the second greater, such as 3 10", error.Expected);
    }

    [Fact]
    public void Words_and_legend_are_the_same_before_the_elements_are_known()
    {
        foreach (var word in LensQuestion.Words)
        {
            var question = new LensQuestion(word, new DateOnly(2027, 3, 10));
            var head = question.HeadOf(Documents.Demo);
            var lens = question.Ask(Documents.Demo);
            Assert.Equal(lens.Text, head.Text);
            Assert.Equal(lens.Legend.Name, head.Legend.Name);
            Assert.Equal(lens.Legend.Classes, head.Legend.Classes);
        }
    }

    [Fact]
    public void A_lens_that_is_not_there_is_refused_and_the_known_are_named()
    {
        var refusal = Assert.Throws<QuestionException>(() =>
            new LensQuestion("weather").Ask(Documents.Demo)
        );
        Assert.StartsWith(
            "There is no lens \"weather\". Known are cost, schedule, completion",
            refusal.Message,
            StringComparison.Ordinal
        );
    }

    private static readonly (string Word, string Key)[] NothingYet =
    [
        (LensQuestion.Cost, "not_started"),
        (LensQuestion.Schedule, "not_planned"),
        (LensQuestion.Completion, "not_started"),
    ];

    private static IEnumerable<DateOnly?> DatesOf(Project project)
    {
        yield return null;
        if (project.Periods.Count > 0)
        {
            yield return project.Periods.End(project.Periods.Count / 2).AddDays(3);
        }
    }

    /// <summary>The class by the figures of the accounts answer, in major units.</summary>
    private static string ClassOf(string word, MeasureRow row) =>
        word switch
        {
            LensQuestion.Cost when row.EarnedValue == 0 => row.ActualCost == 0
                ? "not_started"
                : "nothing_earned",
            LensQuestion.Cost => StepOf(row.CostVariance, row.EarnedValue),
            LensQuestion.Schedule when row is { PlannedValue: 0, EarnedValue: 0 } => "not_planned",
            LensQuestion.Schedule => StepOf(row.ScheduleVariance, row.PlannedValue),
            _ when row is { EarnedValue: 0, ActualCost: 0, VarianceAtCompletion: 0 } =>
                "not_started",
            _ => StepOf(row.VarianceAtCompletion, row.BudgetAtCompletion),
        };

    private static string StepOf(decimal variance, decimal ofBase)
    {
        decimal? share =
            ofBase == 0
                ? variance switch
                {
                    0 => 0,
                    > 0 => 1,
                    _ => -1,
                }
                : variance / ofBase;
        return share switch
        {
            > 0.10m => "far_better",
            > 0.03m => "better",
            >= -0.03m => "within",
            >= -0.10m => "worse",
            _ => "far_worse",
        };
    }

    private static string CostClass(Project project) =>
        new LensQuestion(LensQuestion.Cost).Ask(project).ClassAt(1).Key;

    /// <summary>A project of one package with a reported per cent and a cost, at the end of its one period.</summary>
    private static Project OnePackage(
        string budget,
        string actualCost,
        string steps,
        string percent
    )
    {
        var text = new TextProject();
        text.Add("project", ("key", "start"), ("value", "2026-01-01"));
        text.Add("project", ("key", "status_date"), ("value", "2026-01-31"));
        if (steps != "")
        {
            text.Add("project", ("key", "variance_steps"), ("value", steps));
        }

        text.Add("periods", ("period", "P1"), ("end", "2026-01-31"));
        text.Add("elements", ("code", "P"), ("parent", ""), ("name", "Plant"));
        text.Add("elements", ("code", "P.1"), ("parent", "P"), ("name", "Pump"));
        text.Add(
            "packages",
            ("package", "P.1"),
            ("technique", "percent"),
            ("start", "2026-02-01"),
            ("finish", "2026-03-31")
        );
        text.Add("budget", ("package", "P.1"), ("cost_element", "labour"), ("amount", budget));
        text.Add("status", ("package", "P.1"), ("period", "P1"), ("percent", percent));
        text.Add(
            "actuals",
            ("document", "D"),
            ("line", "1"),
            ("charge", "P.1"),
            ("period", "P1"),
            ("cost_element", "labour"),
            ("amount", actualCost)
        );
        return Answers.Import(text);
    }
}
