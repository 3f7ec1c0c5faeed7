using Plenum.Core;
using Plenum.Core.Breakdown;

namespace Plenum.Workbench.Questions;

/// <summary>A part that an element could have, because its sisters have it or its part type says so.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Source">Id of the element that it would be taken over from, with all below it; 0 for a bare name.</param>
/// <param name="Because">Why, in words.</param>
/// <param name="Packages">How many packages the source has.</param>
public sealed record PartSuggestion(string Name, int Source, string Because, int Packages);

/// <summary>What could stand below an element: parts that its sisters have and it has not, and names of part types.</summary>
/// <param name="Parent">Id of the element.</param>
public sealed record SuggestionsQuestion(int Parent)
{
    private const int MostSisters = 200;
    private const int MostSuggestions = 60;

    /// <summary>Parts that most sisters have come first. Cost: the children of the sisters.</summary>
    public IReadOnlyList<PartSuggestion> Ask(Project project)
    {
        var tree = project.Tree;
        var row = tree.Elements.RowOf(Parent);
        if (row < 0)
        {
            return [];
        }

        HashSet<string> own = new(StringComparer.OrdinalIgnoreCase);
        foreach (var child in Children(tree, row))
        {
            own.Add(tree.Name(child));
        }

        Dictionary<string, List<int>> having = new(StringComparer.OrdinalIgnoreCase);
        foreach (var sister in Sisters(tree, row).Take(MostSisters))
        {
            foreach (var child in Children(tree, sister))
            {
                if (own.Contains(tree.Name(child)))
                {
                    continue;
                }

                if (!having.TryGetValue(tree.Name(child), out var places))
                {
                    having[tree.Name(child)] = places = [];
                }

                places.Add(child);
            }
        }

        return
        [
            .. having
                .OrderByDescending(part => part.Value.Count)
                .Take(MostSuggestions)
                .Select(part => OfSisters(tree, part.Value)),
            .. OfTypes(project, own, having),
        ];
    }

    private static PartSuggestion OfSisters(ElementTree tree, List<int> places)
    {
        // the one with most below it is the best to take over
        var source = places.MaxBy(place => tree.SubtreeEnd[place] - place);
        var packages = 0;
        for (var row = source; row < tree.SubtreeEnd[source]; row++)
        {
            packages += tree.PackageOfRow[row] >= 0 ? 1 : 0;
        }

        string[] names = [.. places.Take(5).Select(place => tree.Name(tree.Parent[place]))];
        var others = places.Count - names.Length;
        var because =
            "as in " + string.Join(", ", names) + (others > 0 ? $" and {others} more" : "");
        return new PartSuggestion(tree.Name(source), tree.Elements.Ids[source], because, packages);
    }

    private static IEnumerable<PartSuggestion> OfTypes(
        Project project,
        HashSet<string> own,
        Dictionary<string, List<int>> having
    )
    {
        var types = project[PartTypeTable.Definition];
        for (var row = 0; row < types.Count; row++)
        {
            if (
                types.Texts(PartTypeTable.Name)[row] is { Length: > 0 } name
                && !own.Contains(name)
                && !having.ContainsKey(name)
            )
            {
                yield return new PartSuggestion(name, 0, "a part type", 0);
            }
        }
    }

    private static IEnumerable<int> Sisters(ElementTree tree, int row) =>
        tree.Parent[row] is var parent and >= 0
            ? Children(tree, parent).Where(sister => sister != row)
            : [];

    private static IEnumerable<int> Children(ElementTree tree, int row)
    {
        for (var child = row + 1; child < tree.SubtreeEnd[row]; child = tree.SubtreeEnd[child])
        {
            yield return child;
        }
    }
}
