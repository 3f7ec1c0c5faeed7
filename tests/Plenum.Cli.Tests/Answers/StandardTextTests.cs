using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.Answers;

/// <summary>What a person reads of standard breakdowns.</summary>
public class StandardTextTests
{
    [Fact]
    public void Standard_breakdowns_that_come_with_the_program()
    {
        using var terminal = new Terminal();
        Assert.Equal(ExitCode.Done, terminal.Tell("standard", "list").Status);
        Json.Of(terminal.Tell("standard", "list", "--json"));
        Approved.Is(nameof(Standard_breakdowns_that_come_with_the_program), terminal.Story);
    }

    [Fact]
    public void An_empty_project_begins_with_a_standard_breakdown()
    {
        using var terminal = PumpHouse.Empty();
        string[] use =
        [
            "standard",
            "use",
            PumpHouse.File,
            "pumping-station",
            "--leave",
            "7=the site is given over ready",
        ];
        var before = File.ReadAllBytes(terminal[PumpHouse.File]);
        terminal.Tell([.. use, "--dry-run"]);
        Json.Of(terminal.Tell([.. use, "--dry-run", "--json"]));
        Assert.Equal(before, File.ReadAllBytes(terminal[PumpHouse.File]));
        Assert.Equal(ExitCode.Done, terminal.Tell(use).Status);
        terminal.Tell("tree", PumpHouse.File, "--level", "2");
        Approved.Is(nameof(An_empty_project_begins_with_a_standard_breakdown), terminal.Story);
    }

    [Fact]
    public void An_element_is_filled_with_what_was_saved_of_another_project()
    {
        using var terminal = PumpHouse.Open();
        terminal.Tell("standard", "save", PumpHouse.File, "machinery.plenum", "--under", "PH.30");
        Json.Of(terminal.Tell("standard", "save", PumpHouse.File, "whole.plenum", "--json"));
        terminal.TellWith(
            "{\"command\":\"add_element\",\"parent\":\"PH\",\"after\":\"PH.30\",\"name\":\"Second machinery\",\"code\":\"PH.60\"}\n",
            "edit",
            PumpHouse.File
        );
        terminal.Tell("outline", PumpHouse.File, "--format", "coded");
        string[] use = ["standard", "use", PumpHouse.File, "machinery.plenum", "--under", "PH.60"];
        terminal.Tell([.. use, "--dry-run"]);
        Json.Of(terminal.Tell([.. use, "--json"]));
        terminal.Tell("outline", PumpHouse.File, "--under", "PH.60", "--format", "coded");
        Approved.Is(
            nameof(An_element_is_filled_with_what_was_saved_of_another_project),
            terminal.Story
        );
    }
}
