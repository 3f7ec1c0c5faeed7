using Plenum.Oracle.Examples;
using Plenum.Oracle.Model;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Tests.Oracle;

/// <summary>
/// Published worked examples of earned value through the same CSV import as a user's data. The source of each stands
/// with the example in tests/Plenum.Oracle/Examples.
/// </summary>
public class WorkedExampleTests
{
    public static TheoryData<string> Names =>
        [.. WorkedExamples.All.Select(example => example.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_worked_example_gives_its_published_figures(string name)
    {
        var example = WorkedExamples.All.Single(one => one.Name == name);
        var project = Answers.Import(example.Project);
        foreach (var expectation in example.Expected)
        {
            var answer = new AccountsQuestion(expectation.At, expectation.By).Ask(project);
            var row = answer.Rows.Prepend(answer.Total).Single(one => one.Code == expectation.Row);
            Assert.True(
                Agrees(expectation, row, answer.Currency.Digits),
                $"{example.Source}: {expectation} but {row}"
            );
        }
    }

    private static bool Agrees(Expectation expectation, MeasureRow row, int digits)
    {
        if (expectation.Measure == "forecast_finish")
        {
            return expectation.AgreesWithDate(row.ForecastFinish);
        }

        if (Row.MoneyMeasures.Contains(expectation.Measure, StringComparer.Ordinal))
        {
            return expectation.AgreesWithMoney(
                Answers.MinorUnits(row, expectation.Measure, digits),
                digits
            );
        }

        var ratio = Answers.RatioOf(row, expectation.Measure);
        return expectation.AgreesWithRatio(
            ratio is { } given
                ? Ratio.Parse(given.ToString(System.Globalization.CultureInfo.InvariantCulture))
                : null
        );
    }
}
