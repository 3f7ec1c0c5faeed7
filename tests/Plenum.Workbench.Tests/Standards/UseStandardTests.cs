using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Commands.Breakdown;
using Plenum.Workbench.Standards;

namespace Plenum.Workbench.Tests.Standards;

/// <summary>A standard breakdown starts a project, or fills a part of one.</summary>
public class UseStandardTests
{
    private static readonly StandardContent Station = StandardContent.Of(
        ShippedStandards.Find("pumping-station")!,
        "pumping-station"
    );

    [Theory]
    [InlineData("water-treatment-plant")]
    [InlineData("substation")]
    [InlineData("pumping-station")]
    [InlineData("aircraft-system")]
    public void A_project_that_begins_with_a_standard_breakdown_equals_it(string key)
    {
        var standard = ShippedStandards.Find(key)!;
        var content = StandardContent.Of(standard, key);
        var project = Used(Project.Empty, new UseStandardCommand(0, content, []));

        // all but the project's own code and name, which are not a standard's to set
        Assert.Equal(Rows(content, "elements"), Rows(StandardContent.Of(project, key), "elements"));
        Assert.Equal(
            Rows(content, "work_sets"),
            Rows(StandardContent.Of(project, key), "work_sets")
        );
        Assert.Equal(Rows(content, "packages"), Rows(StandardContent.Of(project, key), "packages"));
        Assert.Empty(project[ProjectTable.Definition].Ids);
    }

    [Fact]
    public void A_part_is_filled_with_codes_of_the_project_and_types_that_it_does_not_have()
    {
        var project = DemoFiles.Project;
        var types = project[PartTypeTable.Definition].Count;
        var under = Id(project, "07.5");
        var filled = Used(project, new UseStandardCommand(under, Station, []));
        var row = filled.Tree.Elements.RowOf(under);

        Assert.Equal(Station.Elements, filled.Tree.SubtreeEnd[row] - row);
        Assert.Equal(
            ["07.5.01", "07.5.01.1"],
            [filled.Tree.Code(row + 1), filled.Tree.Code(row + 2)]
        );
        Assert.Equal("Inlet works", filled.Tree.Name(row + 1));
        Assert.Equal("function", filled.Tree.Elements.Texts(ElementTable.Split)[row]);
        Assert.Equal("Outfall marking and buoys", filled.Tree.Name(row));
        Assert.True(filled[PartTypeTable.Definition].Count > types);
        // the demo has a work set of its own for pumps; it stays
        Assert.Equal(Set(project, "pump"), Set(filled, "pump"));
    }

    [Fact]
    public void What_does_not_apply_is_left_out_with_a_reason_that_is_kept()
    {
        var project = Used(
            Project.Empty,
            new UseStandardCommand(
                0,
                Station,
                [
                    new LeaveOut("8", "built beside the old station"),
                    new LeaveOut("3.2", "no storm flow"),
                ]
            )
        );
        var kept = project[LeftOutTable.Definition];

        Assert.Equal(-1, project[ElementTable.Definition].RowOfCode("8.1"));
        Assert.Equal(-1, project[ElementTable.Definition].RowOfCode("3.2.4"));
        Assert.Equal(
            ["Storm pumps", "Temporary diversion"],
            kept.Texts(LeftOutTable.Part).ToArray()
        );
        Assert.Equal(
            ["no storm flow", "built beside the old station"],
            kept.Texts(LeftOutTable.Reason).ToArray()
        );
        Assert.Equal(
            [Id(project, "3"), Id(project, "PST")],
            kept.Ints(LeftOutTable.Element).ToArray()
        );
        Assert.Equal("pumping-station", kept.Texts(LeftOutTable.Standard)[0]);
    }

    [Fact]
    public void A_part_that_loses_all_its_parts_is_still_to_be_broken_down()
    {
        var leave = Enumerable
            .Range(1, 6)
            .Select(number => new LeaveOut($"1.{number}", "by others"));
        var project = Used(Project.Empty, new UseStandardCommand(0, Station, [.. leave]));
        var row = project[ElementTable.Definition].RowOfCode("1");

        Assert.Equal(ElementTable.Branch, project.Tree.Kind(row));
        Assert.Equal(6, project[LeftOutTable.Definition].Count);
    }

    public static TheoryData<string, string, string> Faults =>
        new()
        {
            { "31", "reason", "a code of the standard breakdown" },
            { "PST", "reason", "a part of it" },
            { "8", " ", "a reason" },
        };

    [Theory]
    [MemberData(nameof(Faults))]
    public void What_cannot_be_left_out_is_told(string code, string reason, string expected) =>
        Assert.Equal(expected, Refused([new LeaveOut(code, reason)]).Expected);

    [Fact]
    public void A_part_of_what_is_left_out_needs_no_reason_of_its_own() =>
        Assert.Equal(
            "the greater part only",
            Refused([new LeaveOut("8", "none"), new LeaveOut("8.1", "none")]).Expected
        );

    [Fact]
    public void Two_parts_of_one_name_are_not_put_side_by_side()
    {
        var once = Used(Project.Empty, new UseStandardCommand(0, Station, []));
        var twice = Assert.Throws<EditException>(() =>
            EditTrial.Of(once, new UseStandardCommand(Id(once, "PST"), Station, []))
        );

        Assert.Equal(9, twice.Faults.Count);
        Assert.All(
            twice.Faults,
            fault => Assert.Equal("a name that no sister has", fault.Expected)
        );
    }

    [Fact]
    public void Parts_of_two_logics_are_not_put_side_by_side()
    {
        var fault = Assert
            .Throws<EditException>(() =>
                EditTrial.Of(
                    DemoFiles.Project,
                    new UseStandardCommand(Id(DemoFiles.Project, "10"), Station, [])
                )
            )
            .Faults.Single();

        Assert.Equal(("split", "function", "place"), (fault.Column, fault.Value, fault.Expected));
    }

    [Fact]
    public void Taking_over_a_standard_breakdown_is_one_step_to_take_back()
    {
        using var folder = new TemporaryFolder();
        OpenProject.Create(folder["new.plenum"], "a.planner", TimeProvider.System);
        using var project = OpenProject.Open(
            folder["new.plenum"],
            TimeProvider.System,
            ct: TestContext.Current.CancellationToken
        );
        project.Edit(new UseStandardCommand(0, Station, [new LeaveOut("8", "none")]), "a.planner");
        Assert.True(project.Current.Tree.Count > 150);

        project.Undo("a.planner");

        Assert.All(project.Current.Tables, table => Assert.Equal(0, table.Count));
    }

    private static EditFault Refused(LeaveOut[] leave) =>
        Assert
            .Throws<EditException>(() =>
                EditTrial.Of(Project.Empty, new UseStandardCommand(0, Station, leave))
            )
            .Faults.Single();

    private static Project Used(Project project, UseStandardCommand command) =>
        EditTrial.Of(project, command).Next;

    private static int Id(Project project, string code)
    {
        var elements = project[ElementTable.Definition];
        return elements.Ids[elements.RowOfCode(code)];
    }

    private static IEnumerable<string> Set(Project project, string type)
    {
        var sets = project[WorkSetTable.Definition];
        var id = project[PartTypeTable.Definition].Ids[
            project[PartTypeTable.Definition].RowOfCode(type)
        ];
        for (var row = 0; row < sets.Count; row++)
        {
            if (sets.Ints(WorkSetTable.PartType)[row] == id)
            {
                yield return sets.Texts(WorkSetTable.Activity)[row]!;
            }
        }
    }

    private static IEnumerable<string> Rows(StandardContent content, string table) =>
        content
            .Tables.FirstOrDefault(rows => rows.Table == table)
            ?.Rows.Select(row => string.Join('|', row))
        ?? [];
}
