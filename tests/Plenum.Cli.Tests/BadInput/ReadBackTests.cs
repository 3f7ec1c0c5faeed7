using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.BadInput;

/// <summary>Workbooks that went out to be edited and come back with what cannot be taken.</summary>
public class ReadBackTests
{
    private static readonly string[] ReadBack =
    [
        "workbook",
        PumpHouse.File,
        EditedWorkbook.File,
        "--read",
    ];

    [Fact]
    public void A_changed_code_in_a_workbook_is_refused() =>
        Refused(
            "in the outline PH.20.1 has the code PH.20.9",
            book => book.Outline["PH.20.1"]["code"] = "PH.20.9"
        );

    [Fact]
    public void A_changed_or_deleted_key_in_a_workbook_is_refused() =>
        Refused(
            "in the outline PH.20.1 has the id 999, and the id of PH.20.2 is empty",
            book =>
            {
                book.Outline["PH.20.1"]["id"] = "999";
                book.Outline["PH.20.2"].Remove("id");
            }
        );

    [Fact]
    public void Swapped_keys_in_a_workbook_are_refused() =>
        Refused(
            "in the dictionary PH.20.1 and PH.20.2 have each other's id",
            book =>
            {
                var (one, other) = (book.Dictionary["PH.20.1"], book.Dictionary["PH.20.2"]);
                (one["id"], other["id"]) = (other["id"], one["id"]);
            }
        );

    [Fact]
    public void A_row_that_stands_twice_in_a_workbook_is_refused() =>
        Refused(
            "in the outline the row of PH.20.1 was copied to the end",
            book => book.Outline.Rows.Add(new(book.Outline["PH.20.1"]))
        );

    [Fact]
    public void A_workbook_without_its_outline_is_refused() =>
        Refused("the sheet outline is removed", book => book.Sheets.RemoveAt(0));

    [Fact]
    public void An_unknown_sheet_of_a_workbook_is_refused() =>
        Refused(
            "the sheet matrix is called matrx, and there is a sheet notes",
            book =>
            {
                book.Matrix.Name = "matrx";
                book.Sheets.Add(new("notes", ["note"], [new() { ["note"] = "mine" }]));
            }
        );

    [Fact]
    public void Changed_headings_in_a_workbook_are_refused() =>
        Refused(
            "in the outline the heading allotted is called alloted, the heading level is removed",
            book =>
            {
                var headings = book.Outline.Headings;
                headings[headings.IndexOf("allotted")] = "alloted";
                headings.Remove("level");
            }
        );

    [Fact]
    public void Unknown_codes_in_a_workbook_are_refused() =>
        Refused(
            "in the outline the person of PH.20 is dee, the unit of PH.30 XYZ, the kind of PH.40 work_pakage",
            book =>
            {
                book.Outline["PH.20"]["person"] = "dee";
                book.Outline["PH.30"]["unit"] = "XYZ";
                book.Outline["PH.40"]["kind"] = "work_pakage";
            }
        );

    [Fact]
    public void Text_where_a_number_belongs_in_a_workbook_is_refused() =>
        Refused(
            "in the outline PH.20 is allotted much, in the dictionary the quantity of PH.20.1 is 120 m3",
            book =>
            {
                book.Outline["PH.20"]["allotted"] = "much";
                book.Dictionary["PH.20.1"]["quantity"] = "120 m3";
            }
        );

    [Fact]
    public void Broken_levels_in_a_workbook_are_refused() =>
        Refused(
            "in the outline PH.10.1 has level 5, PH.20 level 1",
            book =>
            {
                book.Outline["PH.10.1"]["level"] = "5";
                book.Outline["PH.20"]["level"] = "1";
            }
        );

    [Fact]
    public void A_level_in_words_in_a_workbook_is_refused() =>
        Refused(
            "in the outline PH.20.1 has level two",
            book => book.Outline["PH.20.1"]["level"] = "two"
        );

    [Fact]
    public void An_emptied_name_in_a_workbook_is_refused() =>
        Refused(
            "in the outline PH.20.1 has no name",
            book => book.Outline["PH.20.1"].Remove("name")
        );

    [Fact]
    public void A_new_row_of_a_workbook_with_a_code_that_is_taken_is_refused() =>
        Refused(
            "in the outline a new row Lifting gear below PH.30 has the code PH.10.1",
            book =>
                book.Outline.Rows.Insert(
                    book.Outline.Rows.IndexOf(book.Outline["PH.30.3"]) + 1,
                    new()
                    {
                        ["code"] = "PH.10.1",
                        ["level"] = "3",
                        ["name"] = "Lifting gear",
                    }
                )
        );

    [Fact]
    public void New_rows_of_a_workbook_with_the_same_code_are_refused() =>
        Refused(
            "in the outline two new rows below PH.30 have the code PH.30.9",
            book =>
            {
                var at = book.Outline.Rows.IndexOf(book.Outline["PH.30.3"]) + 1;
                foreach (var name in new[] { "Lifting gear", "Crane" })
                {
                    book.Outline.Rows.Insert(
                        at,
                        new()
                        {
                            ["code"] = "PH.30.9",
                            ["level"] = "3",
                            ["name"] = name,
                        }
                    );
                }
            }
        );

    [Fact]
    public void New_rows_of_a_workbook_that_is_read_a_second_time_are_refused()
    {
        using var terminal = PumpHouse.Open();
        new EditedWorkbook(terminal).Edit(
            "in the outline a new row Lifting gear stands below PH.30, and its kind is work_package",
            book =>
                book.Outline.Rows.Insert(
                    book.Outline.Rows.IndexOf(book.Outline["PH.30.3"]) + 1,
                    new()
                    {
                        ["level"] = "3",
                        ["name"] = "Lifting gear",
                        ["kind"] = "work_package",
                    }
                )
        );
        terminal.Tell(ReadBack);
        Refusal.OfCommand(terminal, ReadBack);
    }

    [Fact]
    public void A_new_row_of_a_workbook_with_an_unknown_word_is_refused() =>
        Refused(
            "in the outline a new row Hoist below PH.30 has the kind work_pakage",
            book =>
                book.Outline.Rows.Insert(
                    book.Outline.Rows.IndexOf(book.Outline["PH.30.3"]) + 1,
                    new()
                    {
                        ["level"] = "3",
                        ["name"] = "Hoist",
                        ["kind"] = "work_pakage",
                    }
                )
        );

    [Fact]
    public void A_kind_in_a_workbook_that_does_not_fit_its_place_is_refused() =>
        Refused(
            "in the outline the kind of PH.20 is work_package, that of PH.40 branch",
            book =>
            {
                book.Outline["PH.20"]["kind"] = "work_package";
                book.Outline["PH.40"]["kind"] = "branch";
            }
        );

    [Fact]
    public void A_package_that_gets_parts_in_a_workbook_is_refused() =>
        Refused(
            "in the outline a new row Piles stands below PH.20.1",
            book =>
                book.Outline.Rows.Insert(
                    book.Outline.Rows.IndexOf(book.Outline["PH.20.1"]) + 1,
                    new() { ["level"] = "4", ["name"] = "Piles" }
                )
        );

    [Fact]
    public void What_is_planned_is_not_changed_in_the_matrix_of_a_workbook() =>
        Refused(
            "in the matrix Buy of PH.30 is bought already, Design is 40",
            book =>
            {
                book.Matrix["PH.30"]["buy"] = "bought already";
                book.Matrix["PH.30"]["design"] = "40";
            }
        );

    [Fact]
    public void A_workbook_that_is_not_there_is_refused()
    {
        using var terminal = PumpHouse.Open();
        Refusal.OfCommand(terminal, ReadBack);
    }

    [Fact]
    public void A_list_is_not_read_back_as_a_workbook()
    {
        using var terminal = PumpHouse.Open();
        var files = terminal.Write("[outline.csv]\ncode,name\nPH,Pump house\n");
        Refusal.OfCommand(terminal, ["workbook", PumpHouse.File, .. files, "--read"]);
    }

    [Fact]
    public void A_damaged_workbook_is_refused()
    {
        using var terminal = PumpHouse.Open();
        terminal.Write(EditedWorkbook.File, "not a workbook"u8.ToArray(), "text");
        Refusal.OfCommand(terminal, ReadBack);
    }

    [Theory]
    [InlineData("A_dry_run_without_reading_is_wrong_usage", "pumps.xlsx", "--dry-run")]
    [InlineData(
        "An_element_for_a_workbook_that_is_read_is_wrong_usage",
        "pumps.xlsx",
        "--read",
        "--under",
        "PH"
    )]
    [InlineData(
        "An_unknown_element_for_a_workbook_is_wrong_usage",
        "pumps.xlsx",
        "--under",
        "PH.3O"
    )]
    [InlineData("A_workbook_is_not_written_over_a_project", PumpHouse.File)]
    [InlineData("A_workbook_under_the_name_of_a_list_is_wrong_usage", "pumps.csv")]
    public void Wrong_usage_is_refused(string name, params string[] rest)
    {
        using var terminal = PumpHouse.Open();
        Refusal.OfCommand(
            terminal,
            ["workbook", PumpHouse.File, .. rest],
            ExitCode.WrongUsage,
            name: name
        );
    }

    [Fact]
    public void An_empty_project_has_no_workbook()
    {
        using var terminal = PumpHouse.Empty();
        Refusal.OfCommand(
            terminal,
            ["workbook", PumpHouse.File, EditedWorkbook.File],
            ExitCode.WrongUsage
        );
        Assert.False(File.Exists(terminal[EditedWorkbook.File]));
    }

    private static void Refused(
        string what,
        Action<EditedWorkbook> edit,
        [System.Runtime.CompilerServices.CallerMemberName] string name = ""
    )
    {
        using var terminal = Breakdowns.WithParts();
        new EditedWorkbook(terminal).Edit(what, edit);
        Refusal.OfCommand(terminal, ReadBack, ExitCode.BadInput, name: name);
        Assert.Equal(ExitCode.BadInput, terminal.Run([.. ReadBack, "--dry-run"]).Status);
    }
}
