using Plenum.Core;
using Plenum.Core.Breakdown;

namespace Plenum.Workbench.Questions;

/// <summary>The kinds of parts of a project.</summary>
public static class PartTypes
{
    /// <summary>All part types by name, with the number of activities in their work sets and of parts that have them.</summary>
    public static IReadOnlyList<PartTypeRow> Of(Project project)
    {
        var types = project[PartTypeTable.Definition];
        var activities = Counted(project[WorkSetTable.Definition].Ints(WorkSetTable.PartType));
        var parts = Counted(project.Tree.Elements.Ints(ElementTable.PartType));
        return
        [
            .. types
                .Ids.Select(id => new PartTypeRow(
                    id,
                    types.Codes[types.RowOf(id)]!,
                    NameOf(project, id),
                    activities.GetValueOrDefault(id),
                    parts.GetValueOrDefault(id)
                ))
                .OrderBy(type => type.Name, StringComparer.OrdinalIgnoreCase),
        ];
    }

    /// <summary>The name of a part type; its code where it has none.</summary>
    public static string NameOf(Project project, int id)
    {
        var types = project[PartTypeTable.Definition];
        var row = types.RowOf(id);
        return types.Texts(PartTypeTable.Name)[row] is { Length: > 0 } name
            ? name
            : types.Codes[row]!;
    }

    private static Dictionary<int, int> Counted(ReadOnlySpan<int> ids)
    {
        Dictionary<int, int> counts = [];
        foreach (var id in ids)
        {
            counts[id] = counts.GetValueOrDefault(id) + 1;
        }

        return counts;
    }
}

/// <param name="Id">Its row.</param>
/// <param name="Code">Its code.</param>
/// <param name="Name">Its name.</param>
/// <param name="Activities">Activities in its work set.</param>
/// <param name="Parts">Elements that have the type.</param>
public sealed record PartTypeRow(int Id, string Code, string Name, int Activities, int Parts);
