using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.BadInput;

/// <summary>Standard breakdowns that are not there, do not fit, or are left out in part without a reason.</summary>
public class StandardTests
{
    [Fact]
    public void Parts_that_are_left_out_wrongly_are_all_told() =>
        Refused(
            [
                "use",
                PumpHouse.File,
                "pumping-station",
                "--leave",
                "8.x=no such part",
                "--leave",
                "1= ",
                "--leave",
                "2=no screens",
                "--leave",
                "2=again",
                "--leave",
                "2.1=within",
            ],
            isEmpty: true
        );

    [Fact]
    public void A_standard_breakdown_does_not_begin_a_project_that_has_a_root() =>
        Refused(["use", PumpHouse.File, "pumping-station"]);

    [Fact]
    public void A_standard_breakdown_of_another_split_logic_does_not_go_beside_parts() =>
        Refused(["use", PumpHouse.File, "pumping-station", "--under", "PH.30"]);

    [Fact]
    public void A_package_with_work_of_its_own_is_not_filled() =>
        Refused(["use", PumpHouse.File, "pumping-station", "--under", "PH.50", "--dry-run"]);

    [Fact]
    public void A_file_that_holds_no_standard_breakdown_is_refused()
    {
        using var terminal = PumpHouse.Open();
        var file = terminal.Write("[list.txt]\nPumps\n");
        Refusal.OfCommand(terminal, ["standard", "use", PumpHouse.File, .. file], ofFile: true);
    }

    [Fact]
    public void A_standard_breakdown_is_not_saved_over_a_file()
    {
        using var terminal = PumpHouse.Open();
        terminal.Do("standard", "save", PumpHouse.File, "kept.plenum");
        var kept = File.ReadAllBytes(terminal["kept.plenum"]);
        Refusal.OfCommand(
            terminal,
            ["standard", "save", PumpHouse.File, "kept.plenum"],
            ofFile: true
        );
        Assert.Equal(kept, File.ReadAllBytes(terminal["kept.plenum"]));
    }

    [Fact]
    public void A_standard_breakdown_is_not_saved_in_a_folder_that_is_not_there()
    {
        using var terminal = PumpHouse.Open();
        Refusal.OfCommand(
            terminal,
            ["standard", "save", PumpHouse.File, "nowhere/kept.plenum"],
            ofFile: true
        );
    }

    [Theory]
    [InlineData("An_unknown_standard_breakdown_is_wrong_usage", "use", "pumping-statio")]
    [InlineData("A_standard_breakdown_like_none_is_wrong_usage", "use", "weather")]
    [InlineData(
        "A_part_that_is_left_out_without_an_equals_sign_is_wrong_usage",
        "use",
        "pumping-station",
        "--leave",
        "8"
    )]
    [InlineData(
        "An_unknown_element_to_be_filled_is_wrong_usage",
        "use",
        "pumping-station",
        "--under",
        "PH.3O"
    )]
    [InlineData("A_package_is_no_standard_breakdown", "save", "kept.plenum", "--under", "PH.50")]
    [InlineData("A_standard_breakdown_without_a_file_is_wrong_usage", "save")]
    public void Wrong_usage_is_refused(string name, string what, params string[] rest)
    {
        using var terminal = PumpHouse.Open();
        Refusal.OfCommand(
            terminal,
            ["standard", what, PumpHouse.File, .. rest],
            ExitCode.WrongUsage,
            name: name
        );
        Assert.False(File.Exists(terminal["kept.plenum"]));
    }

    [Fact]
    public void An_empty_project_is_no_standard_breakdown()
    {
        using var terminal = PumpHouse.Open();
        terminal.Do("new", "empty.plenum");
        Assert.Equal(
            ExitCode.WrongUsage,
            terminal.Tell("standard", "save", "empty.plenum", "kept.plenum").Status
        );
        Assert.False(File.Exists(terminal["kept.plenum"]));
        Refusal.OfCommand(
            terminal,
            ["standard", "use", PumpHouse.File, "empty.plenum", "--under", "PH.30"],
            ExitCode.WrongUsage
        );
    }

    private static void Refused(
        string[] command,
        bool isEmpty = false,
        [System.Runtime.CompilerServices.CallerMemberName] string name = ""
    )
    {
        using var terminal = isEmpty ? PumpHouse.Empty() : PumpHouse.Open();
        Refusal.OfCommand(terminal, ["standard", .. command], ExitCode.BadInput, name: name);
    }
}
