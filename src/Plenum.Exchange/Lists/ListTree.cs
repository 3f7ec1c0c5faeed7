using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Exchange.Lists;

/// <summary>The tree that the codes of a list show: 1.1 is part of 1, in whatever order the rows stand.</summary>
internal static class ListTree
{
    /// <summary>Whether any row's code is a part of another's.</summary>
    public static bool IsShown(List<ListDraft> drafts) =>
        drafts.Exists(draft => draft.Code is not null && ListCodes.Parts(draft.Code) > 1);

    /// <summary>Joins the rows by their codes and puts them into the order of the codes.</summary>
    public static List<ListDraft> Join(string list, List<ListDraft> drafts, InputErrors errors)
    {
        List<ListDraft> coded = [];
        foreach (var draft in drafts)
        {
            if (draft.Code is not null)
            {
                coded.Add(draft);
                continue;
            }

            errors.Add(
                list,
                draft.Line,
                "code",
                null,
                "a code such as those of the other rows",
                $"\"{InputErrors.Shorten(draft.Name)}\" has no code, so its place is not known: give it one, or indent the list"
            );
        }

        if (coded.Count == 0)
        {
            return drafts;
        }

        var codes = coded.Select(draft => draft.Code!).ToHashSet(StringComparer.Ordinal);
        var beginnings = codes
            .Select(ListCodes.Above)
            .OfType<string>()
            .ToHashSet(StringComparer.Ordinal);
        var stems = coded.ConvertAll(draft => ListCodes.Stem(draft.Code!, codes, beginnings));
        Dictionary<string, int> rowOf = new(StringComparer.Ordinal);
        for (var row = 0; row < coded.Count; row++)
        {
            rowOf.TryAdd(stems[row], row);
        }

        var top = stems.Min(ListCodes.Parts);
        var parents = new int[coded.Count];
        for (var row = 0; row < coded.Count; row++)
        {
            parents[row] = -1;
            if (ListCodes.Parts(stems[row]) == top)
            {
                continue;
            }

            var above = ListCodes.Above(stems[row])!;
            if (rowOf.TryGetValue(above, out var parent))
            {
                parents[row] = parent;
                continue;
            }

            errors.Add(
                list,
                coded[row].Line,
                "code",
                coded[row].Code,
                $"a row with the code {above}",
                $"{coded[row].Code} is part of {above}, which is not in the list: add the row {above}, or correct the code"
            );
        }

        return InOrder(coded, parents);
    }

    private static List<ListDraft> InOrder(List<ListDraft> coded, int[] parents)
    {
        var order = DepthFirstOrder.Of(parents, [], [.. coded.Select(draft => draft.Code)]);
        var placeOf = new int[coded.Count];
        for (var place = 0; place < order.Length; place++)
        {
            placeOf[order[place]] = place;
        }

        List<ListDraft> ordered = [];
        foreach (var row in order)
        {
            var draft = coded[row];
            draft.Parent = parents[row] < 0 ? -1 : placeOf[parents[row]];
            draft.Depth = draft.Parent < 0 ? 0 : ordered[draft.Parent].Depth + 1;
            ordered.Add(draft);
        }

        return ordered;
    }
}
