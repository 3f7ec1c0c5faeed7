using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.BadInput;

/// <summary>Questions about outline, parts and scope statement that cannot be answered, and statements that cannot be taken.</summary>
public class BreakdownQuestionTests
{
    [Theory]
    [InlineData("An_unknown_element_of_the_outline_is_wrong_usage", "outline", "--under", "PH.3O")]
    [InlineData("An_unknown_form_of_the_outline_is_wrong_usage", "outline", "--format", "pdf")]
    [InlineData("An_unknown_element_of_the_matrix_is_wrong_usage", "matrix", "--under", "NOPE")]
    [InlineData("The_scope_at_no_date_is_wrong_usage", "scope", "--at", "soon")]
    public void Wrong_usage_is_refused(string name, string command, params string[] rest)
    {
        using var terminal = PumpHouse.Open();
        Refusal.OfCommand(
            terminal,
            [command, PumpHouse.File, .. rest],
            ExitCode.WrongUsage,
            name: name
        );
    }

    [Fact]
    public void An_element_of_an_empty_project_is_wrong_usage()
    {
        using var terminal = PumpHouse.Empty();
        Assert.Equal(
            ExitCode.WrongUsage,
            terminal.Tell("matrix", PumpHouse.File, "--under", "PH").Status
        );
        Refusal.OfCommand(
            terminal,
            ["outline", PumpHouse.File, "--under", "PH"],
            ExitCode.WrongUsage
        );
    }

    [Fact]
    public void A_project_that_is_not_there_has_no_breakdown()
    {
        using var terminal = PumpHouse.Open();
        foreach (
            var command in new[]
            {
                "outline mine.plenum",
                "matrix mine.plenum",
                "scope mine.plenum",
                "edit mine.plenum",
                "workbook mine.plenum pumps.xlsx",
                "standard save mine.plenum kept.plenum",
                "standard use mine.plenum pumping-station",
            }
        )
        {
            Assert.Equal(ExitCode.BadInput, terminal.Tell(command.Split(' ')).Status);
        }

        Assert.Equal(
            [PumpHouse.File],
            Directory.GetFiles(terminal.Folder).Select(Path.GetFileName)
        );
        Approved.Is(nameof(A_project_that_is_not_there_has_no_breakdown), terminal.Story);
    }

    [Fact]
    public void A_scope_statement_with_a_number_that_stands_twice_is_refused() =>
        Refusal.Of(
            """
            [scope.csv]
            item,parent,kind,text
            1,,requirement,Two pumps
            1.1,1,requirement,A stand-by pump
            1,,requirement,Spare parts
            1.2,9,wish,
            """
        );
}
