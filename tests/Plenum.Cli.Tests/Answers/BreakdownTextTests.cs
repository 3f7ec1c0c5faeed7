using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.Answers;

/// <summary>What a person reads of outline, parts by activities and scope statement.</summary>
public class BreakdownTextTests
{
    [Fact]
    public void Help_of_the_commands_that_write_a_breakdown()
    {
        using var terminal = new Terminal();
        foreach (
            var command in new[]
            {
                "standard",
                "standard use",
                "standard save",
                "workbook",
                "outline",
                "matrix",
                "scope",
                "edit",
            }
        )
        {
            terminal.Tell([.. command.Split(' '), "--help"]);
        }

        Approved.Is(nameof(Help_of_the_commands_that_write_a_breakdown), terminal.Story);
    }

    [Fact]
    public void Outline_of_the_pump_house()
    {
        using var terminal = PumpHouse.Open();
        Tell(terminal, ["outline"]);
        Tell(terminal, ["outline", "--under", "PH.30", "--format", "coded"]);
        Tell(terminal, ["outline", "--under", "PH.20", "--json"]);
        Approved.Is(nameof(Outline_of_the_pump_house), terminal.Story);
    }

    [Fact]
    public void Parts_by_activities_of_the_pump_house()
    {
        using var terminal = Breakdowns.WithParts();
        Tell(terminal, ["matrix"]);
        Tell(terminal, ["matrix", "--undecided"]);
        Tell(terminal, ["matrix", "--under", "PH.20"]);
        Tell(terminal, ["matrix", "--json"]);
        Approved.Is(nameof(Parts_by_activities_of_the_pump_house), terminal.Story);
    }

    [Fact]
    public void Parts_by_activities_before_any_part_has_a_type()
    {
        using var terminal = PumpHouse.Open();
        Tell(terminal, ["matrix"]);
        Tell(terminal, ["matrix", "--json"]);
        Approved.Is(nameof(Parts_by_activities_before_any_part_has_a_type), terminal.Story);
    }

    [Fact]
    public void Scope_statement_of_the_pump_house()
    {
        using var terminal = Breakdowns.WithStatement();
        Tell(terminal, ["scope"]);
        Tell(terminal, ["scope", "--at", "2026-03-12"]);
        Tell(terminal, ["scope", "--json"]);
        Approved.Is(nameof(Scope_statement_of_the_pump_house), terminal.Story);
    }

    [Fact]
    public void Breakdown_of_an_empty_project()
    {
        using var terminal = PumpHouse.Empty();
        foreach (var command in new[] { "outline", "matrix", "scope" })
        {
            Tell(terminal, [command]);
            Tell(terminal, [command, "--json"]);
        }

        Approved.Is(nameof(Breakdown_of_an_empty_project), terminal.Story);
    }

    private static void Tell(Terminal terminal, string[] command)
    {
        var reply = terminal.Tell([command[0], PumpHouse.File, .. command[1..]]);
        Assert.Equal(ExitCode.Done, reply.Status);
        Assert.Empty(reply.Error);
    }
}
