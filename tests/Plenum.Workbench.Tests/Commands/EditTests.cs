using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Commands.Breakdown;
using Plenum.Workbench.Tests.Audit;
using Plenum.Workbench.Tests.Oracle;

namespace Plenum.Workbench.Tests.Commands;

/// <summary>Edits of the breakdown, one by one. How a person works is common practice; no source.</summary>
public sealed class EditTests
{
    [Fact]
    public void A_new_sister_comes_after_the_one_it_was_typed_at_with_the_next_free_code()
    {
        var desk = Small();
        desk.Edit(new AddElementCommand(desk.Id("0"), desk.Id("01"), "Screens"), "Ann");
        Assert.Equal(["0 Plant", "  01 Intake", "  03 Screens", "  02 Outfall"], desk.Outline());
    }

    [Fact]
    public void A_part_goes_one_level_down_below_its_sister_and_up_again_beside_it()
    {
        var desk = Small();
        var outfall = desk.Id("02");
        desk.Edit(new StepElementCommand(outfall, Step.LevelDown), "Ann");
        Assert.Equal(["0 Plant", "  01 Intake", "    02 Outfall"], desk.Outline());
        desk.Edit(new StepElementCommand(outfall, Step.LevelUp), "Ann");
        Assert.Equal(["0 Plant", "  01 Intake", "  02 Outfall"], desk.Outline());
    }

    [Fact]
    public void Codes_stay_when_parts_change_places_until_renumbering_is_asked_for()
    {
        var desk = Small();
        desk.Edit(new StepElementCommand(desk.Id("02"), Step.Up), "Ann");
        Assert.Equal(["0 Plant", "  02 Outfall", "  01 Intake"], desk.Outline());
        desk.Edit(new RenumberCommand(desk.Id("0")), "Ann");
        Assert.Equal(["0 Plant", "  01 Outfall", "  02 Intake"], desk.Outline());
    }

    [Fact]
    public void A_part_is_not_moved_below_itself()
    {
        var desk = Small();
        desk.Edit(new AddElementCommand(desk.Id("01"), 0, "Screens"), "Ann");
        var wrong = Assert.Throws<EditException>(() =>
            desk.Edit(new MoveElementCommand(desk.Id("01"), desk.Id("01.1"), 0), "Ann")
        );
        Assert.Equal("01 Intake cannot be moved below itself.", wrong.Message);
    }

    [Fact]
    public void A_part_is_repeated_for_the_sisters_of_its_parent_that_lack_it()
    {
        var desk = Small();
        desk.Edit(new AddElementCommand(desk.Id("01"), 0, "Foundation"), "Ann");
        desk.Edit(new AddElementCommand(desk.Id("01.1"), 0, "Piles"), "Ann");
        desk.Edit(new RepeatForSistersCommand(desk.Id("01.1")), "Ann");
        Assert.Equal(
            [
                "0 Plant",
                "  01 Intake",
                "    01.1 Foundation",
                "      01.1.01 Piles",
                "  02 Outfall",
                "    02.1 Foundation",
                "      02.1.01 Piles",
            ],
            desk.Outline()
        );
    }

    [Fact]
    public void Whoever_writes_second_sees_both_values_and_who_wrote_the_first()
    {
        var desk = Small();
        var id = desk.Id("01");
        var seenByBoth = new CellText("elements", id, "name", "Intake works", "Intake");
        desk.Edit(new SetCellCommand(seenByBoth), "Ann");
        var both = Assert.Throws<EditConflictException>(() =>
            desk.Edit(new SetCellCommand(seenByBoth with { Text = "Sea intake" }), "Bo")
        );
        var conflict = Assert.Single(both.Conflicts);
        Assert.Equal(
            ("Intake works", "Sea intake", "Ann"),
            (conflict.Theirs, conflict.Mine, conflict.Person)
        );
        Assert.Equal("Intake works", desk.Cell(ElementTable.Name, id));
        desk.Edit(
            new SetCellCommand(seenByBoth with { Text = "Sea intake", Seen = "Intake works" }),
            "Bo"
        );
        Assert.Equal("Sea intake", desk.Cell(ElementTable.Name, id));
    }

    [Fact]
    public void Two_who_write_the_same_value_do_not_disturb_each_other()
    {
        var desk = Small();
        var write = new SetCellCommand(
            new CellText("elements", desk.Id("01"), "name", "Sea intake", "Intake")
        );
        desk.Edit(write, "Ann");
        Assert.Empty(desk.Edit(write, "Bo").Changes);
    }

    [Theory]
    [InlineData("name", " ", "name: \" \" found, text expected")]
    [InlineData("name", "", "name is empty, text expected")]
    [InlineData("code", "02", "02 stands in elements already")]
    [InlineData("code", " 05", "code: \" 05\" found, a code without spaces at its ends expected")]
    [InlineData(
        "allotted",
        "12.345",
        "allotted: \"12.345\" found, an amount such as 1234.55 with at most 2 decimals, not negative, at most 10000000000000.00 expected"
    )]
    [InlineData(
        "allotted",
        "-1",
        "allotted: \"-1\" found, an amount such as 1234.55 with at most 2 decimals, not negative, at most 10000000000000.00 expected"
    )]
    [InlineData(
        "allotted_hours",
        "1,5",
        "allotted_hours: \"1,5\" found, hours such as 12.5, not below 0, at most 2 decimals, at most 100000000000 expected"
    )]
    [InlineData("person", "nobody", "person: \"nobody\" found, the code of a person expected")]
    [InlineData(
        "unit",
        "nowhere",
        "unit: \"nowhere\" found, the code of an organisation unit expected"
    )]
    [InlineData("part_type", "pump", "part_type: \"pump\" found, the code of a part type expected")]
    [InlineData(
        "kind",
        "bit",
        "kind: \"bit\" found, one of project, branch, work_package, planning_package expected"
    )]
    [InlineData(
        "kind",
        "project",
        "01: only the root is the project. Expected: branch, work_package or planning_package"
    )]
    [InlineData(
        "quantity",
        "many",
        "quantity: \"many\" found, a number with a decimal point, such as 12.5, not below 0, at most 28 digits expected"
    )]
    [InlineData(
        "order",
        "first",
        "order: \"first\" found, a whole number from -1000000000 to 1000000000 expected"
    )]
    [InlineData(
        "parent",
        "01",
        "the parents form a ring of 1: 01 in 01. Expected: a parent that is not below the row itself"
    )]
    public void A_field_that_is_not_understood_changes_nothing(
        string column,
        string text,
        string message
    )
    {
        var desk = Small();
        var before = desk.Current;
        var wrong = Assert.Throws<EditException>(() =>
            desk.Edit(
                RandomCommands.Write(
                    desk.Current,
                    ElementTable.Definition.Columns.Single(known => known.Name == column),
                    desk.Id("01"),
                    text
                ),
                "Ann"
            )
        );
        Assert.Equal(message, wrong.Message);
        Assert.Same(before, desk.Current);
    }

    [Fact]
    public void A_package_with_a_budget_gets_no_children()
    {
        var desk = Desk.Of(Answers.Import(SoundProject.Make()));
        var package = desk.Current.Tree.Elements.Ids[desk.Current.Tree.PackageRows[0]];
        var wrong = Assert.Throws<EditException>(() =>
            desk.Edit(new AddElementCommand(package, 0, "Part"), "Ann")
        );
        Assert.Contains(
            "Divide it, or take them out first.",
            wrong.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Work_that_was_reported_is_not_removed()
    {
        var desk = Desk.Of(Answers.Import(SoundProject.Make()));
        var reported = desk.Current[Core.Status.StatusTable.Definition];
        var (_, package) = Core.Status.StatusTable.Package.DecodeReference(
            reported.Ints(Core.Status.StatusTable.Package)[0]
        );
        var wrong = Assert.Throws<EditException>(() =>
            desk.Edit(new RemoveElementsCommand([package]), "Ann")
        );
        Assert.Contains("What has happened stays", wrong.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_part_that_has_lost_its_last_child_is_a_gap_and_no_package()
    {
        var desk = Small();
        desk.Edit(new AddElementCommand(desk.Id("01"), 0, "Screens"), "Ann");
        desk.Edit(new RemoveElementsCommand([desk.Id("01.1")]), "Ann");
        Assert.Equal("branch", desk.Cell(ElementTable.Kind, desk.Id("01")));
    }

    /// <summary>A plant of two parts, codes by the mask 00.0.00.</summary>
    private static EditDesk Small()
    {
        var desk = Desk.Of(Project.Empty);
        foreach (
            var (key, value) in new[]
            {
                ("name", "Plant"),
                ("currency", "EUR"),
                ("code_mask", "00.0.00"),
            }
        )
        {
            desk.Edit(new AddRowCommand("project", [new("key", key), new("value", value)]), "Ann");
        }

        desk.Edit(new AddElementCommand(0, 0, "Plant"), "Ann");
        desk.Edit(new AddElementCommand(desk.Id("0"), 0, "Intake"), "Ann");
        desk.Edit(new AddElementCommand(desk.Id("0"), desk.Id("01"), "Outfall"), "Ann");
        return desk;
    }
}
