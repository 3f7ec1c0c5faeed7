using Plenum.Samples.Demo.Plant;
using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo.Tables;

/// <summary>elements, with their dictionary entries and what is allotted to the first three levels.</summary>
internal static class ElementTables
{
    public const string RootName = "Kestrel Bay seawater desalination plant";
    private const string RootCode = "KBY";

    private static readonly Dictionary<string, string[]> _steps = Read(DictionaryText.Steps, 3);
    private static readonly Dictionary<string, string[]> _families = Read(
        DictionaryText.Families,
        4
    );

    public static void Write(DemoPlan plan, TableFolder tables)
    {
        var elements = new Elements(tables);
        var totals = plan.Subsystems.ToDictionary(subsystem => subsystem, Allotted);
        elements.Write(
            new Element(RootCode, "", 1, RootName, "project")
            {
                Split = "part",
                Description = "One plant on the bay, from the intake to the fence of the reservoir",
                Output = "A plant that makes 78 500 m³ of drinking water a day",
                Acceptance = "Thirty days at rated output within the energy limit",
                Allotted = totals.Values.Sum(total => total.Money),
                Hours = totals.Values.Sum(total => total.Hours),
            }
        );
        for (var s = 0; s < plan.Systems.Count; s++)
        {
            var system = plan.Systems[s];
            elements.Write(
                new Element(system.Code, RootCode, s + 1, system.Name, "branch")
                {
                    Split = system.Split,
                    Description = system.Description,
                    Output = $"{system.Name}, complete and accepted",
                    Acceptance = "All its parts accepted",
                    Allotted = system.Subsystems.Sum(subsystem => totals[subsystem].Money),
                    Hours = system.Subsystems.Sum(subsystem => totals[subsystem].Hours),
                }
            );
            for (var i = 0; i < system.Subsystems.Count; i++)
            {
                var subsystem = system.Subsystems[i];
                WriteSubsystem(elements, system, subsystem, i + 1, totals[subsystem]);
            }
        }
    }

    /// <summary>
    /// What is given to a subsystem from above: the sum of its packages, but for the subsystems in which a gap or an
    /// excess is planted.
    /// </summary>
    public static (long Money, long Hours) Allotted(Subsystem subsystem)
    {
        var packages = subsystem.Components.SelectMany(component => component.Packages).ToList();
        var money =
            packages.Sum(package => package.Budget) + subsystem.Open.Sum(open => open.Allotted);
        var hours = packages.SelectMany(package => package.Lines).Sum(line => line.Hours ?? 0);
        return (money + DemoProject.MoneyBeyondParts.GetValueOrDefault(subsystem.Code), hours);
    }

    private static void WriteSubsystem(
        Elements elements,
        PlantSystem system,
        Subsystem subsystem,
        int order,
        (long Money, long Hours) allotted
    )
    {
        elements.Write(
            new Element(subsystem.Code, system.Code, order, subsystem.Name, "branch")
            {
                Split = subsystem.Split,
                Description = subsystem.Description,
                Output = $"{subsystem.Name}, ready for operation",
                Acceptance = subsystem.DoneWhen,
                Allotted = allotted.Money,
                Hours = allotted.Hours == 0 ? null : allotted.Hours,
            }
        );
        var place = 0;
        foreach (var component in subsystem.Components)
        {
            WriteComponent(elements, component, ++place);
        }
        foreach (var (code, name, money) in subsystem.Open)
        {
            elements.Write(
                new Element(code, subsystem.Code, ++place, name, "branch")
                {
                    Description = $"{name}, to be broken down",
                    Allotted = money,
                }
            );
        }
    }

    private static void WriteComponent(Elements elements, Component component, int order)
    {
        var family = _families[component.Type.Family];
        var isDescribed = component.Weight % 5 != 3;
        elements.Write(
            new Element(
                component.Code,
                component.Account.Subsystem.Code,
                order,
                component.Name,
                "branch"
            )
            {
                Split = "phase",
                PartType = component.Type.Key,
                Person = component.Person,
                Unit = component.Account.Unit,
                Description = $"{component.Name} of {component.Account.Subsystem.Name}",
                Output = $"{component.Name}, handed over",
                Included = family[1],
                Excluded = family[2],
                Acceptance = family[3],
                Assumptions = isDescribed ? "" : DictionaryText.Assumption,
                Quantity = component.Type.Quantity,
                QuantityUnit = component.Type.QuantityUnit,
            }
        );
        for (var i = 0; i < component.Packages.Count; i++)
        {
            WritePackage(elements, component.Packages[i], i + 1);
        }
    }

    private static void WritePackage(Elements elements, Package package, int order)
    {
        var step = _steps[package.Step.Name];
        elements.Write(
            new Element(
                package.Code,
                package.Component.Code,
                order,
                package.Name,
                package.IsPlanning ? "planning_package" : "work_package"
            )
            {
                Activity = package.Activity,
                Person = package.Person,
                Output = step[1],
                Acceptance = step[2],
                Quantity = package.Quantity,
                QuantityUnit = package.Quantity is null ? "" : package.Component.Type.QuantityUnit,
                Hazards = package.Step.Hazards,
            }
        );
    }

    private static Dictionary<string, string[]> Read(string text, int count) =>
        PlantText
            .Lines(text)
            .Select(line => PlantText.Cells(line, count))
            .ToDictionary(cells => cells[0], StringComparer.Ordinal);
}

/// <summary>A row of the elements table; money and hours in hundredths.</summary>
internal sealed record Element(string Code, string Parent, int Order, string Name, string Kind)
{
    public string? Split { get; init; }
    public string? PartType { get; init; }
    public string? Activity { get; init; }
    public string? Person { get; init; }
    public string? Unit { get; init; }
    public string? Description { get; init; }
    public string? Output { get; init; }
    public string? Included { get; init; }
    public string? Excluded { get; init; }
    public string? Acceptance { get; init; }
    public string? Assumptions { get; init; }
    public int? Quantity { get; init; }
    public string? QuantityUnit { get; init; }
    public string? Hazards { get; init; }
    public long? Allotted { get; init; }
    public long? Hours { get; init; }
}

/// <summary>The elements table, written row by row.</summary>
internal sealed class Elements(TableFolder tables)
{
    private readonly TableWriter _table = tables.Open(
        "elements",
        "code",
        "parent",
        "order",
        "name",
        "kind",
        "split",
        "part_type",
        "activity",
        "person",
        "unit",
        "description",
        "output",
        "included",
        "excluded",
        "acceptance",
        "assumptions",
        "quantity",
        "quantity_unit",
        "hazards",
        "allotted",
        "allotted_hours"
    );

    public void Write(Element element) =>
        _table
            .Text(element.Code)
            .Text(element.Parent)
            .Whole(element.Order)
            .Text(element.Name)
            .Text(element.Kind)
            .Text(element.Split)
            .Text(element.PartType)
            .Text(element.Activity)
            .Text(element.Person)
            .Text(element.Unit)
            .Text(element.Description)
            .Text(element.Output)
            .Text(element.Included)
            .Text(element.Excluded)
            .Text(element.Acceptance)
            .Text(element.Assumptions)
            .WholeOrEmpty(element.Quantity)
            .Text(element.QuantityUnit)
            .Text(element.Hazards)
            .HundredthsOrEmpty(element.Allotted)
            .HundredthsOrEmpty(element.Hours)
            .EndRow();
}
