using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo.Tables;

/// <summary>part_types, work_sets, not_needed.</summary>
internal static class WorkSetTables
{
    public static void Write(DemoPlan plan, TableFolder tables)
    {
        var types = tables.Open("part_types", "part_type", "name");
        var sets = tables.Open(
            "work_sets",
            "part_type",
            "activity",
            "facet",
            "order",
            "share",
            "duration",
            "technique",
            "after",
            "hazards"
        );
        foreach (var type in WorkSets.PartTypes)
        {
            types.Text(type.Key).Text(type.Name).EndRow();
            for (var i = 0; i < type.Steps.Count; i++)
            {
                var step = type.Steps[i];
                sets.Text(type.Key)
                    .Text(step.Name)
                    .Text(step.Facet)
                    .Whole(i + 1)
                    .Hundredths(step.Share * 10)
                    .Whole(step.Days)
                    .Text(step.Technique)
                    .Text(string.Join(';', step.After))
                    .Text(step.Hazards)
                    .EndRow();
            }
        }
        var notNeeded = tables.Open("not_needed", "element", "activity", "reason");
        foreach (var component in plan.Components)
        {
            foreach (var step in component.Type.Steps)
            {
                if (component.Type.NotNeeded.TryGetValue(step.Name, out var reason))
                {
                    notNeeded.Text(component.Code).Text(step.Name).Text(reason).EndRow();
                }
            }
        }
    }
}
