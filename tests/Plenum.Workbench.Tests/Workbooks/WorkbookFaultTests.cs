using Plenum.Core.Foundation;
using Plenum.Workbench.Commands;

namespace Plenum.Workbench.Tests.Workbooks;

/// <summary>What does not fit in a workbook is told with sheet, row and column, and nothing is taken.</summary>
public class WorkbookFaultTests
{
    public static TheoryData<string> Names => [.. Edits.Keys];

    private static readonly Dictionary<
        string,
        (Action<EditedBook> Edit, string Place, string Expected)
    > Edits = new()
    {
        ["A changed code"] = (
            book => book.Outline["03.4.01"]["code"] = "03.4.99",
            "outline 3 code",
            "03.4.01"
        ),
        ["A changed id"] = (
            book => book.Outline["03.4.01"]["id"] = "999999",
            "outline 3 id",
            "the id that was written"
        ),
        ["A deleted id"] = (
            book => book.Outline["03.4.01"].Remove("id"),
            "outline 3 id",
            "the id that was written"
        ),
        ["A row twice"] = (
            book => book.Outline.Rows.Add(new(book.Outline["03.4.01"])),
            "outline 118 id",
            "each key once"
        ),
        ["A level left out"] = (
            book => book.Outline["03.4.01.1"]["level"] = "7",
            "outline 4 level",
            "4 to 5"
        ),
        ["A level above the first row's"] = (
            book => book.Outline["03.4.01"]["level"] = "2",
            "outline 3 level",
            "4"
        ),
        ["A level in words"] = (
            book => book.Outline["03.4.01"]["level"] = "fourth",
            "outline 3 level",
            "a whole number from 1"
        ),
        ["Another first row"] = (
            book => book.Outline.Rows[0]["level"] = "2",
            "outline 2 level",
            "the element that the workbook was written for, on its own level"
        ),
        ["An empty name"] = (
            book => book.Outline["03.4.01"].Remove("name"),
            "outline 3 name",
            "a name"
        ),
        ["A name in the dictionary"] = (
            book => book.Dictionary["03.4.01"]["name"] = "Racks, red",
            "dictionary 3 name",
            DemoFiles.Project.Tree.Name(DemoFiles.Project.Tree.Elements.RowOfCode("03.4.01"))
        ),
        ["A new row in the dictionary"] = (
            book => book.Dictionary.Rows.Add(new() { ["code"] = "", ["output"] = "more" }),
            "dictionary 118 id",
            "the id that was written"
        ),
        ["A planned cell in the matrix"] = (
            book => book.Matrix["03.4.01"]["design"] = "not needed",
            "matrix 2 Design",
            "03.4.01.1"
        ),
        ["An unknown sheet"] = (book => book.Matrix.Name = "matrx", "matrx  ", "matrix"),
        ["A missing outline"] = (book => book.Sheets.RemoveAt(0), "  ", "a sheet outline"),
        ["An unknown column"] = (
            book => book.Outline.Headings[^1] = "alloted_hours",
            "outline 1 alloted_hours",
            "allotted_hours"
        ),
        ["A missing column"] = (
            book => book.Outline.Headings.Remove("level"),
            "outline 1 level",
            "a column level"
        ),
    };

    [Theory]
    [MemberData(nameof(Names))]
    public void A_fault_is_told_with_its_place(string fault)
    {
        var (edit, place, expected) = Edits[fault];
        using var book = new EditedBook(DemoFiles.Project, "03.4");
        edit(book);
        var answer = book.Read();

        Assert.Null(answer.Command);
        var error = Assert.Single(answer.Errors.Items);
        Assert.Equal((place, expected), (PlaceOf(error), error.Expected));
    }

    [Fact]
    public void Two_rows_whose_ids_are_swapped_are_both_told()
    {
        using var book = new EditedBook(DemoFiles.Project, "03.4");
        var (one, other) = (book.Outline["03.4.01"], book.Outline["03.4.02"]);
        (one["id"], other["id"]) = (other["id"], one["id"]);

        Assert.Equal(
            ["03.4.02", "03.4.01"],
            book.Read().Errors.Items.Select(error => error.Expected)
        );
    }

    [Fact]
    public void A_cell_that_is_not_understood_is_told_with_its_row_and_nothing_is_taken()
    {
        using var book = new EditedBook(DemoFiles.Project, "03.4");
        book.Outline["03.4"]["name"] = "Train D, rebuilt";
        book.Outline["03.4.01"]["person"] = "nobody";
        book.Outline["03.4.02"]["allotted"] = "-5";
        var command = book.Read().Command;

        Assert.NotNull(command);
        var wrong = Assert.Throws<EditException>(() => EditTrial.Of(DemoFiles.Project, command));
        Assert.Equal(
            [
                ("plant.xlsx, sheet outline", 3, "person"),
                ("plant.xlsx, sheet outline", book.Outline.IndexOf("03.4.02") + 2, "allotted"),
            ],
            wrong.Faults.Select(fault => (fault.Table, fault.Line, fault.Column))
        );
    }

    private static string PlaceOf(InputError error) =>
        $"{error.File.Replace("plant.xlsx", "", StringComparison.Ordinal).Replace(", sheet ", "", StringComparison.Ordinal)} {error.Row} {error.Column}";
}
