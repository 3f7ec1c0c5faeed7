using System.Numerics;
using Plenum.Oracle.Generator;
using Plenum.Oracle.Model;

namespace Plenum.Oracle.Tests;

/// <summary>Every cut sums to the total, to the last minor unit, on generated projects (constructed).</summary>
public sealed class TieOutTests
{
    private const int Projects = 500;

    private static readonly string[] Additive =
    [
        "bac",
        "pv",
        "ev",
        "ac",
        "committed",
        "sv",
        "cv",
        "etc",
        "eac",
        "vac",
        "eac_plan",
    ];

    private static readonly string[] OfPeriod = ["pv", "ev", "ac", "committed", "sv", "cv"];

    private static readonly string[] OffsetSums =
    [
        "cv_favourable",
        "cv_unfavourable",
        "sv_favourable",
        "sv_unfavourable",
    ];

    [Fact]
    public void Every_cut_of_every_project_ties_out() =>
        ForEachProject(
            (model, seed) =>
            {
                foreach (var question in Questions(model, seed))
                {
                    var answer = model.Accounts(question);
                    var total = answer.Rows[0];
                    var parts = answer
                        .Rows.Skip(1)
                        .Where(row => IsTop(model.Facts, question, row.Code))
                        .ToList();
                    foreach (var measure in MeasuresThatAdd(question.By))
                    {
                        Assert.True(
                            total.Money(measure)
                                == Sum(parts.Select(row => row.Money(measure)!.Value)),
                            $"seed {seed}, {question}, {measure}"
                        );
                    }
                }
            }
        );

    [Fact]
    public void Every_element_is_the_sum_of_its_children_and_what_is_charged_to_its_accounts() =>
        ForEachProject(
            (model, seed) =>
            {
                var answer = model.Accounts(new Question(model.Facts.Periods[^1].End, "element"));
                foreach (var element in model.Facts.Elements)
                {
                    var children = model
                        .Facts.Elements.Where(child => child.Parent == element.Code)
                        .ToList();
                    if (children.Count == 0)
                    {
                        continue;
                    }

                    var charged = model
                        .Facts.Accounts.Where(account => account.Element == element.Code)
                        .Select(account =>
                            ActualCost.Of(model.Facts, account.Code, model.Facts.Periods[^1].End)
                        );
                    var fromChildren = Sum(children.Select(child => answer.Row(child.Code).Ac));
                    Assert.True(
                        answer.Row(element.Code).Ac == fromChildren + Sum(charged),
                        $"seed {seed}, element {element.Code}"
                    );
                    Assert.Equal(
                        answer.Row(element.Code).Ev,
                        Sum(children.Select(child => answer.Row(child.Code).Ev))
                    );
                }
            }
        );

    [Fact]
    public void Periods_add_up_to_the_running_total() =>
        ForEachProject(
            (model, seed) =>
            {
                var periods = model
                    .Facts.Periods.Select(period =>
                        model.Accounts(new Question(period.End, "account", Period: true))
                    )
                    .ToList();
                var toDate = model.Accounts(new Question(model.Facts.Periods[^1].End));
                foreach (
                    var account in model
                        .Facts.Accounts.Select(account => account.Code)
                        .Append("*total")
                )
                {
                    foreach (var measure in OfPeriod)
                    {
                        Assert.True(
                            toDate.Row(account).Money(measure)
                                == Sum(
                                    periods.Select(answer =>
                                        answer.Row(account).Money(measure)!.Value
                                    )
                                ),
                            $"seed {seed}, account {account}, {measure}"
                        );
                    }
                }
            }
        );

    [Fact]
    public void Earned_and_planned_value_stay_between_nothing_and_the_budget() =>
        ForEachProject(
            (model, seed) =>
            {
                foreach (var row in model.Accounts(new Question(Date(model, seed), "package")).Rows)
                {
                    Assert.InRange(row.Pv, BigInteger.Zero, row.Bac);
                    Assert.InRange(row.Ev, BigInteger.Zero, row.Bac);
                }
            }
        );

    [Fact]
    public void Planned_value_never_falls() =>
        ForEachProject(
            (model, seed) =>
            {
                var planned = model
                    .Facts.Periods.Select(period =>
                        model.Accounts(new Question(period.End, "package"))
                    )
                    .ToList();
                foreach (var (earlier, later) in planned.Zip(planned.Skip(1)))
                {
                    foreach (
                        var (before, after) in earlier
                            .Rows.Zip(later.Rows)
                            .TakeWhile(pair =>
                                pair.First.Code[0] != '*' || pair.First.Code == "*total"
                            )
                    )
                    {
                        Assert.True(before.Pv <= after.Pv, $"seed {seed}, {after.Code}");
                    }
                }
            }
        );

    [Fact]
    public void Forecast_at_the_budgeted_rate_is_the_budget_less_the_cost_variance() =>
        ForEachProject(
            (model, seed) =>
            {
                foreach (var row in model.Accounts(new Question(Date(model, seed), "package")).Rows)
                {
                    Assert.Equal(row.Bac - row.Cv, row.EacPlan);
                }
            }
        );

    [Fact]
    public void Tree_ties_out_with_the_accounts_by_element() =>
        ForEachProject(
            (model, seed) =>
            {
                var accounts = model.Accounts(new Question(null, "element"));
                Assert.All(
                    model.Tree(),
                    row => Assert.Equal(accounts.Row(row.Code).Bac, row.Budget)
                );
                Assert.True(model.Tree()[0].Packages == model.Facts.Packages.Count, $"seed {seed}");
            }
        );

    private static void ForEachProject(Action<EarnedValueModel, long> check) =>
        Parallel.For(0, Projects, seed => check(Models[seed].Value, seed));

    private static readonly Lazy<EarnedValueModel>[] Models =
    [
        .. Enumerable
            .Range(0, Projects)
            .Select(seed => new Lazy<EarnedValueModel>(() => new(ProjectGenerator.Project(seed)))),
    ];

    private static BigInteger Sum(IEnumerable<BigInteger> amounts) =>
        amounts.Aggregate(BigInteger.Zero, BigInteger.Add);

    /// <summary>Some date of the project, another one for each seed, sometimes before the first period's end.</summary>
    private static DateOnly Date(EarnedValueModel model, long seed)
    {
        var first = model.Facts.Periods[0].End;
        var days = model.Facts.Periods[^1].End.DayNumber - first.DayNumber + 5;
        return first.AddDays((int)(seed * 7 % days) - 2);
    }

    /// <summary>By cost element the offsets are taken one level lower, and need not add up to the total's.</summary>
    private static IEnumerable<string> MeasuresThatAdd(string by) =>
        by == "cost_element" ? Additive : Additive.Concat(OffsetSums);

    private static IEnumerable<Question> Questions(EarnedValueModel model, long seed)
    {
        string[] cuts =
        [
            "account",
            "unit",
            "cost_element",
            "package",
            "element",
            .. model.Facts.Groupings.Keys,
        ];
        foreach (var by in cuts)
        {
            yield return new Question(null, by);
            yield return new Question(Date(model, seed), by, Period: true);
        }

        for (var level = 1; level <= 6; level++)
        {
            yield return new Question(Date(model, seed), "element", level);
        }
    }

    /// <summary>Whether a row stands for itself: not for something that is in another row of the same cut as well.</summary>
    private static bool IsTop(Facts facts, Question question, string code)
    {
        if (code[0] == '*')
        {
            return true;
        }

        return question.By switch
        {
            "account" or "cost_element" or "package" => true,
            "unit" => facts.Units.Single(unit => unit.Code == code).Parent.Length == 0,
            "element" => question.Level is not null || facts.Element(code).Level == 1,
            _ => facts.Groupings[question.By].Single(group => group.Code == code).Parent.Length
                == 0,
        };
    }
}
