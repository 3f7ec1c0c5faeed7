namespace Plenum.Core.Foundation;

/// <summary>Finds the known word that a mistyped one most likely means.</summary>
public static class NearestWord
{
    /// <summary>
    /// The known word with the fewest letters to insert, delete or replace (Levenshtein 1966), ignoring case; null
    /// when even that one differs in more than half of its letters.
    /// </summary>
    public static string? Of(ReadOnlySpan<char> word, IEnumerable<string> known)
    {
        string? nearest = null;
        var fewest = int.MaxValue;
        foreach (var candidate in known)
        {
            var distance = Distance(word, candidate);
            if (distance < fewest)
            {
                fewest = distance;
                nearest = candidate;
            }
        }

        return nearest is not null && fewest * 2 <= nearest.Length ? nearest : null;
    }

    private static int Distance(ReadOnlySpan<char> left, ReadOnlySpan<char> right)
    {
        const int LongestCompared = 64;
        if (left.Length > LongestCompared || right.Length > LongestCompared)
        {
            return int.MaxValue / 2;
        }

        Span<int> row = stackalloc int[right.Length + 1];
        for (var j = 0; j <= right.Length; j++)
        {
            row[j] = j;
        }

        for (var i = 1; i <= left.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= right.Length; j++)
            {
                var same =
                    char.ToLowerInvariant(left[i - 1]) == char.ToLowerInvariant(right[j - 1]);
                var next = Math.Min(Math.Min(row[j], row[j - 1]) + 1, diagonal + (same ? 0 : 1));
                diagonal = row[j];
                row[j] = next;
            }
        }

        return row[right.Length];
    }
}
