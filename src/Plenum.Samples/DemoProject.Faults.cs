namespace Plenum.Samples;

public static partial class DemoProject
{
    /// <summary>Components of which neither they nor anything above or below them names a person.</summary>
    internal static readonly string[] WithoutPerson = ["03.2.09", "08.4.03"];

    /// <summary>Packages measured in a way that does not suit the time they take.</summary>
    internal static readonly (
        string Component,
        string Activity,
        string Technique
    )[] UnsuitedTechniques =
    [
        ("08.1.01", "Manufacture", "50/50"),
        ("09.3.02", "Software", "0/100"),
    ];

    /// <summary>Open packages of which nothing has been heard for four periods.</summary>
    internal static readonly HashSet<string> StaleStatus = new(StringComparer.Ordinal)
    {
        "03.1.02.4",
        "03.7.04.4",
        "07.3.02.4",
    };

    /// <summary>Open packages whose cost still to come was reported once, when they started.</summary>
    internal static readonly HashSet<string> StaleEstimates = new(StringComparer.Ordinal)
    {
        "03.3.05.4",
        "06.1.05.4",
        "03.2.08.4",
    };

    /// <summary>Open packages whose cost still to come is far below what their efficiency so far says.</summary>
    internal static readonly HashSet<string> LowEstimates = new(StringComparer.Ordinal)
    {
        "03.4.05.4",
        "04.1.03.4",
    };

    /// <summary>Packages that have cost more than was ordered.</summary>
    internal static readonly HashSet<string> SpentBeyondOrder = new(StringComparer.Ordinal)
    {
        "03.3.04.4",
        "02.3.03.3",
    };

    /// <summary>Packages that must be open at the status date for their fault to show.</summary>
    internal static readonly HashSet<string> OpenAtStatus = new(
        StaleStatus.Concat(StaleEstimates).Concat(LowEstimates),
        StringComparer.Ordinal
    );

    /// <summary>Packages that drive the finish late, with the working days by which they are late.</summary>
    internal static readonly Dictionary<string, int> LateChain = new(StringComparer.Ordinal)
    {
        ["10.1.03.6"] = 35,
    };

    /// <summary>What subsystems are allotted beyond the sum of their parts, minor units; negative: less than that.</summary>
    internal static readonly Dictionary<string, long> MoneyBeyondParts = new(StringComparer.Ordinal)
    {
        ["02.5"] = -350_000_00,
        ["03.4"] = 1_000_000_00,
        ["07.5"] = 1_500_000_00,
    };

    /// <summary>
    /// The faults that are in the demo project on purpose. The codes hold for every seed; the sizes of the offsets
    /// for <see cref="DefaultSeed"/>.
    /// </summary>
    public static IReadOnlyList<PlantedFault> PlantedFaults { get; } =
    [
        new(
            "gap",
            "03.4",
            "About 7 % of what RO train D is allotted belongs to none of its parts."
        ),
        new(
            "gap",
            "07.5",
            "Outfall marking and buoys has 1.5 million allotted and is not broken down."
        ),
        new("gap", "11.5.03", "The dune strip has an amount allotted and is not broken down."),
        new(
            "more than the whole",
            "02.5",
            "The parts of the cartridge filters come to more than they are allotted."
        ),
        new(
            "missing part",
            "03.4",
            "RO train D has no train instruments; the other five trains have them."
        ),
        new(
            "missing activity",
            "03.2.04",
            "Nobody has planned the factory test of the pump of train B, or ruled it out."
        ),
        new("missing activity", "03.1.11", "The sampling panel of train A has no specification."),
        new("missing activity", "03.2.05", "Pump motor and drive of train B have no hand-over."),
        new(
            "hidden offsets",
            "10.1-CIV",
            "Net cost variance about zero; packages gain and lose more than 0.8 million."
        ),
        new(
            "hidden offsets",
            "08.3-ELE",
            "Net cost variance about zero; packages gain and lose more than 0.8 million."
        ),
        new(
            "hidden offsets",
            "02.4-MEC",
            "Net cost variance about zero; packages gain and lose more than 0.8 million."
        ),
        new(
            "hidden offsets",
            "01.1-MAR",
            "Net cost variance about zero; packages gain and lose more than 0.8 million."
        ),
        new(
            "hidden offsets",
            "06.1-MEC",
            "Net cost variance about zero; packages gain and lose more than 0.8 million."
        ),
        new(
            "hidden offsets",
            "03.2-MEC",
            "Net cost variance about zero; packages gain and lose more than 0.8 million."
        ),
        new(
            "hidden offsets",
            "05.4-CIV",
            "Net cost variance about zero; packages gain and lose more than 0.8 million."
        ),
        new(
            "no person in charge",
            "03.2.09",
            "Nobody is in charge of the valves of train B and their packages."
        ),
        new("no person in charge", "08.4.03", "Nobody is in charge of lighting and sockets."),
        new(
            "no account",
            "06.1.08",
            "Sockets and lighting belong to Electrical, which has no account in 06.1; their money is in no account of the budget ledger either."
        ),
        new("stale status", "03.1.02.4", "Open, and nothing reported for four periods."),
        new("stale status", "03.7.04.4", "Open, and nothing reported for four periods."),
        new("stale status", "07.3.02.4", "Open, and nothing reported for four periods."),
        new(
            "stale estimate",
            "03.3.05.4",
            "Cost still to come was reported once, in the period of its start."
        ),
        new(
            "stale estimate",
            "06.1.05.4",
            "Cost still to come was reported once, in the period of its start."
        ),
        new(
            "stale estimate",
            "03.2.08.4",
            "Cost still to come was reported once, in the period of its start."
        ),
        new(
            "estimate below the index",
            "03.4.05.4",
            "A third of the budgeted rest is said to be enough."
        ),
        new(
            "estimate below the index",
            "04.1.03.4",
            "A third of the budgeted rest is said to be enough."
        ),
        new("spent beyond the order", "03.3.04.4", "More has been spent than is committed."),
        new("spent beyond the order", "02.3.03.3", "More has been spent than is committed."),
        new("technique unsuited", "08.1.01.4", "50/50 on making that runs over several periods."),
        new(
            "technique unsuited",
            "09.3.02.4",
            "0/100 on software that takes more than half a year."
        ),
        new(
            "two logics in one split",
            "06.2",
            "Split by place into sections, with the line valves, a physical part, among them."
        ),
        new("generic name", "09.1.04", "\"Other equipment\" says nothing of what it is."),
        new("named as work", "09.1.03", "\"Programme controllers\" stands among parts."),
        new(
            "duplicate name",
            "02.6",
            "Two of its parts are called backwash basin; one of them is the thickener."
        ),
        new("deliverable not covered", "4.5.3", "No element answers the dewatering of sludge."),
        new("deliverable partly covered", "4.4.2", "Of two tanks only the east one is traced."),
        new(
            "deliverable partly covered",
            "4.5.2",
            "Nothing answers that the outfall is measured for two years."
        ),
        new(
            "exclusion answered",
            "5.3",
            "The inlet chamber answers what the scope statement excludes."
        ),
        new(
            "nobody asked",
            "10.4",
            "No scope item asks for the administration and laboratory building."
        ),
        new("nobody asked", "05.4.02", "No scope item asks for the west tank."),
        new("nobody asked", "11.5.02", "No scope item asks for the planting."),
        new("nobody asked", "11.5.03", "No scope item asks for the dune strip."),
        new(
            "late chain",
            "10.1.03.6",
            "The floor of the RO hall is seven weeks late and drives racks, piping, start-up and hand-over."
        ),
    ];
}
