using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Network;
using Plenum.Workbench.Commands.Parts;

namespace Plenum.Workbench.Tests.Parts;

/// <summary>Cells of the matrix of parts by activities are planned, ruled out, cleared and copied.</summary>
public class CellCommandTests
{
    [Fact]
    public void A_missing_cell_is_planned_with_the_hours_that_its_sister_has()
    {
        using var hall = new PumpHall();
        hall.Do(new PlanCellsCommand([new CellPlan(hall.Id("H.2.1"), "Factory test")]));
        Assert.Equal(
            [
                "Design: missing",
                "Manufacture: missing",
                "Factory test: 88 h",
                "Erection: missing",
                "Commissioning: missing",
            ],
            hall.Row("H.2.1")
        );
        Assert.Equal("Feed pump, factory test", hall.Text("H.2.1.1", ElementTable.Name));
        Assert.Equal("pressure", hall.Text("H.2.1.1", ElementTable.Hazards));
        Assert.Equal("phase", hall.Text("H.2.1", ElementTable.Split));
        Assert.Equal(
            ["H.2.1.1 0/100"],
            hall.Lines(PackageTable.Definition, PackageTable.Package, PackageTable.Technique)
        );
        Assert.Equal(
            ["H.2.1.1-A H.2.1.1 3"],
            hall.Lines(
                ActivityTable.Definition,
                ActivityTable.Activity,
                ActivityTable.Package,
                ActivityTable.Duration
            )
        );
    }

    [Fact]
    public void A_cell_without_sisters_is_planned_with_its_share_of_what_the_part_is_allotted()
    {
        using var hall = new PumpHall();
        hall.Do(new PlanCellsCommand([new CellPlan(hall.Id("H.2.1"), "Erection")]));
        Assert.Contains("Erection: 14 h", hall.Row("H.2.1")); // 20 % of 70.01 h, rounded to hundredths
        Assert.Equal("20.00", hall.Text("H.2.1.1", ElementTable.Allotted)); // 20 % of 100.01
    }

    [Fact]
    public void Hours_that_are_given_count_before_those_of_sisters()
    {
        using var hall = new PumpHall();
        hall.Do(new PlanCellsCommand([new CellPlan(hall.Id("H.2.1"), "Factory test", 42.5m)]));
        Assert.Contains("Factory test: 42.5 h", hall.Row("H.2.1"));
    }

    [Fact]
    public void Hours_that_are_typed_into_a_cell_are_what_its_package_is_allotted()
    {
        using var hall = new PumpHall();
        hall.Do(new WriteCellHoursCommand(hall.Cell("H.1.1", "Design"), " 36.5 "));
        Assert.Contains("Design: 36.5 h", hall.Row("H.1.1"));
        Assert.Equal("36.5", hall.Text("H.1.1.1", ElementTable.AllottedHours));
    }

    [Fact]
    public void Hours_that_are_typed_into_a_missing_cell_plan_it()
    {
        using var hall = new PumpHall();
        hall.Do(new WriteCellHoursCommand(hall.Cell("H.2.1", "Erection"), "12"));
        Assert.Contains("Erection: 12 h", hall.Row("H.2.1"));
        Assert.Equal("20.00", hall.Text("H.2.1.1", ElementTable.Allotted)); // its share of the money stays
    }

    [Fact]
    public void Hours_that_are_typed_into_a_cell_that_was_ruled_out_take_the_reason_out()
    {
        using var hall = new PumpHall();
        hall.Do(new WriteCellHoursCommand(hall.Cell("H.1.2", "Erection"), "4"));
        Assert.Contains("Erection: 4 h", hall.Row("H.1.2"));
    }

    [Theory]
    [InlineData("4x")]
    [InlineData("-1")]
    [InlineData("0.001")]
    [InlineData("1,5")]
    public void What_is_typed_into_a_cell_must_be_hours(string typed)
    {
        using var hall = new PumpHall();
        hall.Refuses(
            new WriteCellHoursCommand(hall.Cell("H.1.1", "Design"), typed),
            $"allotted_hours: \"{typed}\" found, hours such as 12.5, not below 0, at most 2 decimals, at most 100000000000 expected"
        );
    }

    [Fact]
    public void Hours_of_a_budget_are_not_written_into_the_cell()
    {
        using var hall = new PumpHall(
            more: "budget\npackage,cost_element,amount,hours\nH.1.1.1,labour,100.00,30\n"
        );
        hall.Refuses(
            new WriteCellHoursCommand(hall.Cell("H.1.1", "Design"), "31"),
            "H.1.1.1 Feed pump, design has a budget with hours: they come from the baseline, or from an estimate by the step to the budget."
        );
    }

    [Fact]
    public void A_package_stands_among_its_sisters_in_the_order_of_the_work_set()
    {
        using var hall = new PumpHall();
        hall.Do(new PlanCellsCommand([new CellPlan(hall.Id("H.1.1"), "Manufacture")]));
        var tree = hall.Now.Tree;
        var part = tree.Elements.RowOfCode("H.1.1");
        Assert.Equal(
            ["Design", "Manufacture", "Factory test"],
            tree.Elements.Texts(ElementTable.Activity)[(part + 1)..tree.SubtreeEnd[part]]
        );
    }

    [Fact]
    public void A_package_starts_after_what_comes_before_it_though_an_activity_between_is_ruled_out()
    {
        using var hall = new PumpHall();
        var pump = hall.Id("H.2.1");
        hall.Do(new RuleOutCellsCommand([new PartCell(pump, "Factory test")], "tested on site"));
        hall.Do(
            new PlanCellsCommand([
                new CellPlan(pump, "Erection"),
                new CellPlan(pump, "Manufacture"),
            ])
        );
        Assert.Equal(
            ["H.2.1.2-A H.2.1.1-A FS"],
            hall.Lines(LinkTable.Definition, LinkTable.From, LinkTable.To, LinkTable.Type)
        );
    }

    [Fact]
    public void A_cell_is_ruled_out_with_its_reason_and_planned_later()
    {
        using var hall = new PumpHall();
        hall.Do(new RuleOutCellsCommand([hall.Cell("H.2.2", "Design")], "catalogue"));
        Assert.Contains("Design: catalogue", hall.Row("H.2.2"));
        hall.Do(new RuleOutCellsCommand([hall.Cell("H.2.2", "Design")], "as train A"));
        Assert.Contains("Design: as train A", hall.Row("H.2.2"));
        hall.Do(new PlanCellsCommand([new CellPlan(hall.Id("H.2.2"), "Design", 8)]));
        Assert.Contains("Design: 8 h", hall.Row("H.2.2"));
    }

    [Fact]
    public void Clearing_takes_out_reasons_and_packages_that_hold_no_work_of_their_own()
    {
        using var hall = new PumpHall();
        var before = hall.Row("H.2.1");
        hall.Do(new ApplyWorkSetCommand([hall.Id("H.2.1")]));
        hall.Do(
            new ClearCellsCommand([
                .. new[]
                {
                    "Design",
                    "Manufacture",
                    "Factory test",
                    "Erection",
                    "Commissioning",
                }.Select(activity => hall.Cell("H.2.1", activity)),
                hall.Cell("H.1.2", "Erection"),
            ])
        );
        Assert.Equal(before, hall.Row("H.2.1"));
        Assert.Equal(["Design: missing", "Erection: missing"], hall.Row("H.1.2"));
        Assert.Empty(hall.Lines(ActivityTable.Definition, ActivityTable.Activity));
        Assert.Empty(hall.Lines(LinkTable.Definition, LinkTable.From));
        Assert.Equal("branch", hall.Text("H.2.1", ElementTable.Kind));
    }

    [Fact]
    public void A_package_with_a_budget_is_not_cleared()
    {
        using var hall = new PumpHall(
            more: "budget\npackage,cost_element,amount,hours\nH.1.1.1,labour,100,30\n"
        );
        hall.Refuses(
            new ClearCellsCommand([
                hall.Cell("H.1.1", "Design"),
                hall.Cell("H.1.1", "Factory test"),
            ]),
            "H.1.1.1 Feed pump, design has rows in budget and stays. Take that out first, or remove the package in the outline."
        );
    }

    [Fact]
    public void A_package_with_baseline_dates_is_not_cleared()
    {
        using var hall = new PumpHall(
            more: "packages\npackage,start,finish\nH.1.1.1,2026-02-02,2026-02-06\n"
        );
        hall.Refuses(
            new ClearCellsCommand([hall.Cell("H.1.1", "Design")]),
            "H.1.1.1 Feed pump, design has baseline dates and stays. Take that out first, or remove the package in the outline."
        );
    }

    [Fact]
    public void A_block_is_copied_decision_by_decision()
    {
        using var hall = new PumpHall();
        string[] activities = ["Design", "Manufacture", "Factory test"];
        hall.Do(
            new CopyCellsCommand([
                .. activities.Select(activity => new CellCopy(
                    hall.Cell("H.1.1", activity),
                    hall.Cell("H.2.1", activity)
                )),
                new CellCopy(hall.Cell("H.1.2", "Erection"), hall.Cell("H.2.2", "Erection")),
            ])
        );
        Assert.Equal(
            [
                "Design: 30 h",
                "Manufacture: missing",
                "Factory test: 88 h",
                "Erection: missing",
                "Commissioning: missing",
            ],
            hall.Row("H.2.1")
        );
        Assert.Equal(["Design: missing", "Erection: stands on the ground"], hall.Row("H.2.2"));
    }

    [Fact]
    public void A_block_without_decided_cells_is_not_copied()
    {
        using var hall = new PumpHall();
        hall.Refuses(
            new CopyCellsCommand([
                new CellCopy(hall.Cell("H.2.1", "Design"), hall.Cell("H.1.1", "Design")),
            ]),
            "There is nothing to copy: no cell of the block is decided that the other parts need too."
        );
    }

    [Fact]
    public void What_is_planned_is_not_ruled_out_by_a_copy()
    {
        using var hall = new PumpHall();
        hall.Do(new RuleOutCellsCommand([hall.Cell("H.2.1", "Design")], "same as train A"));
        hall.Refuses(
            new CopyCellsCommand([
                new CellCopy(hall.Cell("H.2.1", "Design"), hall.Cell("H.1.1", "Design")),
            ]),
            "Design of H.1.1 Feed pump is planned by H.1.1.1. Take the package out first."
        );
    }

    [Fact]
    public void A_planned_cell_is_not_ruled_out()
    {
        using var hall = new PumpHall();
        hall.Refuses(
            new RuleOutCellsCommand(
                [hall.Cell("H.2.1", "Design"), hall.Cell("H.1.1", "Design")],
                "catalogue"
            ),
            "Design of H.1.1 Feed pump is planned by H.1.1.1. Take the package out first."
        );
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    public void A_cell_is_not_ruled_out_without_a_reason(string reason)
    {
        using var hall = new PumpHall();
        hall.Refuses(
            new RuleOutCellsCommand([hall.Cell("H.2.1", "Design")], reason),
            "reason is empty, text expected"
        );
    }

    [Theory]
    [InlineData(-1, "-1")]
    [InlineData(0.001, "0.001")]
    public void Hours_are_not_negative_and_have_two_decimals(double hours, string said)
    {
        using var hall = new PumpHall();
        hall.Refuses(
            new PlanCellsCommand([new CellPlan(hall.Id("H.2.1"), "Design", (decimal)hours)]),
            $"Design of H.2.1 Feed pump: {said} hours found, hours from 0 with at most two decimals expected"
        );
    }

    [Fact]
    public void Only_what_a_part_needs_can_be_decided()
    {
        using var hall = new PumpHall();
        hall.Refuses(
            new PlanCellsCommand([new CellPlan(hall.Id("H.2.2"), "Commissioning")]),
            "H.2.2 Surge tank needs no activity \"Commissioning\" by its part type."
        );
        hall.Refuses(
            new PlanCellsCommand([new CellPlan(hall.Id("H.2.3"), "Design")]),
            "H.2.3 Frame has no part type."
        );
        hall.Refuses(
            new RuleOutCellsCommand([new PartCell(hall.Id("H.2.4"), "Design")], "odd"),
            "The part type bare of H.2.4 Odd thing has no work set."
        );
        hall.Refuses(
            new PlanCellsCommand([new CellPlan(99_999, "Design")]),
            "This element is no longer there; somebody has removed it."
        );
    }
}
