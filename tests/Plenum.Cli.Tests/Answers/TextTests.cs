using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.Answers;

/// <summary>What a person reads in the terminal.</summary>
public class TextTests
{
    [Fact]
    public void Help_lists_the_commands_and_what_to_try_first() => Read("--help");

    [Fact]
    public void Help_of_a_command_lists_its_options() => Read("accounts", "--help");

    [Fact]
    public void Accounts_of_the_pump_house() => Read("accounts", PumpHouse.File);

    [Fact]
    public void Accounts_of_the_pump_house_in_its_last_period_by_element() =>
        Read("accounts", PumpHouse.File, "--by", "element", "--level", "2", "--period");

    [Fact]
    public void Accounts_of_the_pump_house_before_its_first_period_ends() =>
        Read("accounts", PumpHouse.File, "--at", "2026-01-15");

    [Fact]
    public void Tree_of_the_pump_house() => Read("tree", PumpHouse.File);

    [Fact]
    public void Forecast_of_the_pump_house() => Read("forecast", PumpHouse.File);

    [Fact]
    public void Network_of_the_pump_house() => Read("network", PumpHouse.File);

    [Fact]
    public void Driving_chain_to_an_activity_of_the_pump_house() =>
        Read("network", PumpHouse.File, "--to", "PH.20.1");

    [Fact]
    public void Dates_that_have_moved_since_the_end_of_February_in_the_pump_house() =>
        Read("network", PumpHouse.File, "--since", "2026-02-28");

    [Fact]
    public void Dates_that_have_moved_since_an_earlier_copy_of_the_pump_house()
    {
        using var terminal = PumpHouse.Open();
        File.Copy(terminal[PumpHouse.File], terminal["before.plenum"]);
        File.WriteAllText(terminal["links.csv"], "from,to,type,lag\nPH.20.1,PH.20.2,FS,30\n");
        terminal.Do("import", PumpHouse.File, "links.csv");
        terminal.Tell("network", PumpHouse.File, "--against", "before.plenum");
        Approved.Is(
            nameof(Dates_that_have_moved_since_an_earlier_copy_of_the_pump_house),
            terminal.Story
        );
    }

    [Fact]
    public void Activities_near_the_critical_ones_of_the_pump_house() =>
        Read("network", PumpHouse.File, "--float", "40");

    [Fact]
    public void Assessment_of_the_pump_house() => Read("assess", PumpHouse.File);

    [Fact]
    public void Precision_of_the_pump_house() => Read("precision", PumpHouse.File);

    [Fact]
    public void Precision_of_an_account_of_the_pump_house() =>
        Read("precision", PumpHouse.File, "--account", "CA30");

    [Fact]
    public void Certainty_of_the_pump_house() => Read("certainty", PumpHouse.File);

    [Fact]
    public void Audit_of_the_pump_house()
    {
        using var terminal = PumpHouse.Open();
        var reply = terminal.Tell("check", PumpHouse.File);
        Approved.Is(nameof(Audit_of_the_pump_house), terminal.Story);
        Assert.Empty(reply.Error);
    }

    [Fact]
    public void An_audit_with_errors_answers_no_and_once_they_are_mended_yes()
    {
        using var terminal = PumpHouse.Open();
        Assert.Equal(ExitCode.AnswerIsNo, terminal.Run("check", PumpHouse.File).Status);
        Assert.Equal(ExitCode.AnswerIsNo, terminal.Run("check", PumpHouse.File, "--json").Status);
        var files = terminal.Write(
            """
            [elements.csv]
            code,name,allotted
            PH,Sandgate pump house,403000
            [accounts.csv]
            account,element,unit,manager
            CA50,PH.50,OWN,ann
            [changes.csv]
            change,title,state
            C1,Planting,approved
            [postings.csv]
            change,posting,from,to,amount
            C1,1,undistributed,CA50,5000
            """
        );
        terminal.Do(["import", PumpHouse.File, .. files]);
        Assert.Equal(ExitCode.Done, terminal.Run("check", PumpHouse.File).Status);
        Assert.Equal(ExitCode.Done, terminal.Run("check", PumpHouse.File, "--json").Status);
    }

    [Fact]
    public void Answers_of_an_empty_project()
    {
        using var terminal = PumpHouse.Empty();
        foreach (
            var question in new[]
            {
                "tree",
                "accounts",
                "forecast",
                "network",
                "assess",
                "precision",
                "certainty",
                "check",
            }
        )
        {
            terminal.Tell(question, PumpHouse.File);
        }

        Approved.Is(nameof(Answers_of_an_empty_project), terminal.Story);
    }

    private static void Read(params string[] command) => Read(command, Caller());

    private static void Read(string[] command, string name)
    {
        using var terminal = PumpHouse.Open();
        var reply = terminal.Tell(command);
        Approved.Is(name, terminal.Story);
        Assert.Equal(ExitCode.Done, reply.Status);
        Assert.Empty(reply.Error);
    }

    /// <summary>The test that is running: a caller's name cannot follow a list of any length.</summary>
    private static string Caller() => TestContext.Current.TestMethod!.MethodName;
}
