using Plenum.Core;
using Plenum.Core.Breakdown;

namespace Plenum.Workbench.Commands.Breakdown;

/// <summary>What commands on elements share.</summary>
internal static class Elements
{
    /// <summary>Code and name of an element.</summary>
    public static string Say(Project project, int id)
    {
        var row = project[ElementTable.Definition].RowOf(id);
        return row < 0 ? "a new element" : $"{project.Tree.Code(row)} {project.Tree.Name(row)}";
    }

    /// <summary>Several elements in words: the first, and how many more.</summary>
    public static string Say(Project project, IReadOnlyList<int> ids) =>
        ids.Count switch
        {
            0 => "nothing",
            1 => Say(project, ids[0]),
            _ => $"{Say(project, ids[0])} and {ids.Count - 1} more",
        };

    /// <exception cref="EditException">The element is no longer there.</exception>
    public static void Need(EditDraft draft, params ReadOnlySpan<int> ids)
    {
        foreach (var id in ids)
        {
            if (!draft.Has(ElementTable.Definition, id))
            {
                throw new EditException(
                    "This element is no longer there; somebody has removed it.",
                    "an element that is there"
                );
            }
        }
    }

    /// <exception cref="EditException">The sister is in another place by now.</exception>
    public static int IndexOf(IReadOnlyList<int> family, int id)
    {
        for (var at = 0; at < family.Count; at++)
        {
            if (family[at] == id)
            {
                return at;
            }
        }

        throw new EditException(
            "The element that it is to follow is no longer there.",
            "a sister that is there"
        );
    }
}
