using Plenum.Oracle.Examples;
using Plenum.Oracle.Model;

namespace Plenum.Oracle.Tests;

/// <summary>The model against published figures; the source of each stands with the example.</summary>
public sealed class WorkedExamplesTests
{
    public static TheoryData<string> Names =>
        [.. WorkedExamples.All.Select(example => example.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Worked_example_gives_its_published_figures(string name)
    {
        var example = WorkedExamples.All.Single(example => example.Name == name);
        var model = new EarnedValueModel(example.Project);
        Assert.NotEmpty(example.Source);
        Assert.NotEmpty(example.Expected);
        foreach (var expectation in example.Expected)
        {
            var row = model
                .Accounts(new Question(expectation.At, expectation.By))
                .Row(expectation.Row);
            Assert.True(
                expectation.AgreesWith(row, model.Facts.CurrencyDigits),
                $"{expectation} but {row}"
            );
        }
    }

    [Fact]
    public void Examples_have_different_names() =>
        Assert.Distinct(WorkedExamples.All.Select(example => example.Name), StringComparer.Ordinal);

    [Theory]
    [InlineData("0.333333", 1, 3, true)]
    [InlineData("0.333334", 1, 3, false)]
    [InlineData("0.33", 1, 3, true)]
    [InlineData("1.5", 3, 2, true)]
    [InlineData(null, 3, 2, false)]
    public void Published_ratio_is_compared_at_its_own_digits(
        string? published,
        int numerator,
        int denominator,
        bool agrees
    ) =>
        Assert.Equal(
            agrees,
            Published(published).AgreesWithRatio(new Ratio(numerator, denominator))
        );

    [Theory]
    [InlineData("109090.909091", 10909091, true)]
    [InlineData("109090.909091", 10909090, false)]
    [InlineData("-5000", -500000, true)]
    [InlineData(null, 0, false)]
    public void Published_amount_is_compared_to_the_cent(
        string? published,
        int cents,
        bool agrees
    ) => Assert.Equal(agrees, Published(published).AgreesWithMoney(cents, 2));

    private static Expectation Published(string? value) =>
        new("package", "*total", new DateOnly(2026, 1, 31), "cpi", value);
}
