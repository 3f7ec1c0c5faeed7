using Plenum.Samples.Demo.Plant;

namespace Plenum.Samples.Demo;

/// <summary>
/// Breaks the components down into packages. It does not depend on the seed, so that codes and names are the same in
/// every demo project.
/// </summary>
internal static class Structure
{
    public const int Packages = 2708;

    /// <summary>Where no package may be planned, though the work set names the activity.</summary>
    private static readonly (string Component, string Activity)[] _missing =
    [
        ("03.1.11", "Specification"),
        ("03.2.04", "Factory test"),
        ("03.2.05", "Hand-over"),
    ];

    private static readonly WorkStep _supervision = new(
        "Site supervision",
        "construction",
        18,
        0,
        "loe",
        "office",
        [],
        ""
    );

    private static readonly WorkStep _inspection = new(
        "Inspection of making",
        "procurement",
        14,
        0,
        "apportioned",
        "office",
        [],
        ""
    );

    public static DemoPlan Build()
    {
        var plan = new DemoPlan(PlantReader.Read());
        foreach (var (component, activity) in _missing)
        {
            plan.Component(component).Missing.Add(activity);
        }
        var lots = CountLots(plan);
        foreach (var component in plan.Components)
        {
            AddPackages(component, lots);
            NumberPackages(component);
            component.Account.Packages.AddRange(component.Packages);
            plan.Packages.AddRange(component.Packages);
        }
        for (var i = 0; i < plan.Packages.Count; i++)
        {
            plan.Packages[i].Index = i;
        }
        AssignPeople(plan);
        return plan;
    }

    /// <summary>
    /// Splits the largest pieces of work into lots, one lot more at a time, until the project has its number of
    /// packages.
    /// </summary>
    private static Dictionary<(string, string), int> CountLots(DemoPlan plan)
    {
        var lots = new Dictionary<(string, string), int>();
        var sizes = new PriorityQueue<(string, string, double), (double, int)>();
        var count = 0;
        foreach (var component in plan.Components)
        {
            var steps = PlannedSteps(component).ToList();
            count += steps.Count + Extra(component).Count();
            var weights = component.Account.Subsystem.Components.Where(c =>
                c.Account == component.Account
            );
            var size =
                (double)component.Account.Budget * component.Weight / weights.Sum(c => c.Weight);
            foreach (var step in steps)
            {
                lots[(component.Code, step.Name)] = 1;
                if (step.CanBeSplit && !IsKeptWhole(component, step))
                {
                    var cost = size * step.Share / steps.Sum(s => s.Share);
                    sizes.Enqueue((component.Code, step.Name, cost), (-cost, sizes.Count));
                }
            }
        }
        for (var order = sizes.Count; count < Packages; count++, order++)
        {
            var (component, step, cost) = sizes.Dequeue();
            var parts = ++lots[(component, step)];
            sizes.Enqueue((component, step, cost), (-cost / parts, order));
        }
        return lots;
    }

    /// <summary>Work in which an unsuited technique is planted stays one long package.</summary>
    private static bool IsKeptWhole(Component component, WorkStep step) =>
        Array.Exists(
            DemoProject.UnsuitedTechniques,
            fault => fault.Component == component.Code && fault.Activity == step.Name
        );

    private static IEnumerable<WorkStep> PlannedSteps(Component component) =>
        component.Type.Steps.Where(step =>
            !component.Type.NotNeeded.ContainsKey(step.Name)
            && !component.Missing.Contains(step.Name)
        );

    /// <summary>Work that belongs to no work set: supervision on site and inspection while something is made.</summary>
    private static IEnumerable<WorkStep> Extra(Component component)
    {
        if (component.Type.Key is "steel_tank" or "filter" or "transformer" or "exchanger")
        {
            yield return _inspection;
        }
        if (component.Type.Key is "pump" or "marine_pipe" or "frame" or "buried_pipe")
        {
            yield return _supervision;
        }
    }

    private static void AddPackages(Component component, Dictionary<(string, string), int> lots)
    {
        foreach (var step in PlannedSteps(component))
        {
            var count = lots[(component.Code, step.Name)];
            for (var lot = 1; lot <= count; lot++)
            {
                var work = LowerFirst(step.Name);
                component.Packages.Add(
                    new Package
                    {
                        Component = component,
                        Step = step,
                        Activity = step.Name,
                        Name =
                            count == 1
                                ? $"{component.Name}, {work}"
                                : $"{component.Name}, {work} {lot}",
                        Lot = lot,
                        Lots = count,
                    }
                );
            }
        }
        foreach (var step in Extra(component))
        {
            component.Packages.Add(
                new Package
                {
                    Component = component,
                    Step = step,
                    Activity = "",
                    Name = $"{component.Name}, {LowerFirst(step.Name)}",
                    Lot = 1,
                    Lots = 1,
                }
            );
        }
    }

    private static void NumberPackages(Component component)
    {
        for (var i = 0; i < component.Packages.Count; i++)
        {
            var package = component.Packages[i];
            package.Code = $"{component.Code}.{i + 1}";
            package.IsPlanning =
                component.Code.StartsWith("09.4", StringComparison.Ordinal)
                || (
                    package.Step.Facet is "commissioning" or "close"
                    && component.Account.Subsystem.DesignStarts >= new DateOnly(2026, 8, 24)
                );
        }
    }

    private static void AssignPeople(DemoPlan plan)
    {
        var byUnit = PlantText
            .Lines(PeopleText.People)
            .Select(line => PlantText.Cells(line, 3))
            .ToLookup(cells => cells[2], cells => cells[0], StringComparer.Ordinal);
        foreach (var component in plan.Components)
        {
            var colleagues = byUnit[component.Account.Unit].ToList();
            var number = plan.Components.IndexOf(component);
            component.Person =
                !component.Account.Exists || number % 3 == 2
                    ? colleagues[number % colleagues.Count]
                    : component.Account.Manager;
            foreach (var package in component.Packages.Where(package => package.Index % 23 == 11))
            {
                package.Person = colleagues[package.Index / 23 % colleagues.Count];
            }
        }
        foreach (var code in DemoProject.WithoutPerson)
        {
            var component = plan.Component(code);
            component.Person = null;
            component.Packages.ForEach(package => package.Person = null);
        }
    }

    private static string LowerFirst(string name) => char.ToLowerInvariant(name[0]) + name[1..];
}
