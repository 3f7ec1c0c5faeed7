using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.BadInput;

/// <summary>Command lines that make no sense: exit status 2, and what would.</summary>
public class UsageTests
{
    [Theory]
    [InlineData("An_unknown_command_is_wrong_usage", "acounts", PumpHouse.File)]
    [InlineData("A_missing_project_is_wrong_usage", "accounts")]
    [InlineData("An_import_without_a_path_is_wrong_usage", "import", PumpHouse.File)]
    [InlineData("An_unknown_option_is_wrong_usage", "tree", PumpHouse.File, "--depth", "2")]
    [InlineData("Level_0_of_the_tree_is_wrong_usage", "tree", PumpHouse.File, "--level", "0")]
    [InlineData(
        "Level_0_of_the_accounts_is_wrong_usage",
        "accounts",
        PumpHouse.File,
        "--by",
        "element",
        "--level",
        "0"
    )]
    [InlineData(
        "A_level_that_is_no_number_is_wrong_usage",
        "tree",
        PumpHouse.File,
        "--level",
        "two"
    )]
    [InlineData(
        "A_level_of_another_cut_is_wrong_usage",
        "accounts",
        PumpHouse.File,
        "--level",
        "2"
    )]
    [InlineData("An_unknown_cut_is_wrong_usage", "accounts", PumpHouse.File, "--by", "nonsense")]
    [InlineData(
        "A_thirteenth_month_is_wrong_usage",
        "accounts",
        PumpHouse.File,
        "--at",
        "2026-13-01"
    )]
    [InlineData(
        "A_forecast_at_no_date_is_wrong_usage",
        "forecast",
        PumpHouse.File,
        "--at",
        "yesterday"
    )]
    [InlineData(
        "An_unknown_element_of_the_accounts_is_wrong_usage",
        "accounts",
        PumpHouse.File,
        "--under",
        "NOPE"
    )]
    [InlineData(
        "A_mistyped_element_of_the_tree_is_wrong_usage",
        "tree",
        PumpHouse.File,
        "--under",
        "PH.3O"
    )]
    [InlineData(
        "An_unknown_element_of_the_forecast_is_wrong_usage",
        "forecast",
        PumpHouse.File,
        "--under",
        "NOPE"
    )]
    [InlineData(
        "A_chain_to_an_unknown_activity_is_wrong_usage",
        "network",
        PumpHouse.File,
        "--to",
        "A1O"
    )]
    [InlineData(
        "A_band_of_float_that_is_no_number_is_wrong_usage",
        "network",
        PumpHouse.File,
        "--float",
        "-3"
    )]
    [InlineData(
        "What_has_moved_and_what_is_are_not_asked_at_once",
        "network",
        PumpHouse.File,
        "--since",
        "2026-02-28",
        "--to",
        "A10"
    )]
    [InlineData("An_unknown_rule_is_wrong_usage", "check", PumpHouse.File, "--rule", "gapp")]
    [InlineData(
        "An_unknown_format_is_wrong_usage",
        "export",
        PumpHouse.File,
        "tables",
        "--format",
        "pdf"
    )]
    [InlineData("A_command_like_none_is_wrong_usage", "weather")]
    [InlineData("A_seed_that_is_no_number_is_wrong_usage", "demo", "plant", "--seed", "x")]
    [InlineData(
        "A_synthetic_project_of_no_packages_is_wrong_usage",
        "demo",
        "plant",
        "--packages",
        "0"
    )]
    [InlineData("An_option_without_its_value_is_wrong_usage", "accounts", PumpHouse.File, "--at")]
    public void Wrong_usage_is_refused_and_says_what_is_right(string name, params string[] command)
    {
        using var terminal = PumpHouse.Open();
        var bytes = File.ReadAllBytes(terminal[PumpHouse.File]);
        var reply = terminal.Tell(command);
        Approved.Is(name, terminal.Story);
        Assert.Equal(ExitCode.WrongUsage, reply.Status);
        Assert.Empty(reply.Out);
        Assert.Equal(bytes, File.ReadAllBytes(terminal[PumpHouse.File]));
    }

    [Fact]
    public void An_unknown_change_request_is_wrong_usage()
    {
        using var terminal = PumpHouse.Open();
        var bytes = File.ReadAllBytes(terminal[PumpHouse.File]);
        var files = terminal.Write(
            """
            [people.csv]
            person,name
            dee,Dee Ash
            """
        );
        var reply = terminal.Tell(["import", PumpHouse.File, .. files, "--change", "C9"]);
        Approved.Is(nameof(An_unknown_change_request_is_wrong_usage), terminal.Story);
        Assert.Equal(ExitCode.WrongUsage, reply.Status);
        Assert.Equal(bytes, File.ReadAllBytes(terminal[PumpHouse.File]));
    }
}
