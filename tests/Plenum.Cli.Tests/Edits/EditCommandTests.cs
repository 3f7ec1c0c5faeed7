using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.Edits;

/// <summary>Commands from standard input. How a person works is common practice; no source.</summary>
public sealed class EditCommandTests
{
    [Fact]
    public void Commands_are_told_one_after_another_and_can_be_taken_back()
    {
        using var terminal = new Terminal();
        terminal.Do("new", "p.plenum");
        var reply = terminal.RunWith(
            """
            {"command":"begin_project","name":"Plant","code":"P","currency":"EUR","code_mask":"00.0"}
            {"command":"add_element","parent":"P","after":0,"name":"Intake"}
            {"command":"add_element","parent":"P","after":"01","name":"Outfall"}
            {"command":"set_cell","cell":{"table":"elements","id":"02","column":"allotted","text":"1200.50"}}
            {"command":"step_element","id":"02","to":"up"}
            undo
            redo
            """,
            "edit",
            "p.plenum",
            "--as",
            "ann"
        );
        Assert.Equal(
            """
            1: begin the project Plant
            2: add Intake to P Plant
            3: add Outfall to P Plant
            4: allotted of 02: 1200.50
            5: move 02 Outfall up
            6: take back: move 02 Outfall up
            7: do again: move 02 Outfall up

            """.ReplaceLineEndings("\n"),
            reply.Out
        );
        Assert.Equal(ExitCode.Done, reply.Status);
        var tree = terminal.Do("tree", "p.plenum").Out;
        Assert.InRange(
            tree.IndexOf("Outfall", StringComparison.Ordinal),
            1,
            tree.IndexOf("Intake", StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData("{", "This is no JSON")]
    [InlineData("{\"name\":\"x\"}", "No command is named.")]
    [InlineData(
        "{\"command\":\"ad_element\"}",
        "No command is called \"ad_element\"; did you mean add_element?"
    )]
    [InlineData(
        "{\"command\":\"add_element\",\"parent\":\"X9\",\"after\":0,\"name\":\"x\"}",
        "add_element, parent: elements has no row \"X9\"."
    )]
    [InlineData(
        "{\"command\":\"add_element\",\"parent\":\"P\",\"name\":\"x\"}",
        "add_element needs the field after."
    )]
    [InlineData(
        "{\"command\":\"add_element\",\"parent\":\"P\",\"after\":0,\"name\":true}",
        "add_element, name: true found, text expected"
    )]
    [InlineData(
        "{\"command\":\"add_element\",\"parent\":\"P\",\"after\":0,\"name\":\"x\",\"colour\":\"red\"}",
        "add_element has no field colour."
    )]
    [InlineData(
        "{\"command\":\"add_element\",\"parent\":\"P\",\"after\":0,\"name\":\" \"}",
        "name is empty"
    )]
    [InlineData(
        "{\"command\":\"step_element\",\"id\":\"P\",\"to\":\"sideways\"}",
        "step_element, to: \"sideways\" found, one of up, down, level_down, level_up expected"
    )]
    [InlineData(
        "{\"command\":\"step_element\",\"id\":\"P\",\"to\":\"up\"}",
        "The root stays where it is."
    )]
    [InlineData(
        "{\"command\":\"set_cell\",\"cell\":{\"table\":\"elemnts\",\"id\":1,\"column\":\"name\",\"text\":\"x\"}}",
        "There is no table elemnts; did you mean elements?"
    )]
    [InlineData(
        "{\"command\":\"set_cell\",\"cell\":{\"table\":\"elements\",\"id\":\"P\",\"column\":\"nme\",\"text\":\"x\"}}",
        "elements has no column nme; did you mean name?"
    )]
    [InlineData(
        "{\"command\":\"set_cell\",\"cell\":{\"table\":\"elements\",\"id\":77,\"column\":\"name\",\"text\":\"x\"}}",
        "This row of elements is no longer there"
    )]
    public void A_command_that_makes_no_sense_says_why_and_changes_nothing(
        string line,
        string message
    )
    {
        using var terminal = new Terminal();
        terminal.Do("new", "p.plenum");
        terminal.RunWith(
            "{\"command\":\"begin_project\",\"name\":\"Plant\",\"code\":\"P\",\"currency\":\"EUR\",\"code_mask\":\"00.0\"}",
            "edit",
            "p.plenum"
        );
        var before = terminal.Do("tree", "p.plenum", "--json").Out;
        var reply = terminal.RunWith(line, "edit", "p.plenum");
        Assert.Equal(ExitCode.BadInput, reply.Status);
        Assert.Contains(message, reply.Error, StringComparison.Ordinal);
        Assert.Equal(before, terminal.Do("tree", "p.plenum", "--json").Out);
    }
}
