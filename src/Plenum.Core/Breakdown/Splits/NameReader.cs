namespace Plenum.Core.Breakdown.Splits;

/// <summary>A known word or phrase in a name.</summary>
/// <param name="Phrase">As it stands in the word list.</param>
/// <param name="Strengths">By logic; not to be changed.</param>
/// <param name="Place">Where it stands in the name.</param>
internal readonly record struct WordFound(string Phrase, int[] Strengths, WordPlace Place);

/// <summary>Where a word stands: it counts most where it says what the thing is.</summary>
internal enum WordPlace
{
    /// <summary>The last word of a name, or of one of the names that are joined: what it is.</summary>
    Head,

    /// <summary>Before the head: of what kind.</summary>
    Before,

    /// <summary>After a divider or a comma.</summary>
    After,
}

/// <summary>Finds the known words of a name.</summary>
internal sealed class NameReader(SplitWords words)
{
    private List<string> tokens = [];

    public List<WordFound> Read(string name)
    {
        tokens = NameTokens.Of(name);
        List<WordFound> found = [];
        var beyond = false;
        var begin = 0;
        for (var at = 0; at <= tokens.Count; at++)
        {
            var ends =
                at == tokens.Count || tokens[at] == NameTokens.Break || words.IsDivider(tokens[at]);
            if (!ends && !words.IsJoiner(tokens[at]))
            {
                continue;
            }

            // a joiner inside a known phrase, such as health and safety, joins nothing
            if (!ends && IsInsidePhrase(begin, at))
            {
                continue;
            }

            ReadStretch(begin, at, beyond, found);
            beyond |= ends && found.Count > 0;
            begin = at + 1;
        }

        return found;
    }

    private bool IsInsidePhrase(int begin, int joiner)
    {
        for (var from = begin; from < joiner; from++)
        {
            var most = Math.Min(words.LongestPhrase, tokens.Count - from);
            for (var length = most; length > joiner - from; length--)
            {
                if (words.StrengthsOf(Phrase(from, length), out _) is not null)
                {
                    return true;
                }
            }
        }

        return false;
    }

    private void ReadStretch(int begin, int end, bool beyond, List<WordFound> found)
    {
        var first = found.Count;
        var openEnd = false;
        for (var at = begin; at < end; )
        {
            var length = Longest(at, end, out var phrase, out var strengths);
            if (length > 0)
            {
                found.Add(
                    new WordFound(phrase, strengths!, beyond ? WordPlace.After : WordPlace.Before)
                );
                openEnd = false;
                at += length;
            }
            else
            {
                // an unknown word may be what the thing is; numbers, letters and ignored words are not
                openEnd |= !NameTokens.IsMark(tokens[at]) && !words.IsIgnored(tokens[at]);
                at++;
            }
        }

        if (!beyond && !openEnd && found.Count > first)
        {
            found[^1] = found[^1] with { Place = WordPlace.Head };
        }
    }

    private int Longest(int at, int end, out string phrase, out int[]? strengths)
    {
        for (var length = Math.Min(words.LongestPhrase, end - at); length > 0; length--)
        {
            strengths = words.StrengthsOf(Phrase(at, length), out phrase);
            if (strengths is not null)
            {
                return length;
            }
        }

        phrase = "";
        strengths = null;
        return 0;
    }

    private string Phrase(int from, int length) =>
        length == 1 ? tokens[from] : string.Join(' ', tokens.GetRange(from, length));
}
