using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.Answers;

/// <summary>The breakdown as a list, as a workbook, and from a standard breakdown, on the command line.</summary>
public class BreakdownFilesTests
{
    [Fact]
    public void Outline_of_the_pump_house()
    {
        using var terminal = PumpHouse.Open();
        terminal.Tell("outline", PumpHouse.File);
        terminal.Tell("outline", PumpHouse.File, "--under", "PH.20", "--format", "coded");
        Approved.Is(nameof(Outline_of_the_pump_house), terminal.Story);
    }

    [Fact]
    public void A_pump_house_begins_with_a_standard_breakdown()
    {
        using var terminal = new Terminal();
        terminal.Do("new", "new.plenum");
        terminal.Tell("standard", "use", "new.plenum", "pump-station");
        terminal.Tell("standard", "use", "new.plenum", "pumping-station", "--leave", "8");
        terminal.Tell("standard", "use", "new.plenum", "pumping-station", "--leave", "8=");
        terminal.Tell("standard", "use", "new.plenum", "pumping-station", "--leave", "8=no sewer");
        terminal.Tell("standard", "use", "new.plenum", "substation");
        terminal.Tell("standard", "save", "new.plenum", "wet-well.plenum", "--under", "2");
        terminal.Tell("outline", "wet-well.plenum", "--format", "coded");
        Approved.Is(nameof(A_pump_house_begins_with_a_standard_breakdown), terminal.Story);
    }

    [Fact]
    public void A_workbook_of_the_pump_house_that_nobody_has_edited_changes_nothing()
    {
        using var terminal = PumpHouse.Open();
        terminal.Tell("workbook", PumpHouse.File, "pump-house.xlsx");
        terminal.Tell("workbook", PumpHouse.File, "pump-house.xlsx", "--read");
        terminal.Tell("workbook", PumpHouse.File, "pump-house.xlsx", "--dry-run");
        terminal.Tell("workbook", PumpHouse.File, "nowhere.xlsx", "--read");
        Approved.Is(
            nameof(A_workbook_of_the_pump_house_that_nobody_has_edited_changes_nothing),
            terminal.Story
        );
    }
}
