namespace Plenum.Core.Scope.Pasting;

/// <summary>Headings that say of what kind the items below them are.</summary>
internal static class KindWords
{
    private const int LongestHeading = 8;

    private static readonly (string Words, string Kind)[] Known =
    [
        ("not included", "exclusion"),
        ("not in scope", "exclusion"),
        ("out of scope", "exclusion"),
        ("exclusion", "exclusion"),
        ("exclusions", "exclusion"),
        ("excluded", "exclusion"),
        ("assumption", "assumption"),
        ("assumptions", "assumption"),
        ("assumed", "assumption"),
        ("constraint", "constraint"),
        ("constraints", "constraint"),
        ("acceptance", "acceptance"),
        ("deliverable", "deliverable"),
        ("deliverables", "deliverable"),
        ("requirement", "requirement"),
        ("requirements", "requirement"),
    ];

    /// <summary>
    /// The kind that a short line without a full stop names, by the first known words in it; null for any other line.
    /// </summary>
    public static string? Of(string text)
    {
        if (text.EndsWith('.') || text.EndsWith(';'))
        {
            return null;
        }

        var words = text.Split(
            [' ', '\t', '\u00A0', ',', ':', '(', ')', '/', '-'],
            StringSplitOptions.RemoveEmptyEntries
        );
        if (words.Length is 0 or > LongestHeading)
        {
            return null;
        }

        for (var at = 0; at < words.Length; at++)
        {
            foreach (var (known, kind) in Known)
            {
                var needed = known.Split(' ');
                if (
                    at + needed.Length <= words.Length
                    && needed
                        .Zip(words.Skip(at))
                        .All(pair =>
                            pair.First.Equals(pair.Second, StringComparison.OrdinalIgnoreCase)
                        )
                )
                {
                    return kind;
                }
            }
        }

        return null;
    }
}
