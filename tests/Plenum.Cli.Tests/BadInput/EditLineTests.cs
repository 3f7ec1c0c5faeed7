using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.BadInput;

/// <summary>Lines of <c>plenum edit</c> that cannot be done.</summary>
public class EditLineTests
{
    [Fact]
    public void Lines_that_are_no_commands_are_refused() =>
        Refused(
            """
            {
            nonsense
            UNDO
            [1]
            {"name":"x"}
            {"command":"step_element","id":"PH","to":"up"} and more
            {"command":"step_element","id":"PH","to":"up","to":"down"}
            {"command":"add_element","parent":"PH","after":0,"name":"\ud800"}
            """
        );

    [Fact]
    public void Unknown_commands_and_fields_are_refused() =>
        Refused(
            """
            {"command":"ad_element"}
            {"command":"add_element","parent":"PH","after":0,"name":"x","colour":"red"}
            {"command":"add_element","parent":"PH","name":"x"}
            {"command":"add_element","parent":"PH","after":0,"name":null}
            {"command":"add_element","parent":"PH","after":0,"name":true}
            {"command":"add_element","parent":-1,"after":0,"name":"x"}
            {"command":"step_element","id":"PH.20","to":"sideways"}
            {"command":"set_cell","cell":null}
            {"command":"set_cell","cell":"PH"}
            {"command":"remove_elements","ids":"PH.50"}
            {"command":"remove_elements","ids":["PH.50",null]}
            {"command":"add_row","table":"people","texts":["dee"]}
            """
        );

    [Fact]
    public void Unknown_rows_tables_and_columns_are_refused() =>
        Refused(
            """
            {"command":"add_element","parent":"PH.99","after":0,"name":"x"}
            {"command":"add_element","parent":4711,"after":0,"name":"x"}
            {"command":"set_cell","cell":{"table":"elemnts","id":1,"column":"name","text":"x"}}
            {"command":"set_cell","cell":{"table":"elements","id":"PH","column":"nme","text":"x"}}
            {"command":"add_row","table":"people","texts":{"person":"dee","colour":"red"}}
            {"command":"remove_row","table":"elemnts","id":1}
            {"command":"remove_row","table":"people","id":"dee"}
            {"command":"paste_list","parent":4711,"after":0,"list":"x"}
            """
        );

    [Fact]
    public void Cells_that_are_not_understood_are_refused() =>
        Refused(
            """
            {"command":"set_cell","cell":{"table":"elements","id":"PH.40","column":"allotted","text":"much"}}
            {"command":"set_cell","cell":{"table":"elements","id":"PH.40","column":"person","text":"dee"}}
            {"command":"set_cell","cell":{"table":"elements","id":"PH.40","column":"name","text":"","seen":"Site management"}}
            {"command":"set_cell","cell":{"table":"elements","id":"PH.40","column":"name","text":"a\u0000b","seen":"Site management"}}
            {"command":"set_cell","cell":{"table":"elements","id":"PH.40","column":"kind","text":"branch","seen":"work_package"}}
            {"command":"add_row","table":"people","texts":{"person":"ann","name":"Ann"}}
            {"command":"remove_row","table":"people","id":"ann"}
            """
        );

    [Fact]
    public void Moves_that_the_breakdown_does_not_allow_are_refused() =>
        Refused(
            """
            {"command":"move_element","id":"PH.20","parent":"PH.20.1","after":0}
            {"command":"step_element","id":"PH","to":"up"}
            {"command":"add_element","parent":"PH.40","after":0,"name":"Huts"}
            """
        );

    [Fact]
    public void A_value_that_somebody_else_has_changed_is_not_written_over()
    {
        using var terminal = PumpHouse.Open();
        terminal.TellWith(
            """
            {"command":"set_cell","cell":{"table":"elements","id":"PH.40","column":"name","text":"Site and huts","seen":"Site management"}}
            """,
            "edit",
            PumpHouse.File,
            "--as",
            "bo"
        );
        Refusal.OfLines(
            terminal,
            """
            {"command":"set_cell","cell":{"table":"elements","id":"PH.40","column":"name","text":"Site office","seen":"Site management"}}
            {"command":"set_cell","cell":{"table":"elements","id":"PH.40","column":"name","text":"","seen":"Site management"}}
            {"command":"set_cells","words":"two","texts":[{"table":"elements","id":"PH.50","column":"name","text":"Trees","seen":"Planting"},{"table":"elements","id":"PH.40","column":"name","text":"Site office","seen":null}]}
            """
        );
    }

    [Fact]
    public void A_refused_line_does_not_keep_the_others_from_being_done()
    {
        using var terminal = PumpHouse.Open();
        var reply = terminal.TellWith(
            """
            {"command":"add_element","parent":"PH","after":"PH.50","name":"Trial run"}
            {"command":"many","words":"two","parts":[{"command":"add_row","table":"people","texts":{"person":"dee","name":"Dee Ash"}},{"command":"remove_row","table":"people","id":"ann"}]}
            {"command":"add_row","table":"people","texts":{"person":"dee","name":"Dee Ash"}}
            """,
            "edit",
            PumpHouse.File
        );
        Approved.Is(
            nameof(A_refused_line_does_not_keep_the_others_from_being_done),
            terminal.Story
        );
        Assert.Equal(ExitCode.BadInput, reply.Status);
    }

    [Fact]
    public void Pasted_lists_with_broken_levels_are_refused() =>
        Refused(
            """
            {"command":"paste_list","parent":"PH","after":0,"list":"Trial run\n    Dry run\n  Wet run"}
            {"command":"paste_list","parent":"PH","after":0,"list":"    Trial run\nDry run"}
            {"command":"paste_list","parent":"PH","after":0,"list":"Trial run\n  Dry run\n   Wet run"}
            {"command":"paste_list","parent":"PH","after":0,"list":"level\tname\n1\tTrial run\n3\tDry run\ntwo\tWet run"}
            {"command":"paste_list","parent":"PH","after":0,"list":"1 Trial run\n1.1 Dry run\n1.2.1 Wet run"}
            """
        );

    [Fact]
    public void Pasted_lists_with_wrong_rows_are_refused() =>
        Refused(
            """
            {"command":"paste_list","parent":"PH","after":0,"list":""}
            {"command":"paste_list","parent":"PH","after":0,"list":"code\tname\tcolour\nX\tTrial run\tred"}
            {"command":"paste_list","parent":"PH","after":0,"list":"code\tname\tallotted\nPH.10\tTrial run\tmuch\nPH.70\tMachinery\t\nPH.70\t\t"}
            {"command":"paste_list","parent":"PH","after":0,"list":"code\tname\tallotted\nPH.70\tTrial run\tmuch"}
            {"command":"paste_list","parent":"PH.40","after":0,"list":"Huts"}
            """
        );

    [Fact]
    public void Scope_items_with_a_number_that_stands_twice_are_refused() =>
        Refused(
            """
            {"command":"paste_items","items":[{"line":1,"item":"4","kind":"requirement","text":"Two pumps"},{"line":2,"item":"4","kind":"requirement","text":"Spare parts"}]}
            {"command":"paste_items","items":[{"line":1,"item":"4.1","parent":"4","kind":"requirement","text":"Two pumps"}]}
            {"command":"paste_items","items":[{"line":1,"item":"4","kind":"wish","text":"Two pumps"}]}
            """
        );

    private static void Refused(
        string lines,
        [System.Runtime.CompilerServices.CallerMemberName] string name = ""
    )
    {
        using var terminal = PumpHouse.Open();
        Refusal.OfLines(terminal, lines, name);
    }
}
