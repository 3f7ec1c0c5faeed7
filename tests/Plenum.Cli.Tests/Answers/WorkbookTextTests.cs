using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.Answers;

/// <summary>What a person reads while a breakdown goes out as a workbook and comes back.</summary>
public class WorkbookTextTests
{
    private static readonly string[] ReadBack =
    [
        "workbook",
        PumpHouse.File,
        EditedWorkbook.File,
        "--read",
    ];

    [Fact]
    public void A_workbook_that_nobody_has_edited_changes_nothing()
    {
        using var terminal = Breakdowns.WithParts();
        terminal.Tell("workbook", PumpHouse.File, EditedWorkbook.File);
        Json.Of(
            terminal.Tell("workbook", PumpHouse.File, "part.xlsx", "--under", "PH.30", "--json")
        );
        terminal.Tell(ReadBack);
        Json.Of(terminal.Tell([.. ReadBack, "--json"]));
        Approved.Is(nameof(A_workbook_that_nobody_has_edited_changes_nothing), terminal.Story);
    }

    [Fact]
    public void An_edited_workbook_says_what_it_changes()
    {
        using var terminal = Breakdowns.WithParts();
        new EditedWorkbook(terminal).Edit(
            """
            PH.20.1 is called Foundation and pit; PH.20 is allotted 125 000.50; PH.40 stands before PH.30; PH.30.3 is
              deleted; a new row Lifting gear stands below PH.30; PH.20.1 has an output; Design of PH.30 is not needed
            """,
            book =>
            {
                var outline = book.Outline;
                outline["PH.20.1"]["name"] = "Foundation and pit";
                outline["PH.20"]["allotted"] = "125000.5";
                var site = outline["PH.40"];
                outline.Rows.Remove(site);
                outline.Rows.Insert(outline.Rows.IndexOf(outline["PH.30"]), site);
                outline.Rows.Remove(outline["PH.30.3"]);
                outline.Rows.Insert(
                    outline.Rows.IndexOf(outline["PH.30.2"]) + 1,
                    new()
                    {
                        ["level"] = "3",
                        ["name"] = "Lifting gear",
                        ["kind"] = "work_package",
                    }
                );
                book.Dictionary["PH.20.1"]["name"] = "Foundation and pit";
                book.Dictionary["PH.20.1"]["output"] = "A foundation that carries the pumps";
                book.Matrix["PH.30"]["design"] = "bought as it is";
            }
        );
        var before = File.ReadAllBytes(terminal[PumpHouse.File]);
        terminal.Tell([.. ReadBack, "--dry-run"]);
        Json.Of(terminal.Tell([.. ReadBack, "--dry-run", "--json"]));
        Assert.Equal(before, File.ReadAllBytes(terminal[PumpHouse.File]));
        Assert.Equal(ExitCode.Done, terminal.Tell([.. ReadBack, "--as", "ann"]).Status);
        terminal.Tell("outline", PumpHouse.File, "--format", "coded");
        Approved.Is(nameof(An_edited_workbook_says_what_it_changes), terminal.Story);
    }
}
