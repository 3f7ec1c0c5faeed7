using Plenum.Core.Foundation.Tables;
using Plenum.Core.Scope;

namespace Plenum.Core.Breakdown;

/// <summary>How far elements answer a scope item.</summary>
public enum Coverage
{
    /// <summary>No element answers it, nor do elements answer all of its sub-items.</summary>
    None,

    /// <summary>Of its wording one phrase only is answered, or one that has to be answered is not.</summary>
    Partly,

    Covered,
}

/// <summary>
/// Which scope items the breakdown answers, and which elements nobody asked for. An item is covered when an element
/// answers it as a whole; when elements answer at least two of its phrases and every phrase that has to be answered; or
/// when all of its sub-items are covered. An element is asked for when it, one above it or one below it answers an item.
/// Items that were withdrawn ask for nothing.
/// </summary>
public sealed class ScopeCoverage
{
    private readonly Coverage[] items;
    private readonly string[][] unanswered;
    private readonly bool[] asked;

    /// <param name="tree">The breakdown.</param>
    /// <param name="scope">The scope items.</param>
    /// <param name="trace">Which elements answer which items.</param>
    /// <param name="phrases">Phrases that have to be answered on their own.</param>
    public ScopeCoverage(ElementTree tree, Table scope, Table trace, Table phrases)
    {
        Scope = scope;
        HasTraces = trace.Count > 0;
        items = new Coverage[scope.Count];
        unanswered = new string[scope.Count][];
        Answers = RowGroups.By(RowsOf(trace.Ints(TraceTable.Item), scope), scope.Count);
        var wanted = RowGroups.By(RowsOf(phrases.Ints(ScopePhraseTable.Item), scope), scope.Count);
        var elementRows = RowsOf(trace.Ints(TraceTable.Element), tree.Elements);
        for (var item = 0; item < items.Length; item++)
        {
            (items[item], unanswered[item]) = Of(
                Answers[item],
                trace.Texts(TraceTable.Phrase),
                wanted[item],
                phrases.Texts(ScopePhraseTable.Phrase),
                scope.Texts(ScopeTable.Text)[item]
            );
        }

        CoverByParts();
        asked = new bool[tree.Count];
        for (var item = 0; item < items.Length; item++)
        {
            if (IsWithdrawn(item))
            {
                foreach (var row in Answers[item])
                {
                    elementRows[row] = -1;
                }
            }
        }

        Ask(tree, elementRows);
    }

    public Table Scope { get; }

    /// <summary>False where nothing is traced at all: then nothing can be said.</summary>
    public bool HasTraces { get; }

    /// <summary>Rows of the trace table by scope item.</summary>
    public RowGroups Answers { get; }

    public Coverage OfItem(int row) => items[row];

    /// <summary>The phrases that have to be answered and are not; none where an element answers the whole.</summary>
    public IReadOnlyList<string> Unanswered(int row) => unanswered[row];

    /// <summary>The item does not hold any more.</summary>
    public bool IsWithdrawn(int row) => Cell.IsGiven(Scope.Ints(ScopeTable.Withdrawn)[row]);

    public bool IsAsked(int element) => asked[element];

    private static (Coverage Coverage, string[] Unanswered) Of(
        ReadOnlySpan<int> traces,
        ReadOnlySpan<string?> tracedPhrases,
        ReadOnlySpan<int> wanted,
        ReadOnlySpan<string?> wantedPhrases,
        string? text
    )
    {
        HashSet<string> different = new(StringComparer.OrdinalIgnoreCase);
        foreach (var row in traces)
        {
            if (
                tracedPhrases[row] is not { } phrase
                || phrase.Equals(text, StringComparison.OrdinalIgnoreCase)
            )
            {
                return (Coverage.Covered, []);
            }

            different.Add(phrase);
        }

        List<string> open = [];
        foreach (var row in wanted)
        {
            if (!different.Contains(wantedPhrases[row]!))
            {
                open.Add(wantedPhrases[row]!);
            }
        }

        var coverage = different.Count switch
        {
            0 => Coverage.None,
            1 => Coverage.Partly,
            _ => open.Count > 0 ? Coverage.Partly : Coverage.Covered,
        };
        return (coverage, [.. open]);
    }

    /// <summary>Items without an answer of their own are as covered as their sub-items are.</summary>
    private void CoverByParts()
    {
        var parents = RowsOf(Scope.Ints(ScopeTable.Parent), Scope);
        var parts = RowGroups.By(parents, Scope.Count);
        var settled = new bool[items.Length];
        for (var item = 0; item < items.Length; item++)
        {
            Settle(item, parts, settled);
        }
    }

    private void Settle(int item, RowGroups parts, bool[] settled)
    {
        if (settled[item])
        {
            return;
        }

        settled[item] = true;
        var least = Coverage.Covered;
        var held = 0;
        foreach (var part in parts[item])
        {
            Settle(part, parts, settled);
            if (!IsWithdrawn(part))
            {
                held++;
                least = items[part] < least ? items[part] : least;
            }
        }

        if (items[item] == Coverage.None && held > 0)
        {
            items[item] = least;
        }
    }

    private void Ask(ElementTree tree, int[] answering)
    {
        var below = new bool[tree.Count];
        foreach (var element in answering)
        {
            for (var row = element; row >= 0 && !below[row]; row = tree.Parent[row])
            {
                below[row] = true;
            }
        }

        foreach (var element in answering)
        {
            if (element >= 0)
            {
                asked[element] = true;
            }
        }

        for (var row = 0; row < asked.Length; row++)
        {
            asked[row] |= tree.Parent[row] >= 0 && asked[tree.Parent[row]];
        }

        for (var row = 0; row < asked.Length; row++)
        {
            asked[row] |= below[row];
        }
    }

    private static int[] RowsOf(ReadOnlySpan<int> ids, Table of)
    {
        var rows = new int[ids.Length];
        for (var i = 0; i < rows.Length; i++)
        {
            rows[i] = Cell.IsGiven(ids[i]) ? of.RowOf(ids[i]) : -1;
        }

        return rows;
    }
}
