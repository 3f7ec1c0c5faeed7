using System.Globalization;

namespace Plenum.Core.Scope.Pasting;

/// <summary>The lists of labels and dashes that are open below the last number, the innermost last.</summary>
internal sealed class LabelLists
{
    private const char Dashes = '-';

    private readonly List<OpenList> open = [];

    public void Clear() => open.Clear();

    /// <summary>A digit with a bracket goes on with a list of such, or begins one.</summary>
    public bool TakesDigits(int place) =>
        place == 1 || open.Exists(list => list.Sort == LabelSort.Digits && list.Place + 1 == place);

    /// <summary>
    /// The item that a label is part of: the list that it goes on with is found from the innermost outwards; a first label
    /// begins a list below the item before it. Null if it is neither.
    /// </summary>
    public string? ParentOfLabel(char style, string label, string before)
    {
        for (var at = open.Count - 1; at >= 0; at--)
        {
            var list = open[at];
            if (list.Style == style && LineMarks.Place(label, list.Sort) == list.Place + 1)
            {
                open.RemoveRange(at + 1, open.Count - at - 1);
                open[at] = list with { Place = list.Place + 1 };
                return list.Parent;
            }
        }

        LabelSort? sort = label switch
        {
            "1" => LabelSort.Digits,
            "a" or "A" => LabelSort.Letters,
            "i" or "I" => LabelSort.Roman,
            _ => null,
        };
        if (
            sort is { } first
            && !(open is [.., var last] && last.Style == style && last.Sort == first)
        )
        {
            open.Add(new OpenList(style, first, 0, before, 1));
            return before;
        }

        // the same label again, or one left out: it belongs to the list all the same
        var same = open.FindLastIndex(list =>
            list.Style == style && LineMarks.Place(label, list.Sort) > 0
        );
        if (same < 0)
        {
            return null;
        }

        open.RemoveRange(same + 1, open.Count - same - 1);
        open[same] = open[same] with { Place = LineMarks.Place(label, open[same].Sort) };
        return open[same].Parent;
    }

    /// <summary>The item that a dash at a depth of indentation is part of.</summary>
    public string ParentOfDash(int depth, string before)
    {
        var at = open.FindLastIndex(list => list.Style == Dashes && list.Depth <= depth);
        if (
            at >= 0
            && (open[at].Depth == depth || open.FindLastIndex(list => list.Style == Dashes) > at)
        )
        {
            open.RemoveRange(at + 1, open.Count - at - 1);
            return open[at].Parent;
        }

        // less deep than all dashes before: back to the first of them
        var first = open.FindIndex(list => list.Style == Dashes);
        if (at < 0 && first >= 0)
        {
            open.RemoveRange(first + 1, open.Count - first - 1);
            return open[first].Parent;
        }

        open.Add(new OpenList(Dashes, LabelSort.Digits, depth, before, 0));
        return before;
    }

    /// <summary>The number of the next dash of the list that was just found.</summary>
    public string NextDash(int depth, string parent)
    {
        var at = open.FindLastIndex(list => list.Style == Dashes && list.Parent == parent);
        open[at] = open[at] with { Place = open[at].Place + 1, Depth = depth };
        return parent + "-" + open[at].Place.ToString(CultureInfo.InvariantCulture);
    }

    private sealed record OpenList(char Style, LabelSort Sort, int Depth, string Parent, int Place);
}
