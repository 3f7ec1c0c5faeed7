namespace Plenum.Samples.Demo.Plant;

/// <summary>Builds systems, subsystems, accounts and components from the written tables.</summary>
internal static class PlantReader
{
    public static List<PlantSystem> Read()
    {
        var systems = new List<PlantSystem>();
        Account? account = null;
        foreach (
            var line in PlantText
                .Lines(PlantWater.Systems)
                .Concat(PlantText.Lines(PlantLand.Systems))
        )
        {
            var space = line.IndexOf(' ', StringComparison.Ordinal);
            var rest = line[(space + 1)..];
            switch (line[..space])
            {
                case "system":
                    systems.Add(ReadSystem(rest));
                    break;
                case "sub":
                    systems[^1].Subsystems.Add(ReadSubsystem(rest));
                    break;
                case "acc":
                    account = ReadAccount(rest, systems[^1].Subsystems[^1]);
                    account.Subsystem.Accounts.Add(account);
                    break;
                case "loose":
                    var loose = PlantText.Cells(rest, 2);
                    account = new Account
                    {
                        Subsystem = systems[^1].Subsystems[^1],
                        Unit = loose[0],
                        Manager = "",
                        Budget = PlantText.Millions(loose[1]),
                    };
                    break;
                case "-":
                    AddComponent(rest, account!);
                    break;
                case "open":
                    AddOpen(rest, systems[^1].Subsystems[^1]);
                    break;
                default:
                    throw new FormatException($"Unknown line: {line}");
            }
        }
        return systems;
    }

    private static PlantSystem ReadSystem(string line)
    {
        var cells = PlantText.Cells(line, 4);
        return new PlantSystem
        {
            Code = cells[0],
            Name = cells[1],
            Split = cells[2],
            Description = cells[3],
        };
    }

    private static Subsystem ReadSubsystem(string line)
    {
        var cells = PlantText.Cells(line, 7);
        return new Subsystem
        {
            Code = cells[0],
            Name = cells[1],
            Split = cells[2],
            DesignStarts = cells[3].Length == 0 ? null : PlantText.Date(cells[3]),
            SiteOpens = cells[4].Length == 0 ? null : PlantText.Date(cells[4]),
            Description = cells[5],
            DoneWhen = cells[6],
        };
    }

    private static Account ReadAccount(string line, Subsystem subsystem)
    {
        var cells = PlantText.Cells(line, 7);
        return new Account
        {
            Subsystem = subsystem,
            Unit = cells[0],
            Manager = cells[1],
            Budget = PlantText.Millions(cells[2]),
            Planned = MillionsOrNone(cells[3]),
            Earned = MillionsOrNone(cells[4]),
            CostVariance = MillionsOrNone(cells[5]),
            Offset = MillionsOrNone(cells[6]),
        };
    }

    private static void AddComponent(string line, Account account)
    {
        var cells = PlantText.Cells(line, 3);
        var subsystem = account.Subsystem;
        subsystem.Components.Add(
            new Component
            {
                Code = NextCode(subsystem),
                Name = cells[0],
                Account = account,
                Type = WorkSets.Of(cells[1]),
                Weight = PlantText.Whole(cells[2]),
            }
        );
    }

    private static void AddOpen(string line, Subsystem subsystem)
    {
        var cells = PlantText.Cells(line, 2);
        subsystem.Open.Add((NextCode(subsystem), cells[0], PlantText.Millions(cells[1])));
    }

    private static string NextCode(Subsystem subsystem) =>
        $"{subsystem.Code}.{subsystem.Components.Count + subsystem.Open.Count + 1:00}";

    private static long? MillionsOrNone(string text) =>
        text.Length == 0 ? null : PlantText.Millions(text);
}
