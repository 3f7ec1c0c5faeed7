using System.Runtime.CompilerServices;
using Microsoft.Data.Sqlite;
using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.BadInput;

/// <summary>Project files that are not there, no projects, held by another program, or not to be written.</summary>
public class ProjectFileTests
{
    [Fact]
    public void A_project_that_is_not_there_is_refused()
    {
        using var terminal = new Terminal();
        Refused(terminal, ["accounts", "harbour.plenum"]);
    }

    [Fact]
    public void A_text_file_under_the_name_of_a_project_is_refused_and_left_alone()
    {
        using var terminal = new Terminal();
        terminal.Write(PumpHouse.File, "some notes, nothing more"u8.ToArray(), "text");
        Refused(terminal, ["check", PumpHouse.File]);
        Assert.Equal("some notes, nothing more", File.ReadAllText(terminal[PumpHouse.File]));
    }

    [Fact]
    public void An_empty_file_under_the_name_of_a_project_is_refused_and_left_alone()
    {
        using var terminal = new Terminal();
        terminal.Write(PumpHouse.File, [], "nothing");
        Refused(terminal, ["tree", PumpHouse.File]);
        Assert.Empty(File.ReadAllBytes(terminal[PumpHouse.File]));
    }

    [Fact]
    public void A_folder_under_the_name_of_a_project_is_refused()
    {
        using var terminal = new Terminal();
        Directory.CreateDirectory(terminal[PumpHouse.File]);
        Refused(terminal, ["forecast", PumpHouse.File]);
    }

    [Fact]
    public void A_database_of_another_program_is_refused_and_left_alone()
    {
        using var terminal = new Terminal();
        using (var other = Open(terminal))
        {
            Execute(other, "CREATE TABLE stock (part TEXT, count INTEGER)");
        }

        var bytes = File.ReadAllBytes(terminal[PumpHouse.File]);
        Refused(terminal, ["tree", PumpHouse.File]);
        Assert.Equal(bytes, File.ReadAllBytes(terminal[PumpHouse.File]));
    }

    [Fact]
    public void A_project_of_a_newer_version_is_refused_and_left_alone()
    {
        using var terminal = PumpHouse.Open();
        using (var other = Open(terminal))
        {
            Execute(other, "PRAGMA user_version = 999");
        }

        var bytes = File.ReadAllBytes(terminal[PumpHouse.File]);
        Refused(terminal, ["accounts", PumpHouse.File]);
        Assert.Equal(bytes, File.ReadAllBytes(terminal[PumpHouse.File]));
    }

    [Fact]
    public void Half_a_project_is_refused()
    {
        using var terminal = PumpHouse.Open();
        var bytes = File.ReadAllBytes(terminal[PumpHouse.File]);
        File.WriteAllBytes(terminal[PumpHouse.File], bytes[..(bytes.Length / 2)]);
        Refused(terminal, ["accounts", PumpHouse.File]);
    }

    [Fact]
    public void An_import_is_refused_while_another_program_writes_and_questions_are_answered()
    {
        using var terminal = PumpHouse.Open();
        var content = PumpHouse.ContentOf(terminal);
        using (var other = Open(terminal))
        {
            Execute(other, "BEGIN IMMEDIATE");
            Execute(other, "UPDATE people SET name = 'Somebody'");
            var files = terminal.Write(
                """
                [people.csv]
                person,name
                dee,Dee Ash
                """
            );
            Refused(terminal, ["import", PumpHouse.File, .. files]);
            Assert.Equal(content, PumpHouse.ContentOf(terminal));
            Execute(other, "ROLLBACK");
        }

        Assert.Equal(content, PumpHouse.ContentOf(terminal));
    }

    [Fact]
    public void A_project_that_another_program_has_locked_is_refused()
    {
        using var terminal = PumpHouse.Open();
        using var other = Open(terminal);
        Execute(other, "BEGIN EXCLUSIVE");
        Refused(terminal, ["check", PumpHouse.File]);
        Execute(other, "ROLLBACK");
    }

    [Fact]
    public void An_import_into_a_file_that_is_read_only_is_not_allowed()
    {
        using var terminal = PumpHouse.Open();
        var content = PumpHouse.ContentOf(terminal);
        File.SetAttributes(terminal[PumpHouse.File], FileAttributes.ReadOnly);
        var files = terminal.Write(
            """
            [people.csv]
            person,name
            dee,Dee Ash
            """
        );
        Refused(terminal, ["import", PumpHouse.File, .. files], ExitCode.NotAllowed);
        Assert.Equal(content, PumpHouse.ContentOf(terminal));
        File.SetAttributes(terminal[PumpHouse.File], FileAttributes.Normal);
    }

    [Fact]
    public void A_new_project_does_not_replace_a_file()
    {
        using var terminal = PumpHouse.Open();
        var bytes = File.ReadAllBytes(terminal[PumpHouse.File]);
        Refused(terminal, ["new", PumpHouse.File]);
        Assert.Equal(bytes, File.ReadAllBytes(terminal[PumpHouse.File]));
    }

    [Fact]
    public void A_new_project_in_a_folder_that_is_not_there_is_refused()
    {
        using var terminal = new Terminal();
        Refused(terminal, ["new", "plants/harbour.plenum"]);
    }

    [Fact]
    public void An_export_into_a_file_is_refused()
    {
        using var terminal = PumpHouse.Open();
        terminal.Write(
            """
            [tables]
            some notes
            """
        );
        Refused(terminal, ["export", PumpHouse.File, "tables"]);
    }

    [Fact]
    public void An_export_of_an_empty_project_to_a_workbook_is_wrong_usage()
    {
        using var terminal = PumpHouse.Empty();
        var reply = terminal.Tell("export", PumpHouse.File, "tables", "--format", "xlsx");
        Approved.Is(
            nameof(An_export_of_an_empty_project_to_a_workbook_is_wrong_usage),
            terminal.Story
        );
        Assert.Equal(ExitCode.WrongUsage, reply.Status);
        Assert.False(Directory.Exists(terminal["tables"]));
    }

    private static void Refused(
        Terminal terminal,
        string[] command,
        int status = ExitCode.BadInput,
        [CallerMemberName] string name = ""
    )
    {
        var told = terminal.Tell(command);
        Approved.Is(name, terminal.Story);
        Assert.Equal(status, told.Status);
        Assert.Empty(told.Out);
        var json = terminal.Run([.. command, "--json"]);
        Assert.Equal(status, json.Status);
        using var document = System.Text.Json.JsonDocument.Parse(json.Out);
        var error = Assert.Single(
            document.RootElement.GetProperty("errors").EnumerateArray().ToList()
        );
        Assert.Equal(told.Error.TrimEnd('\n'), error.GetProperty("message").GetString());
        Assert.Equal(1, document.RootElement.GetProperty("error_count").GetInt32());
    }

    private static SqliteConnection Open(Terminal terminal)
    {
        var connection = new SqliteConnection(
            $"Data Source={terminal[PumpHouse.File]};Pooling=False"
        );
        connection.Open();
        return connection;
    }

    private static void Execute(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // texts of these tests
        command.CommandText = sql;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }
}
