using System.Numerics;
using Plenum.Core;
using Plenum.Oracle.Generator;
using Plenum.Oracle.Model;
using Plenum.Oracle.Tables;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Tests.Oracle;

/// <summary>
/// The engine against an independent model that computes with exact fractions from the definitions in
/// docs/formulas.md: equal to the cent, for all techniques, spreads, cuts and dates that the generator makes up.
/// </summary>
public class EngineAgainstModelTests
{
    private const int Seeds = 2_400;
    private const int Batches = 8;

    public static TheoryData<int> BatchNumbers => [.. Enumerable.Range(0, Batches)];

    [Theory]
    [MemberData(nameof(BatchNumbers))]
    public void Every_measure_of_every_cut_agrees_with_the_model_to_the_cent(int batch) =>
        Parallel.For(
            batch * Seeds / Batches,
            (batch + 1) * Seeds / Batches,
            new ParallelOptions { MaxDegreeOfParallelism = 2 },
            seed =>
            {
                var text = ProjectGenerator.Project(seed);
                var project = Answers.Import(text);
                var model = new EarnedValueModel(text);
                foreach (var question in Questions(text, seed))
                {
                    try
                    {
                        Answers.AssertSame(
                            model.Accounts(question),
                            new AccountsQuestion(
                                question.At,
                                question.By,
                                question.Level,
                                null,
                                question.Period
                            ).Ask(project)
                        );
                    }
                    catch (Exception difference)
                    {
                        Assert.Fail($"seed {seed}, {question}: {difference.Message}");
                    }
                }

                AssertSameTree(model, project, seed);
            }
        );

    /// <summary>The usual question, and as many others as there are cuts, with dates and levels drawn from the seed.</summary>
    private static IEnumerable<Question> Questions(TextProject text, int seed)
    {
        var random = new Random(seed);
        string[] groupings =
        [
            .. text.Rows("groups").Select(row => row["grouping"]).Distinct(StringComparer.Ordinal),
        ];
        string[] cuts = ["account", "element", "unit", "cost_element", "package", .. groupings];
        DateOnly[] ends =
        [
            .. text.Rows("periods")
                .Select(row =>
                    DateOnly.ParseExact(
                        row["end"],
                        "yyyy-MM-dd",
                        System.Globalization.CultureInfo.InvariantCulture
                    )
                ),
        ];
        yield return new Question();
        foreach (var cut in cuts)
        {
            DateOnly? at =
                ends.Length == 0
                    ? null
                    : ends[random.Next(ends.Length)].AddDays(random.Next(-3, 20));
            yield return new Question(at, cut, null, random.Next(2) == 0);
        }

        yield return new Question(null, "element", random.Next(1, 6), random.Next(2) == 0);
        yield return new Question(
            new DateOnly(2999, 12, 31),
            cuts[random.Next(cuts.Length)],
            null,
            false
        );
        yield return new Question(new DateOnly(1999, 1, 1), "account", null, true);
    }

    private static void AssertSameTree(EarnedValueModel model, Project project, int seed)
    {
        var answer = new TreeQuestion().Ask(project);
        var scale = (decimal)Math.Pow(10, project.Settings.Currency.Digits);
        var expected = model.Tree();
        Assert.Equal(expected.Select(row => row.Code), answer.Rows.Select(row => row.Code));
        foreach (var (exact, row) in expected.Zip(answer.Rows))
        {
            var same =
                exact.Level == row.Level
                && exact.Kind == row.Kind
                && exact.Packages == row.Packages
                && exact.Budget == new BigInteger(row.Budget * scale)
                && exact.Hours == new BigInteger(row.Hours * 100)
                && exact.Allotted == Scaled(row.Allotted, scale)
                && exact.Gap == Scaled(row.Gap, scale);
            Assert.True(same, $"seed {seed}, tree: {exact} expected, {row} found");
        }
    }

    private static BigInteger? Scaled(decimal? amount, decimal scale) =>
        amount is { } given ? new BigInteger(given * scale) : null;
}
