using Plenum.Core.Baseline;
using Plenum.Core.Estimate;
using Plenum.Workbench.Commands.Estimate;
using Plenum.Workbench.Maps;
using Plenum.Workbench.Questions;
using Plenum.Workbench.Tests.Parts;

namespace Plenum.Workbench.Tests.Estimate;

/// <summary>Estimate lines are added up, written, and become a budget only when somebody says so.</summary>
public class EstimateTests
{
    private const string Lines = """
        estimate
        package,cost_element,line,quantity,unit,hours_per_unit,rate,amount,low,likely,high,class,currency
        H.1.1.1,labour,1,14,segments,219.33,94,,,,,3,
        H.1.1.1,labour,2,2.5,sets,0.333,10,,,,,class 4,
        H.1.1.1,material,1,3,pumps,,0.335,,,,,2,
        H.1.1.2,other,1,,,,,1000,800,1000,1500,,

        """;

    [Fact]
    public void An_amount_is_quantity_by_hours_by_rate_rounded_once()
    {
        using var hall = new PumpHall(more: Lines);
        var answer = new EstimateQuestion("H.1.1").Ask(hall.Now);
        // 14 × 219.33 × 94 = 288 638.28; 2.5 × 0.333 × 10 = 8.325; 3 × 0.335 = 1.005
        Assert.Equal(
            [288_638.28m, 8.33m, 1.01m, 1000m],
            answer.Window(0, 9).Select(line => line.Amount!.Value)
        );
        Assert.Equal([3070.62m, 0.83m, null, null], answer.Window(0, 9).Select(line => line.Hours));
        Assert.Equal(289_647_62, answer.Sum.Amount);
        Assert.Equal((2, 2), (answer.Sum.Packages, answer.Sum.Estimated));
    }

    /// <summary>
    /// Three parts with low, most likely and high of (80, 100, 140), (40, 50, 75), (20, 30, 50): the most likely amounts
    /// add up to 180. Their sum is no percentile to count on: it is exceeded more often than not (common practice; the
    /// triples are a constructed check).
    /// </summary>
    [Fact]
    public void Low_likely_and_high_are_added_up_as_bounds()
    {
        using var hall = new PumpHall(
            more: """
            estimate
            package,cost_element,line,amount,low,likely,high
            H.1.1.1,material,1,100,80,100,140
            H.1.1.1,equipment,1,50,40,50,75
            H.1.1.2,labour,1,30,20,30,50

            """
        );
        var sum = hall.Now.Estimate.At(0);
        Assert.Equal((140_00, 180_00, 265_00), (sum.Low, sum.Likely, sum.High));
        Assert.Equal(3, sum.Ranged);
    }

    [Fact]
    public void The_class_of_a_package_is_the_least_defined_of_its_lines()
    {
        using var hall = new PumpHall(more: Lines);
        var lens = new LensQuestion(LensQuestion.Estimate).Ask(hall.Now);
        string Class(string code) => lens.ClassAt(hall.Now.Tree.Elements.RowOfCode(code)).Key;
        Assert.Equal("class4", Class("H.1.1.1"));
        Assert.Equal("no_class", Class("H.1.1.2"));
        Assert.True(lens.IsMix);
    }

    /// <summary>Source of the widest ranges: AACE International 18R-97, from a summary.</summary>
    [Theory]
    [InlineData("1", 10, 15)]
    [InlineData("class 2", 15, 20)]
    [InlineData("3", 20, 30)]
    [InlineData("Class 4", 30, 50)]
    [InlineData(" 5 ", 50, 100)]
    public void A_class_has_its_published_range(string text, int below, int above)
    {
        var known = EstimateClass.Of(text)!;
        Assert.Equal((below, above), (known.MostBelow, known.MostAbove));
    }

    [Theory]
    [InlineData("")]
    [InlineData("0")]
    [InlineData("6")]
    [InlineData("rough")]
    public void Any_other_word_is_no_class(string text) => Assert.Null(EstimateClass.Of(text));

    [Fact]
    public void The_first_cell_that_is_written_makes_the_line()
    {
        using var hall = new PumpHall();
        hall.Do(
            new WriteEstimateCommand(
                hall.Id("H.1.1.1"),
                [],
                Column("quantity"),
                [
                    ["12"],
                ]
            )
        );
        Assert.Equal(
            ["H.1.1.1 labour 1 12"],
            hall.Lines(
                EstimateTable.Definition,
                EstimateTable.Package,
                EstimateTable.CostElement,
                EstimateTable.Line,
                EstimateTable.Quantity
            )
        );
    }

    [Fact]
    public void Pasted_rows_go_to_the_lines_from_there_on_and_further_ones_become_new_lines()
    {
        using var hall = new PumpHall(more: Lines);
        var answer = new EstimateQuestion("H.1.1.1").Ask(hall.Now);
        hall.Do(
            new WriteEstimateCommand(
                hall.Id("H.1.1.1"),
                [answer.At(2).Id],
                0,
                [
                    ["material", "1", "4"],
                    ["material", "", "5"],
                    ["", "", "6"],
                ]
            )
        );
        Assert.Equal(
            ["labour 1 14", "labour 2 2.5", "labour 4 6", "material 1 4", "material 3 5"],
            new EstimateQuestion("H.1.1.1")
                .Ask(hall.Now)
                .Window(0, 9)
                .Select(line => string.Join(' ', line.Texts.Take(3)))
                .Order(StringComparer.Ordinal)
        );
    }

    [Theory]
    [InlineData(
        "quantity",
        "4x",
        "quantity: \"4x\" found, a number with a decimal point, such as 12.5, not below 0, at most 28 digits expected"
    )]
    [InlineData(
        "hours_per_unit",
        "-1",
        "hours_per_unit: \"-1\" found, a number with a decimal point, such as 12.5, not below 0, at most 28 digits expected"
    )]
    [InlineData(
        "rate",
        "94,50",
        "rate: \"94,50\" found, a number with a decimal point, such as 12.5, not below 0, at most 28 digits expected"
    )]
    [InlineData(
        "cost_element",
        "wages",
        "cost_element: \"wages\" found, one of labour, material, equipment, subcontract, other expected"
    )]
    [InlineData(
        "base_date",
        "31.12.2026",
        "base_date: \"31.12.2026\" found, a date such as 2026-03-31 expected"
    )]
    [InlineData(
        "currency",
        "Euro",
        "currency: \"Euro\" found, a currency code of ISO 4217, such as EUR expected"
    )]
    [InlineData(
        "amount",
        "1.234",
        "amount: \"1.234\" found, an amount such as 1234.55 with at most 2 decimals, not negative, at most 10000000000000.00 expected"
    )]
    [InlineData(
        "low",
        "1 000",
        "low: \"1 000\" found, an amount such as 1234.55 with at most 2 decimals, not negative, at most 10000000000000.00 expected"
    )]
    public void A_wrong_cell_is_refused(string column, string text, string message)
    {
        using var hall = new PumpHall();
        hall.Refuses(
            new WriteEstimateCommand(
                hall.Id("H.1.1.1"),
                [],
                Column(column),
                [
                    [text],
                ]
            ),
            message
        );
    }

    [Fact]
    public void A_wrong_row_of_many_is_named_and_none_is_written()
    {
        using var hall = new PumpHall();
        hall.Refuses(
            new WriteEstimateCommand(
                hall.Id("H.1.1.1"),
                [],
                Column("quantity"),
                [
                    ["1"],
                    ["two"],
                    ["3"],
                ]
            ),
            "row 2: quantity: \"two\" found, a number with a decimal point, such as 12.5, not below 0, at most 28 digits expected"
        );
        hall.Refuses(
            new WriteEstimateCommand(
                hall.Id("H.1.1.1"),
                [],
                Column("base_date"),
                [
                    ["2026-01-01", "EUR", "more"],
                ]
            ),
            "3 cells from base_date on found, at most 2 expected"
        );
        hall.Refuses(
            new WriteEstimateCommand(
                hall.Id("H.1.1"),
                [],
                0,
                [
                    ["labour"],
                ]
            ),
            "H.1.1 Feed pump is no package; estimate lines stand on packages."
        );
    }

    [Fact]
    public void The_budget_becomes_the_sum_of_the_lines_by_cost_element_and_the_step_says_so_first()
    {
        using var hall = new PumpHall(more: Lines);
        int[] packages = [hall.Id("H.1.1.1"), hall.Id("H.1.1.2")];
        var step = new BudgetStepQuestion(packages).Ask(hall.Now);
        Assert.Equal(
            (2, 0m, 289_647.62m, 3),
            (step.Packages, step.Before, step.After, step.Changes.Count)
        );
        var before = hall.Content();
        hall.Do(new EstimateToBudgetCommand(packages));
        Assert.Equal(
            [
                "H.1.1.1 labour 288646.61 3071.45",
                "H.1.1.1 material 1.01 –",
                "H.1.1.2 other 1000.00 –",
            ],
            hall.Lines(
                BudgetTable.Definition,
                BudgetTable.Package,
                BudgetTable.CostElement,
                BudgetTable.Amount,
                BudgetTable.Hours
            )
        );
        Assert.Equal(step.After, hall.Now.Totals.Budget[0] / 100m);
        Assert.Empty(new BudgetStepQuestion(packages).Ask(hall.Now).Changes);
        hall.Open.Undo("planner");
        Assert.Equal(before, hall.Content());
    }

    [Fact]
    public void A_budget_that_the_estimate_does_not_hold_is_taken_out_and_packages_without_lines_stay()
    {
        using var hall = new PumpHall(
            more: "budget\npackage,cost_element,amount,hours\nH.1.1.1,equipment,77,\nH.1.1.2,labour,100,30\n"
        );
        hall.Do(
            new WriteEstimateCommand(
                hall.Id("H.1.1.1"),
                [],
                Column("amount"),
                [
                    ["50"],
                ]
            )
        );
        hall.Do(new EstimateToBudgetCommand([hall.Id("H.1.1.1"), hall.Id("H.1.1.2")]));
        Assert.Equal(
            ["H.1.1.1 labour 50.00", "H.1.1.2 labour 100.00"],
            hall.Lines(
                    BudgetTable.Definition,
                    BudgetTable.Package,
                    BudgetTable.CostElement,
                    BudgetTable.Amount
                )
                .Order()
        );
    }

    [Fact]
    public void A_line_without_an_amount_or_in_another_currency_forbids_the_step()
    {
        using var hall = new PumpHall();
        var package = hall.Id("H.1.1.1");
        hall.Do(
            new WriteEstimateCommand(
                package,
                [],
                0,
                [
                    ["labour", "1", "5"],
                    ["other", "1", "2", "", "", "3", "", "", "", "", "", "", "", "USD"],
                ]
            )
        );
        hall.Refuses(
            new EstimateToBudgetCommand([package]),
            "estimate line H.1.1.1, labour, 1 has no amount; give one, or quantity and rate\n"
                + "estimate line H.1.1.1, other, 1 is in USD and cannot be added up in EUR"
        );
        var sum = hall.Now.Estimate.At(0);
        Assert.Equal((1, 1, 0L), (sum.Unpriced, sum.Foreign, sum.Amount));
    }

    [Fact]
    public void Lines_are_taken_out_and_put_back()
    {
        using var hall = new PumpHall(more: Lines);
        var before = hall.Content();
        hall.Do(new RemoveEstimateLinesCommand([.. hall.Now[EstimateTable.Definition].Ids]));
        Assert.Equal(0, hall.Now.Estimate.At(0).Lines);
        hall.Open.Undo("planner");
        Assert.Equal(before, hall.Content());
    }

    private static int Column(string name) =>
        EstimateLine.Columns.ToList().FindIndex(column => column.Name == name);
}
