using System.Collections.Frozen;
using Plenum.Samples.Demo.Plant;

namespace Plenum.Samples.Demo;

/// <summary>One activity that every part of a family needs.</summary>
/// <param name="Name">The activity, as the work set calls it.</param>
/// <param name="Facet">Engineering, procurement, construction, commissioning or close.</param>
/// <param name="Share">Its usual share of the part's cost in per mille.</param>
/// <param name="Days">Its usual duration in working days.</param>
/// <param name="Technique">How its progress is usually measured.</param>
/// <param name="Payment">How it is paid for, see <see cref="CostMix"/>.</param>
/// <param name="After">Activities of the same set that come before it.</param>
/// <param name="Hazards">Usual hazards, between semicolons.</param>
internal sealed record WorkStep(
    string Name,
    string Facet,
    int Share,
    int Days,
    string Technique,
    string Payment,
    IReadOnlyList<string> After,
    string Hazards
)
{
    /// <summary>Steps whose work is done in lots, so that a large one is planned as several packages.</summary>
    public bool CanBeSplit =>
        Name
            is "Manufacture"
                or "Fabrication"
                or "Erection"
                or "Construction"
                or "Finishing"
                or "Earthworks"
                or "Dredging"
                or "Installation"
                or "Software"
                or "Connection";
}

/// <summary>A kind of part with the activities that it needs.</summary>
internal sealed record PartType(
    string Key,
    string Family,
    string Name,
    string QuantityUnit,
    int Quantity,
    IReadOnlyList<(string Name, int Weight)> Milestones,
    IReadOnlyDictionary<string, string> NotNeeded,
    IReadOnlyList<WorkStep> Steps
);

/// <summary>The part types of the plant, read from <see cref="WorkSetText"/>.</summary>
internal static class WorkSets
{
    public static IReadOnlyList<PartType> PartTypes { get; } = ReadPartTypes();

    private static readonly FrozenDictionary<string, PartType> _byKey =
        PartTypes.ToFrozenDictionary(type => type.Key, StringComparer.Ordinal);

    public static PartType Of(string key) => _byKey[key];

    private static List<PartType> ReadPartTypes()
    {
        var families = ReadFamilies();
        var types = new List<PartType>();
        foreach (var line in PlantText.Lines(WorkSetText.PartTypes))
        {
            var cells = PlantText.Cells(line, 7);
            types.Add(
                new PartType(
                    cells[0],
                    cells[1],
                    cells[2],
                    cells[3],
                    PlantText.Whole(cells[4]),
                    ReadMilestones(cells[5]),
                    ReadReasons(cells[6]),
                    families[cells[1]]
                )
            );
        }
        return types;
    }

    private static Dictionary<string, List<WorkStep>> ReadFamilies()
    {
        var families = new Dictionary<string, List<WorkStep>>(StringComparer.Ordinal);
        var steps = new List<WorkStep>();
        foreach (var line in PlantText.Lines(WorkSetText.Families))
        {
            if (line.StartsWith("family ", StringComparison.Ordinal))
            {
                steps = [];
                families.Add(line["family ".Length..], steps);
                continue;
            }
            var cells = PlantText.Cells(line, 8);
            steps.Add(
                new WorkStep(
                    cells[0],
                    cells[1],
                    PlantText.Whole(cells[2]),
                    PlantText.Whole(cells[3]),
                    cells[4],
                    cells[5],
                    cells[6].Split(';', StringSplitOptions.RemoveEmptyEntries),
                    cells[7]
                )
            );
        }
        return families;
    }

    private static List<(string Name, int Weight)> ReadMilestones(string text)
    {
        var milestones = new List<(string, int)>();
        foreach (
            var part in text.Split(
                ',',
                StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries
            )
        )
        {
            var space = part.LastIndexOf(' ');
            milestones.Add((part[..space], PlantText.Whole(part[(space + 1)..])));
        }
        return milestones;
    }

    private static Dictionary<string, string> ReadReasons(string text)
    {
        var reasons = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var part in text.Split(';', StringSplitOptions.RemoveEmptyEntries))
        {
            var sides = part.Split('=', StringSplitOptions.TrimEntries);
            reasons.Add(sides[0], sides[1]);
        }
        return reasons;
    }
}
