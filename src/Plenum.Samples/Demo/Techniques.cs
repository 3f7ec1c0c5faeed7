using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo;

/// <summary>Chooses how each package is measured and how its budget is spread, and computes shares of either.</summary>
internal static class Techniques
{
    private static readonly string[] _drawings =
    [
        "General arrangement",
        "Data sheets",
        "Loads and supports",
        "Details",
        "Parts list",
        "Wiring and terminals",
        "Calculations",
        "Installation instructions",
    ];

    public static void Choose(DemoPlan plan, ulong seed)
    {
        foreach (var package in plan.Packages)
        {
            var random = new SeededRandom(seed, "technique " + package.Code);
            package.Technique = TechniqueOf(package, random);
            package.Spread = SpreadOf(package, random);
        }
        foreach (var (component, activity, technique) in DemoProject.UnsuitedTechniques)
        {
            plan.Package(component, activity).Technique = technique;
        }
        foreach (var package in plan.Packages)
        {
            AddDetail(package, new SeededRandom(seed, "detail " + package.Code));
        }
    }

    /// <summary>
    /// The planned share on a working day: 0 before the start, 1 from the finish on, between them by technique and
    /// spread.
    /// </summary>
    public static double PlannedShare(Package package, int day)
    {
        if (package.Base is { } followed)
        {
            return PlannedShare(followed, day);
        }
        if (day < package.Start)
        {
            return 0;
        }
        if (day >= package.Finish)
        {
            return 1;
        }
        return package.Technique switch
        {
            "0/100" => 0,
            "milestones" => package
                .Milestones.Where(step => step.Planned <= day)
                .Sum(step => step.Weight) / 100.0,
            _ when FirstOfPair(package.Technique) is { } first => first / 100.0,
            _ => Spreads.Share(package.Spread, (double)(day - package.Start + 1) / package.Days),
        };
    }

    /// <summary>The first figure of a technique such as 25/75, which is earned at the start.</summary>
    public static int? FirstOfPair(string technique)
    {
        var slash = technique.IndexOf('/', StringComparison.Ordinal);
        return slash < 0 ? null : Plant.PlantText.Whole(technique[..slash]);
    }

    private static string TechniqueOf(Package package, SeededRandom random)
    {
        var usual = package.Step.Technique;
        var kind = random.Below(100);
        return usual switch
        {
            "milestones" when package.Component.Type.Milestones.Count == 0 || kind < 12 =>
                "percent",
            "items" when package.Step.Name == "Design" && kind < 60 => kind < 38
                ? "percent"
                : "milestones",
            "items" when kind < 35 => "percent",
            "units" when kind < 30 => "percent",
            "percent" when kind < 12 && package.Step.Facet == "commissioning" => "milestones",
            "25/75" when kind < 30 => "0/100",
            "50/50" when package.Days > 30 => "percent",
            "0/100" when package.Days > 34 => "50/50",
            _ => usual,
        };
    }

    private static string SpreadOf(Package package, SeededRandom random)
    {
        var kind = random.Below(100);
        return package.Technique switch
        {
            "loe" => "even",
            "percent" or "units" or "items" => package.Step.Name switch
            {
                "Design" => kind < 60 ? "falling" : "even",
                "Construction" or "Fabrication" or "Manufacture" => kind switch
                {
                    < 16 => "periods",
                    < 75 => "s_shaped",
                    _ => "even",
                },
                "Software" or "Run" => kind < 50 ? "rising" : "s_shaped",
                _ => kind switch
                {
                    < 6 => "periods",
                    < 40 => "s_shaped",
                    < 50 => "rising",
                    _ => "even",
                },
            },
            _ => "even",
        };
    }

    private static void AddDetail(Package package, SeededRandom random)
    {
        var type = package.Component.Type;
        switch (package.Technique)
        {
            case "milestones":
                AddMilestones(package, MilestonesOf(package));
                break;
            case "units":
                package.Quantity = Math.Max(2, type.Quantity / package.Lots);
                break;
            case "items" when package.Step.Name == "Design":
                package.CreditRule = "drawing";
                AddItems(package, random, _drawings, 1, 1);
                break;
            case "items" when package.Step.Name == "Loop checks":
                package.CreditRule = "loop";
                AddItems(package, random, ["Panel", "Field", "Rack", "Header", "Pump"], 4, 24);
                break;
            case "items":
                package.CreditRule = type.Key == "cables" ? "cable" : "pipe";
                AddItems(
                    package,
                    random,
                    ["Run 1", "Run 2", "Run 3", "Run 4", "Run 5", "Run 6"],
                    20,
                    160
                );
                break;
        }
    }

    private static IReadOnlyList<(string Name, int Weight)> MilestonesOf(Package package) =>
        package.Step.Name switch
        {
            "Manufacture" or "Fabrication" => package.Component.Type.Milestones,
            "Design" => [("draft", 40), ("reviewed", 35), ("issued", 25)],
            _ => [("filled", 20), ("first run", 40), ("set values reached", 40)],
        };

    /// <summary>Each milestone is planned when the weights up to it, taken evenly, are through.</summary>
    private static void AddMilestones(
        Package package,
        IReadOnlyList<(string Name, int Weight)> steps
    )
    {
        var reached = 0;
        foreach (var (name, weight) in steps)
        {
            reached += weight;
            var day = package.Start + ((package.Days * reached) / 100) - 1;
            package.Milestones.Add(new Milestone(name, weight, Math.Max(package.Start, day)));
        }
    }

    private static void AddItems(
        Package package,
        SeededRandom random,
        string[] names,
        int low,
        int high
    )
    {
        var count = random.Between(3, names.Length);
        for (var i = 0; i < count; i++)
        {
            package.Items.Add(
                new BulkItem(
                    $"{package.Code}-{i + 1:00}",
                    names[i],
                    random.Between(low, high),
                    random.Between(2, 24) * 10
                )
            );
        }
    }
}
