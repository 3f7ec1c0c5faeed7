using Plenum.Core.Breakdown.Splits;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown;

/// <summary>Sisters of one type, and what is in them.</summary>
/// <param name="Rows">Their positions, in order.</param>
/// <param name="AreAlike">Their names differ by a number or letter alone, so that they should be equal in size too.</param>
/// <param name="Contents">What at least one of them has (a part by name, a package by activity), and which have it.</param>
public sealed record SisterGroup(
    IReadOnlyList<int> Rows,
    bool AreAlike,
    IReadOnlyList<(string What, IReadOnlySet<int> Having)> Contents
);

/// <summary>
/// Sisters of one type: children of one element whose names differ by a number or letter alone (train A, train B), or
/// which have the same part type. Groups are made when they are first asked for. Not to be asked by several threads at
/// once.
/// </summary>
public sealed class Sisters(ElementTree tree)
{
    private readonly Dictionary<int, Dictionary<int, SisterGroup>> byParent = [];

    /// <summary>The group of an element; null if it is alone.</summary>
    public SisterGroup? Of(int row)
    {
        var parent = tree.Parent[row];
        if (!byParent.TryGetValue(parent, out var groups))
        {
            byParent[parent] = groups = Groups(parent);
        }

        return groups.GetValueOrDefault(row);
    }

    private Dictionary<int, SisterGroup> Groups(int parent)
    {
        Dictionary<string, List<int>> alike = new(StringComparer.Ordinal);
        for (var row = parent + 1; row < tree.SubtreeEnd[parent]; row = tree.SubtreeEnd[row])
        {
            if (Type(row) is { } type)
            {
                if (!alike.TryGetValue(type, out var rows))
                {
                    alike[type] = rows = [];
                }

                rows.Add(row);
            }
        }

        Dictionary<int, SisterGroup> groups = [];
        foreach (var (type, rows) in alike)
        {
            if (rows.Count > 1)
            {
                var group = new SisterGroup(rows, type[0] != TypeMark, ContentsOf(rows));
                foreach (var row in rows)
                {
                    groups[row] = group;
                }
            }
        }

        return groups;
    }

    private const char TypeMark = '#';

    private string? Type(int row)
    {
        // packages of one activity are told apart by their parts, not by each other
        if (tree.Elements.Texts(ElementTable.Activity)[row] is not null)
        {
            return null;
        }

        var tokens = NameTokens.Of(tree.Name(row));
        if (tokens.Count > 1 && NameTokens.IsMark(tokens[^1]))
        {
            return string.Join(' ', tokens.Take(tokens.Count - 1));
        }

        var type = tree.Elements.Ints(ElementTable.PartType)[row];
        return Cell.IsGiven(type)
            ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{TypeMark}{type}")
            : null;
    }

    private List<(string What, IReadOnlySet<int> Having)> ContentsOf(List<int> rows)
    {
        Dictionary<string, (string What, HashSet<int> Having)> found = new(StringComparer.Ordinal);
        List<string> order = [];
        foreach (var row in rows)
        {
            for (var child = row + 1; child < tree.SubtreeEnd[row]; child = tree.SubtreeEnd[child])
            {
                var activity = tree.Elements.Texts(ElementTable.Activity)[child];
                var what = activity ?? tree.Name(child);
                var key =
                    activity
                    ?? string.Join(
                        ' ',
                        NameTokens.Of(what).Where(token => !NameTokens.IsMark(token))
                    );
                if (!found.TryGetValue(key, out var content))
                {
                    found[key] = content = (what, []);
                    order.Add(key);
                }

                content.Having.Add(row);
            }
        }

        return [.. order.Select(key => (found[key].What, (IReadOnlySet<int>)found[key].Having))];
    }
}
