namespace Plenum.Samples.Synthetic;

/// <summary>The words of which a synthetic project is made.</summary>
internal static class SyntheticWords
{
    public static readonly string[] Areas =
    [
        "North yard",
        "South yard",
        "Harbour",
        "Quarry",
        "Mill",
        "Power house",
        "Tank farm",
        "Workshops",
        "Water works",
        "Rail yard",
        "Dry stack",
        "Crusher hill",
    ];

    public static readonly string[] Systems =
    [
        "Feed preparation",
        "Cooling water",
        "Compressed air",
        "Grinding",
        "Flotation",
        "Thickening",
        "Filtration",
        "Drying",
        "Storage",
        "Loading",
        "Dust removal",
        "Heat recovery",
        "Power supply",
        "Process control",
        "Fire water",
        "Waste water",
    ];

    public static readonly (string Type, string Name)[] Parts =
    [
        ("pump", "Pump set"),
        ("tank", "Tank"),
        ("mill", "Mill"),
        ("conveyor", "Conveyor"),
        ("fan", "Fan"),
        ("pipe", "Pipe run"),
        ("cable", "Cable run"),
        ("panel", "Panel"),
        ("vessel", "Vessel"),
        ("frame", "Steel frame"),
        ("screen", "Screen"),
        ("cooler", "Cooler"),
    ];

    public static readonly (string Code, string Name, string Parent)[] Units =
    [
        ("ENG", "Engineering and supply", ""),
        ("WRK", "Works", ""),
        ("MEC", "Mechanical", "ENG"),
        ("PIP", "Piping", "ENG"),
        ("ELE", "Electrical", "ENG"),
        ("INS", "Control and instruments", "ENG"),
        ("CIV", "Civil and structural", "WRK"),
        ("ERE", "Erection", "WRK"),
    ];

    /// <summary>Where among <see cref="Units"/> those that do work begin.</summary>
    public const int FirstWorkingUnit = 2;

    public static readonly string[] FirstNames =
    [
        "Alva",
        "Bram",
        "Cleo",
        "Dario",
        "Edda",
        "Falk",
        "Greta",
        "Hugo",
        "Ines",
        "Jorin",
        "Kaia",
        "Lutz",
        "Mira",
        "Nils",
        "Orla",
        "Per",
        "Runa",
        "Sten",
        "Tilda",
        "Ulf",
        "Vida",
        "Wanda",
        "Yann",
    ];

    public static readonly string[] LastNames =
    [
        "Acker",
        "Birken",
        "Calder",
        "Dorn",
        "Esker",
        "Farrow",
        "Gant",
        "Hollin",
        "Ister",
        "Jessen",
        "Kolk",
        "Larch",
        "Mower",
        "Nether",
        "Osier",
        "Pike",
        "Quarle",
        "Rowan",
        "Sallow",
        "Tarn",
        "Ulver",
        "Vetch",
        "Wold",
    ];

    /// <summary>The activities of every part, in order.</summary>
    public static readonly SyntheticStep[] Steps =
    [
        new("Design", "engineering", 80, 30, 60, "labour", "other"),
        new("Specification", "engineering", 25, 10, 20, "labour", ""),
        new("Purchase", "procurement", 15, 20, 30, "labour", ""),
        new("Manufacture", "procurement", 420, 80, 130, "equipment", "material"),
        new("Inspection", "procurement", 12, 0, 0, "labour", "other"),
        new("Delivery", "procurement", 30, 10, 20, "subcontract", ""),
        new("Civil works", "construction", 120, 30, 60, "subcontract", "material"),
        new("Erection", "construction", 220, 30, 60, "labour", "equipment"),
        new("Supervision", "construction", 18, 0, 0, "labour", "other"),
        new("Commissioning", "commissioning", 60, 15, 25, "labour", "other"),
    ];

    public const int Design = 0;
    public const int Specification = 1;
    public const int Purchase = 2;
    public const int Manufacture = 3;
    public const int Inspection = 4;
    public const int Delivery = 5;
    public const int CivilWorks = 6;
    public const int Erection = 7;
    public const int Supervision = 8;
    public const int Commissioning = 9;
}

/// <summary>An activity that every part needs.</summary>
/// <param name="Name">The activity.</param>
/// <param name="Facet">Engineering, procurement, construction or commissioning.</param>
/// <param name="Share">Of the part's cost, per mille.</param>
/// <param name="Shortest">Working days; 0 where it lasts as long as the activity that it accompanies.</param>
/// <param name="Longest">Working days.</param>
/// <param name="MainCost">The cost element that most of it is spent on.</param>
/// <param name="OtherCost">The second cost element; empty where there is none.</param>
internal sealed record SyntheticStep(
    string Name,
    string Facet,
    int Share,
    int Shortest,
    int Longest,
    string MainCost,
    string OtherCost
);
