using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Workbench.Tests.Questions;
using Plenum.Workbench.Workbooks;

namespace Plenum.Workbench.Tests.Workbooks;

/// <summary>A workbook that is edited and read back changes what was edited, and nothing else.</summary>
public class WorkbookTests
{
    private static readonly Project Demo = DemoFiles.Project;

    [Theory]
    [InlineData(null)]
    [InlineData("03.4")]
    [InlineData("03.4.01.1")]
    public void A_workbook_that_nobody_has_edited_changes_nothing(string? under)
    {
        using var book = new EditedBook(Demo, under);
        var answer = book.Untouched();

        Assert.Empty(answer.Errors.Items);
        Assert.Empty(answer.Changes);
        Assert.Empty(answer.Missing);
        Assert.Null(answer.Command);
    }

    [Fact]
    public void Names_money_and_texts_are_taken_over()
    {
        using var book = new EditedBook(Demo, "03.4");
        book.Outline["03.4"]["name"] = "RO train D, rebuilt";
        book.Outline["03.4"]["allotted"] = "12500000.5";
        book.Dictionary["03.4"]["output"] = "A train\nthat runs";
        book.Dictionary["03.4"].Remove("acceptance");
        var next = book.Taken();
        var row = next.Tree.Elements.RowOfCode("03.4");

        Assert.Equal("RO train D, rebuilt", next.Tree.Name(row));
        Assert.Equal(1_250_000_050, next.Tree.Elements.Longs(ElementTable.Allotted)[row]);
        Assert.Equal("A train\nthat runs", next.Tree.Elements.Texts(ElementTable.Output)[row]);
        Assert.Null(next.Tree.Elements.Texts(ElementTable.Acceptance)[row]);
        Assert.Equal(Demo.Tree.Count, next.Tree.Count);
    }

    [Fact]
    public void Another_level_moves_a_row_with_all_below_it()
    {
        using var book = new EditedBook(Demo, "03");
        var outline = book.Outline;
        var at = outline.IndexOf("03.4");
        var end = outline.IndexOf("03.5");
        for (var row = at; row < end; row++)
        {
            outline.Rows[row]["level"] = Deeper(outline.Rows[row]["level"]);
        }

        var answer = book.Read();
        Assert.Equal(
            ["moved 03.4 03 03.3"],
            answer.Changes.Select(change =>
                $"{change.What} {change.Code} {change.Before} {change.After}"
            )
        );
        var next = book.Taken();
        Assert.Equal("03.3", ParentOf(next, "03.4"));
        Assert.Equal(
            Demo.Tree.SubtreeEnd[Row(Demo, "03.4")] - Row(Demo, "03.4"),
            next.Tree.SubtreeEnd[Row(next, "03.4")] - Row(next, "03.4")
        );
    }

    [Fact]
    public void New_rows_become_elements_with_the_next_codes()
    {
        using var book = new EditedBook(Demo, "03");
        var outline = book.Outline;
        outline.Rows.InsertRange(
            outline.IndexOf("03.5"),
            [
                New("3", "Train E", ("split", "part")),
                New("4", "Train E racks", ("part_type", "pump"), ("allotted", "100")),
                New("4", "Train E pumps", ("code", "03.E.2")),
            ]
        );
        var next = book.Taken();
        var row = next.Tree.SubtreeEnd[Row(next, "03.4")];

        Assert.Equal(
            ["03.10 Train E", "03.10.01 Train E racks", "03.E.2 Train E pumps", "03.5"],
            [
                $"{next.Tree.Code(row)} {next.Tree.Name(row)}",
                $"{next.Tree.Code(row + 1)} {next.Tree.Name(row + 1)}",
                $"{next.Tree.Code(row + 2)} {next.Tree.Name(row + 2)}",
                next.Tree.Code(row + 3),
            ]
        );
        Assert.Equal(10_000, next.Tree.Elements.Longs(ElementTable.Allotted)[row + 1]);
    }

    [Fact]
    public void Sisters_stand_in_the_order_of_the_sheet()
    {
        using var book = new EditedBook(Demo, "03");
        var outline = book.Outline;
        var (from, to) = (outline.IndexOf("03.5"), outline.IndexOf("03.6"));
        var block = outline.Rows.GetRange(from, to - from);
        outline.Rows.RemoveRange(from, to - from);
        outline.Rows.InsertRange(outline.IndexOf("03.1"), block);
        var next = book.Taken();

        Assert.Equal("03.5", next.Tree.Code(Row(next, "03") + 1));
        Assert.Equal("03.1", next.Tree.Code(next.Tree.SubtreeEnd[Row(next, "03.5")]));
        Assert.Equal("03.6", next.Tree.Code(next.Tree.SubtreeEnd[Row(next, "03.4")]));
    }

    [Fact]
    public void Rows_that_were_deleted_stay_and_so_does_what_is_below_them()
    {
        using var book = new EditedBook(Demo, "03");
        book.Outline.Rows.RemoveAt(book.Outline.IndexOf("03.4"));
        book.Outline["03.1"]["name"] = "RO train A, rebuilt";
        var answer = book.Read();
        var next = book.Taken();

        Assert.Equal(["03.4"], answer.Missing);
        Assert.Equal(["name"], answer.Changes.Select(change => change.What));
        Assert.Equal("03", ParentOf(next, "03.4"));
        Assert.Equal("03.4", ParentOf(next, "03.4.01"));
    }

    [Fact]
    public void A_reason_in_an_empty_cell_rules_an_activity_out_and_clearing_it_no_longer_does()
    {
        var ruledOut = Cell(isRuledOut: true);
        var missing = Cell(isRuledOut: false);
        using var book = new EditedBook(Demo, null);
        book.Matrix[Demo.Tree.Code(ruledOut.Row)].Remove(ruledOut.Activity.ToLowerInvariant());
        book.Matrix[Demo.Tree.Code(missing.Row)][missing.Activity.ToLowerInvariant()] =
            "bought as it is";
        var next = book.Taken();
        var parts = Parts(next);
        var notNeeded = next[NotNeededTable.Definition];

        Assert.False(parts.IsRuledOut(ruledOut.Row, ruledOut.Activity));
        Assert.True(parts.IsRuledOut(missing.Row, missing.Activity));
        Assert.Equal("bought as it is", notNeeded.Texts(NotNeededTable.Reason)[^1]);
        Assert.Equal(Demo[NotNeededTable.Definition].Count, notNeeded.Count);
    }

    /// <summary>The first cell of the matrix that is ruled out, or about which nothing is said.</summary>
    private static (int Row, string Activity) Cell(bool isRuledOut)
    {
        var parts = Parts(Demo);
        return (
            from row in Enumerable.Range(0, Demo.Tree.Count)
            from activity in parts.Needed(row)
            where
                !parts.Planned(row).Contains(activity)
                && parts.IsRuledOut(row, activity) == isRuledOut
            select (row, activity)
        ).First();
    }

    private static PartActivities Parts(Project project) =>
        new(project.Tree, project[WorkSetTable.Definition], project[NotNeededTable.Definition]);

    [Fact]
    public void A_workbook_is_one_step_to_take_back()
    {
        using var folder = new TemporaryFolder();
        OpenProject.Create(folder["plant.plenum"], "a.planner", TimeProvider.System);
        using var project = OpenProject.Open(
            folder["plant.plenum"],
            TimeProvider.System,
            ct: TestContext.Current.CancellationToken
        );
        project.Edit(
            new Plenum.Workbench.Commands.Breakdown.PasteListCommand(
                0,
                0,
                "Plant\n  Intake\n  Filters\n    Sand"
            ),
            "a.planner"
        );
        var before = project.Current;
        using var book = new EditedBook(before, null);
        book.Outline.Rows[1]["name"] = "Sea intake";
        book.Outline.Rows[3]["level"] = "2";
        book.Outline.Rows.Add(New("3", "Gravel"));
        project.Edit(book.Read().Command!, "a.planner");
        Assert.Equal(5, project.Current.Tree.Count);

        project.Undo("a.planner");

        Assert.Equal(
            Enumerable.Range(0, 4).Select(row => (before.Tree.Name(row), before.Tree.Level[row])),
            Enumerable
                .Range(0, project.Current.Tree.Count)
                .Select(row => (project.Current.Tree.Name(row), project.Current.Tree.Level[row]))
        );
    }

    [Fact]
    public void Generated_projects_come_back_as_they_went() =>
        GeneratedProjects.Each(
            (project, random) =>
            {
                // a workbook of each is written and read: every fifth is enough
                if (random.Next(5) > 0)
                {
                    return;
                }

                using var folder = new TemporaryFolder();
                WorkbookFile.Write(project, null, folder["plant.xlsx"]);
                var answer = WorkbookReading.Read(project, folder["plant.xlsx"]);

                Assert.Empty(answer.Errors.Items);
                Assert.Empty(answer.Changes);
                Assert.Empty(answer.Missing);
            }
        );

    private static Dictionary<string, string> New(
        string level,
        string name,
        params (string Heading, string Text)[] cells
    )
    {
        Dictionary<string, string> row = new(StringComparer.Ordinal)
        {
            ["level"] = level,
            ["name"] = name,
            ["code"] = "",
        };
        foreach (var (heading, text) in cells)
        {
            row[heading] = text;
        }

        return row;
    }

    private static string Deeper(string level) =>
        (int.Parse(level, System.Globalization.CultureInfo.InvariantCulture) + 1).ToString(
            System.Globalization.CultureInfo.InvariantCulture
        );

    private static int Row(Project project, string code) => project.Tree.Elements.RowOfCode(code);

    private static string ParentOf(Project project, string code) =>
        project.Tree.Code(project.Tree.Parent[Row(project, code)]);
}
