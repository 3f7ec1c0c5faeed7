using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.Answers;

/// <summary>What a person, or a program, reads of edits from standard input.</summary>
public class EditTextTests
{
    private const string Lines = """
        {"command":"set_cell","cell":{"table":"elements","id":"PH.40","column":"name","text":"Site","seen":"Site management"}}

        {"command":"paste_list","parent":"PH","after":"PH.40","list":"Trial run\n  Dry run\n  Wet run"}
        {"command":"paste_items","items":[{"line":1,"item":"1","kind":"requirement","text":"Two pumps"}]}
        undo
        undo
        redo

        """;

    [Fact]
    public void Edits_are_told_line_by_line()
    {
        using var terminal = PumpHouse.Open();
        Assert.Equal(
            ExitCode.Done,
            terminal.TellWith(Lines, "edit", PumpHouse.File, "--as", "ann").Status
        );
        terminal.Tell("outline", PumpHouse.File);
        Approved.Is(nameof(Edits_are_told_line_by_line), terminal.Story);
    }

    [Fact]
    public void Edits_are_told_as_documents()
    {
        using var terminal = PumpHouse.Open();
        var reply = terminal.TellWith(Lines, "edit", PumpHouse.File, "--as", "ann", "--json");
        Assert.Equal(ExitCode.Done, reply.Status);
        Assert.Empty(reply.Error);
        Approved.Is(nameof(Edits_are_told_as_documents), terminal.Story);
    }

    [Fact]
    public void Nothing_to_take_back_is_no_mistake()
    {
        using var terminal = PumpHouse.Open();
        Assert.Equal(
            ExitCode.Done,
            terminal.TellWith("undo\nredo\n", "edit", PumpHouse.File).Status
        );
        Assert.Equal(
            ExitCode.Done,
            terminal.TellWith("undo\n", "edit", PumpHouse.File, "--json").Status
        );
        Assert.Empty(terminal.Do("edit", PumpHouse.File).Out);
        Approved.Is(nameof(Nothing_to_take_back_is_no_mistake), terminal.Story);
    }

    [Fact]
    public void An_empty_project_is_begun_line_by_line()
    {
        using var terminal = PumpHouse.Empty();
        terminal.TellWith(
            """
            {"command":"begin_project","name":"Sandgate pump house","code":"PH","currency":"EUR","code_mask":"00.0"}
            {"command":"paste_list","parent":"PH","after":0,"list":"Engineering\n  Drawings\nMachinery"}

            """,
            "edit",
            PumpHouse.File
        );
        terminal.Tell("outline", PumpHouse.File, "--format", "coded");
        Approved.Is(nameof(An_empty_project_is_begun_line_by_line), terminal.Story);
    }
}
