namespace Plenum.Core.Foundation.Tables;

/// <summary>
/// Finds the id of the row that has a code. A table that a few rows were changed of shares the index of the table before
/// and keeps only what differs, so that one edit does not cost a pass over all codes.
/// </summary>
internal sealed class CodeIndex
{
    private const int MostChanged = 4_096;

    private readonly Dictionary<string, int> known;
    private readonly Dictionary<string, int> changed;

    private CodeIndex(Dictionary<string, int> known, Dictionary<string, int> changed)
    {
        this.known = known;
        this.changed = changed;
    }

    /// <summary>The index of all rows; of equal codes the first counts.</summary>
    public static CodeIndex Of(ReadOnlySpan<string?> codes, ReadOnlySpan<int> ids)
    {
        var first = new Dictionary<string, int>(codes.Length, StringComparer.Ordinal);
        for (var row = 0; row < codes.Length; row++)
        {
            first.TryAdd(codes[row]!, ids[row]);
        }

        return new CodeIndex(first, new Dictionary<string, int>(StringComparer.Ordinal));
    }

    /// <summary>The id of the row that has a code; 0 if there is none.</summary>
    public int Find(ReadOnlySpan<char> code)
    {
        if (
            changed.Count > 0
            && changed.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(code, out var id)
        )
        {
            return id;
        }

        return known.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(code, out var found)
            ? found
            : 0;
    }

    /// <summary>The index once some codes have gone and some have come; null if it is better made anew.</summary>
    public CodeIndex? With(
        IReadOnlyCollection<string> gone,
        IReadOnlyCollection<KeyValuePair<string, int>> come
    )
    {
        if (changed.Count + gone.Count + come.Count > MostChanged)
        {
            return null;
        }

        var next = new Dictionary<string, int>(changed, StringComparer.Ordinal);
        foreach (var code in gone)
        {
            next[code] = 0;
        }

        foreach (var (code, id) in come)
        {
            next[code] = id;
        }

        return new CodeIndex(known, next);
    }
}
