using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Commands.Breakdown;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Tests.Lists;

/// <summary>A pasted list becomes a subtree: all of its rows, with codes of the project, or none.</summary>
public class PasteListTests
{
    private static readonly Project Demo = DemoFiles.Project;

    [Fact]
    public void Rows_without_codes_get_those_of_the_projects_mask()
    {
        var next = Pasted("03", "03.9", "Pilot plant\n  Pilot racks\n  Pilot pumps\nRoof");

        Assert.Equal(
            ["03.10 Pilot plant", "03.10.01 Pilot racks", "03.10.02 Pilot pumps", "03.11 Roof"],
            Added(next)
        );
    }

    [Fact]
    public void Rows_keep_the_codes_that_the_list_gives()
    {
        var next = Pasted("03", "03.9", "03.A Pilot plant\n03.A.1 Pilot racks\n03.A.2 Pilot pumps");

        Assert.Equal(["03.A Pilot plant", "03.A.1 Pilot racks", "03.A.2 Pilot pumps"], Added(next));
    }

    [Fact]
    public void Rows_come_after_the_sister_that_is_named()
    {
        var next = Pasted("03", "03.1", "Pilot plant\nPilot roof");
        var tree = next.Tree;
        var row = tree.Elements.RowOfCode("03.1");

        Assert.Equal("Pilot plant", tree.Name(tree.SubtreeEnd[row]));
        Assert.Equal("Pilot roof", tree.Name(tree.SubtreeEnd[row] + 1));
        Assert.Equal("03.2", tree.Code(tree.SubtreeEnd[row] + 2));
    }

    [Fact]
    public void Cells_are_read_as_in_files()
    {
        var next = Pasted(
            "03",
            "03.9",
            "name\tpart_type\tallotted\thazards\nPilot pumps\tpump\t1200.50\tlifting;pressure"
        );
        var row = next.Tree.Elements.RowOfCode("03.10");

        Assert.Equal(120_050, next.Tree.Elements.Longs(ElementTable.Allotted)[row]);
        Assert.Equal("lifting;pressure", next.Tree.Elements.Texts(ElementTable.Hazards)[row]);
    }

    [Theory]
    [InlineData("code\tname\nP\tPilot\n11\tRacks", "code", "line 3", "a code that is free")]
    [InlineData("Pilot plant\nRO train D", "name", "line 2", "a name that no sister has")]
    [InlineData(
        "name\tpart_type\nPilot\tsubmarine",
        "part_type",
        "line 2",
        "the code of a part type"
    )]
    [InlineData("name\tallotted\nPilot\t12,5", "allotted", "line 2", "an amount such as 1234.55")]
    [InlineData("Pilot plant\n Racks\n   Pumps", null, "line 3", "level 1 to 3")]
    [InlineData("name\tsplti\nPilot\tpart", "splti", "line 1", "split")]
    public void A_row_that_does_not_fit_is_told_and_nothing_is_taken(
        string list,
        string? column,
        string line,
        string expected
    )
    {
        var fault = Assert.Throws<EditException>(() => Pasted("03", "03.9", list)).Faults.Single();

        Assert.Equal((column, line), (fault.Column, fault.Row));
        Assert.StartsWith(expected, fault.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void All_rows_that_do_not_fit_are_told_at_once()
    {
        var faults = Assert
            .Throws<EditException>(() =>
                Pasted("03", "03.9", "name\tallotted\tperson\nPilot\tmuch\tnobody\nRoof\t-1\t")
            )
            .Faults;

        Assert.Equal(
            ["allotted line 2", "person line 2", "allotted line 3"],
            faults.Select(fault => $"{fault.Column} {fault.Row}")
        );
    }

    [Fact]
    public void An_empty_project_takes_a_list_with_one_root_only()
    {
        var fault = Assert
            .Throws<EditException>(() =>
                EditTrial.Of(Project.Empty, new PasteListCommand(0, 0, "Plant\n  Intake\nRoads"))
            )
            .Faults.Single();
        Assert.Equal(("line 3", "one row on the first level"), (fault.Row, fault.Expected));

        var made = EditTrial.Of(
            Project.Empty,
            new PasteListCommand(0, 0, "Plant\n  Intake\n  Roads")
        );
        Assert.Equal(["1 Plant", "1.1 Intake", "1.2 Roads"], Added(made.Next));
    }

    [Fact]
    public void A_package_with_work_in_it_takes_no_parts() =>
        Assert.Contains(
            "is a package that has rows in",
            Assert.Throws<EditException>(() => Pasted("01.1.01.1", null, "Pilot plant")).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void The_preview_says_what_would_be_taken()
    {
        var answer = Asked("Pilot plant\n  Pilot racks\n  Pilot pumps");

        Assert.True(answer.CanBeTaken);
        Assert.Equal(
            [("03.10", 1, true), ("03.10.01", 2, true), ("03.10.02", 2, true)],
            answer.Rows.Select(row => (row.Code, row.Level, row.IsCodeNew))
        );
    }

    [Fact]
    public void The_preview_of_a_list_with_faults_shows_its_rows_and_all_faults()
    {
        var answer = Asked("Pilot plant\n  Racks\n      Pumps\nRO train D");

        Assert.False(answer.CanBeTaken);
        Assert.Equal(4, answer.Rows.Count);
        Assert.Equal("line 3", Assert.Single(answer.Faults).Row);
    }

    [Fact]
    public void A_list_of_ten_thousand_rows_is_pasted_and_taken_back_whole()
    {
        using var folder = new TemporaryFolder();
        OpenProject.Create(folder["new.plenum"], "a.planner", TimeProvider.System);
        using var project = OpenProject.Open(
            folder["new.plenum"],
            TimeProvider.System,
            ct: TestContext.Current.CancellationToken
        );
        var rows = Enumerable.Range(1, 9_999).Select(row => $" Part {row}");
        project.Edit(new PasteListCommand(0, 0, "Plant\n" + string.Join('\n', rows)), "a.planner");
        Assert.Equal(10_000, project.Current.Tree.Count);
        Assert.Equal("1.9999", project.Current.Tree.Code(9_999));

        project.Undo("a.planner");
        Assert.Equal(0, project.Current.Tree.Count);
    }

    private static PasteAnswer Asked(string list) =>
        new PasteQuestion(new PasteListCommand(Id("03"), Id("03.9"), list)).Ask(Demo);

    private static Project Pasted(string parent, string? after, string list) =>
        EditTrial
            .Of(Demo, new PasteListCommand(Id(parent), after is null ? 0 : Id(after), list))
            .Next;

    private static IEnumerable<string> Added(Project next)
    {
        var known = Demo.Tree.Elements;
        var tree = next.Tree;
        return Enumerable
            .Range(0, tree.Count)
            .Where(row => tree.Count < 1_000 || known.RowOf(tree.Elements.Ids[row]) < 0)
            .Select(row => $"{tree.Code(row)} {tree.Name(row)}");
    }

    private static int Id(string code)
    {
        var elements = Demo[ElementTable.Definition];
        return elements.Ids[elements.RowOfCode(code)];
    }
}
