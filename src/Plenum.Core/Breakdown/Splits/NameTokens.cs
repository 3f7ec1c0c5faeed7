namespace Plenum.Core.Breakdown.Splits;

/// <summary>A name as words in lower case. Hyphens part words; commas, colons and brackets break the name.</summary>
internal static class NameTokens
{
    public const string Break = ",";

    // stand for signs, and are joiners in every language
    public const string Ampersand = "and";
    public const string Slash = "or";

    public static List<string> Of(string name)
    {
        List<string> tokens = [];
        var text = name.ToLowerInvariant();
        var at = 0;
        while (at < text.Length)
        {
            var begin = at;
            while (at < text.Length && (char.IsLetterOrDigit(text[at]) || text[at] is '\'' or '’'))
            {
                at++;
            }

            if (at > begin)
            {
                tokens.Add(WithoutOwner(text[begin..at]));
                continue;
            }

            if (text[at] == '&' || text[at] == '/')
            {
                tokens.Add(text[at] == '&' ? Ampersand : Slash);
            }
            else if (text[at] is ',' or ';' or ':' or '(')
            {
                tokens.Add(Break);
            }

            at++;
        }

        return tokens;
    }

    /// <summary>One or two letters, or something with a digit: it numbers.</summary>
    public static bool IsMark(string token) =>
        token.Length <= 2 || token.AsSpan().ContainsAnyInRange('0', '9');

    /// <summary>The owner's becomes owner.</summary>
    private static string WithoutOwner(string token)
    {
        var apostrophe = token.AsSpan().IndexOfAny('\'', '’');
        return apostrophe > 0
            ? token[..apostrophe]
            : token.Replace("'", "", StringComparison.Ordinal);
    }
}
