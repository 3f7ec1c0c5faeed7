namespace Plenum.Workbench.Standards;

/// <summary>An activity that every part of a type needs, with what its package delivers.</summary>
internal sealed record SetActivity(
    string Name,
    string Facet,
    string Share,
    string Duration,
    string Technique,
    string After,
    string Hazards,
    string Output,
    string Acceptance
);

/// <summary>Part types and work sets of the standard breakdowns that come with the program.</summary>
internal static class WorkSetTexts
{
    private static readonly Lazy<
        IReadOnlyDictionary<string, (string Name, IReadOnlyList<SetActivity> Set)>
    > Made = new(Read);

    /// <summary>Name and activities of each part type, by its code.</summary>
    public static IReadOnlyDictionary<
        string,
        (string Name, IReadOnlyList<SetActivity> Set)
    > Types => Made.Value;

    private static Dictionary<string, (string, IReadOnlyList<SetActivity>)> Read()
    {
        Dictionary<string, List<SetActivity>> families = new(StringComparer.Ordinal);
        Dictionary<string, (string, IReadOnlyList<SetActivity>)> types = new(
            StringComparer.Ordinal
        );
        List<SetActivity> family = [];
        var inTypes = false;
        foreach (var line in StandardText.Lines("work-sets").Where(line => line.Length > 0))
        {
            if (line.StartsWith("family ", StringComparison.Ordinal))
            {
                families[line["family ".Length..]] = family = [];
                continue;
            }

            if (line == "types")
            {
                inTypes = true;
                continue;
            }

            var cells = Array.ConvertAll(line.Split('|'), cell => cell.Trim());
            if (inTypes)
            {
                types[cells[0]] = (cells[1], families[cells[2]]);
            }
            else
            {
                family.Add(
                    new SetActivity(
                        cells[0],
                        cells[1],
                        cells[2],
                        cells[3],
                        cells[4],
                        cells[5],
                        cells[6],
                        cells[7],
                        cells[8]
                    )
                );
            }
        }

        return types;
    }
}
