using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.Answers;

/// <summary>Imports that are taken, or would be.</summary>
public class ImportTests
{
    private const string Files = """
        [people.csv]
        person,name,unit
        ann,Ann Birch-Elder,OWN
        bo,Bo Larch,CIV
        cy,Cy Rowan,MEC
        dee,Dee Ash,MEC
        [budget.csv]
        package,cost_element,amount
        PH.50,subcontract,5000
        PH.50,labour,250
        """;

    [Fact]
    public void A_dry_run_says_what_would_change_and_changes_nothing()
    {
        using var terminal = PumpHouse.Open();
        var content = PumpHouse.ContentOf(terminal);
        var bytes = File.ReadAllBytes(terminal[PumpHouse.File]);
        var files = terminal.Write(Files);
        terminal.Tell(["import", PumpHouse.File, .. files, "--dry-run"]);
        var answer = Json.Of(
            terminal.Tell(["import", PumpHouse.File, .. files, "--dry-run", "--json"])
        );
        Approved.Is(nameof(A_dry_run_says_what_would_change_and_changes_nothing), terminal.Story);
        Assert.True(answer.GetProperty("dry_run").GetBoolean());
        Assert.Equal(1, answer.GetProperty("revision").GetInt64());
        Assert.Equal(content, PumpHouse.ContentOf(terminal));
        Assert.Equal(bytes, File.ReadAllBytes(terminal[PumpHouse.File]));
    }

    [Fact]
    public void An_import_says_what_changed_and_the_second_time_that_nothing_does()
    {
        using var terminal = PumpHouse.Open();
        var files = terminal.Write(Files);
        string[] import = ["import", PumpHouse.File, .. files];
        Assert.Equal(ExitCode.Done, terminal.Tell(import).Status);
        var content = PumpHouse.ContentOf(terminal);
        Assert.Equal(ExitCode.Done, terminal.Tell(import).Status);
        Approved.Is(
            nameof(An_import_says_what_changed_and_the_second_time_that_nothing_does),
            terminal.Story
        );
        Assert.Equal(content, PumpHouse.ContentOf(terminal));
    }

    [Fact]
    public void A_dry_run_of_a_replacement_says_what_would_be_removed()
    {
        using var terminal = PumpHouse.Open();
        var content = PumpHouse.ContentOf(terminal);
        var files = terminal.Write(
            """
            [commitments.csv]
            order,line,package,cost_element,amount,supplier,date
            O-1,1,PH.30.1,material,108000,Pump maker,2026-02-10
            """
        );
        terminal.Tell(["import", PumpHouse.File, .. files, "--replace", "--dry-run"]);
        Approved.Is(nameof(A_dry_run_of_a_replacement_says_what_would_be_removed), terminal.Story);
        Assert.Equal(content, PumpHouse.ContentOf(terminal));
    }

    [Fact]
    public void A_dry_run_of_bad_input_is_refused_as_the_import_would_be()
    {
        using var terminal = PumpHouse.Open();
        var files = terminal.Write(
            """
            [people.csv]
            person,name,unit
            dee,Dee Ash,XYZ
            """
        );
        var dry = terminal.Run(["import", PumpHouse.File, .. files, "--dry-run"]);
        var real = terminal.Run(["import", PumpHouse.File, .. files]);
        Assert.Equal(ExitCode.BadInput, dry.Status);
        Assert.Equal(real, dry);
    }

    [Fact]
    public void Two_sheets_and_a_file_of_the_same_table_are_taken_together()
    {
        using var terminal = PumpHouse.Open();
        var header = Workbooks.Row("package", "period", "percent");
        var workbook = terminal.Write(
            "progress.xlsx",
            Workbooks.Of(
                ("status", header + Workbooks.Row("PH.30.2", "P4", "10")),
                ("STATUS", header + Workbooks.Row("PH.30.2", "P5", "20"))
            ),
            "two sheets"
        );
        var files = terminal.Write(
            """
            [status.csv]
            package,period,percent
            PH.30.2,P6,30
            """
        );
        var answer = Json.Of(terminal.Do(["import", PumpHouse.File, workbook, .. files, "--json"]));
        Assert.Equal(3, answer.GetProperty("changed").GetProperty("status").GetInt32());
    }

    [Fact]
    public void A_file_that_is_named_beside_its_folder_is_read_once()
    {
        using var terminal = PumpHouse.Open();
        terminal.Write(
            """
            [tables/people.csv]
            person,name
            dee,Dee Ash
            """
        );
        var answer = Json.Of(
            terminal.Do("import", PumpHouse.File, "tables", "tables/people.csv", "--json")
        );
        Assert.Equal(1, answer.GetProperty("changed").GetProperty("people").GetInt32());
    }

    [Fact]
    public void A_workbook_that_was_exported_comes_back_and_changes_nothing()
    {
        using var terminal = PumpHouse.Open();
        terminal.Do("export", PumpHouse.File, "tables", "--format", "xlsx");
        var answer = Json.Of(terminal.Do("import", PumpHouse.File, "tables", "--json"));
        Assert.Empty(Json.NamesOf(answer.GetProperty("changed")));
    }
}
