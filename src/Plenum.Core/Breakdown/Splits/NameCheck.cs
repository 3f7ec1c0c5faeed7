namespace Plenum.Core.Breakdown.Splits;

/// <summary>What a name says beside a logic: nothing at all, no part of the work, an activity.</summary>
public sealed class NameCheck(SplitWords words)
{
    private const int Strong = 3;

    /// <summary>
    /// A word for anything at the beginning (strong), or nothing but such words: other equipment, general items.
    /// Null if the name says more.
    /// </summary>
    public string? Generic(string name)
    {
        var tokens = NameTokens.Of(name);
        if (
            First(SplitWordTable.Generic, tokens, out var strength) is { } word
            && strength >= Strong
        )
        {
            return word;
        }

        var telling = tokens.Where(token => words.IsIgnored(token) || !IsBuilding(token)).ToList();
        return
            telling.Count > 0
            && telling.TrueForAll(token => words.StrengthOf(SplitWordTable.Generic, token) > 0)
            ? string.Join(' ', telling)
            : null;
    }

    /// <summary>The cost class, meeting, month or the like that a name ends with or consists of; else null.</summary>
    public string? NotAPart(string name)
    {
        var tokens = NameTokens
            .Of(name)
            .TakeWhile(token => token != NameTokens.Break && !words.IsDivider(token));
        var telling = tokens.Where(token => !NameTokens.IsMark(token) || IsRole(token)).ToList();
        for (var length = Math.Min(words.LongestPhrase, telling.Count); length > 0; length--)
        {
            var phrase = string.Join(' ', telling.Skip(telling.Count - length));
            if (words.StrengthOf(SplitWordTable.NotAPart, phrase) > 0)
            {
                return phrase;
            }
        }

        return null;

        bool IsRole(string token) => words.StrengthOf(SplitWordTable.NotAPart, token) > 0;
    }

    /// <summary>
    /// The verb with which a name begins, where more follows; a verb that is also a noun (weaker than strong) only
    /// where the last word has an ending: programme controllers. Null otherwise.
    /// </summary>
    public string? Verb(string name)
    {
        var tokens = NameTokens.Of(name);
        if (tokens.Count < 2 || tokens[1] == NameTokens.Break || words.IsDivider(tokens[1]))
        {
            return null;
        }

        var strength = words.StrengthOf(SplitWordTable.Verb, tokens[0]);
        return strength >= Strong || (strength > 0 && words.HasEnding(tokens[^1]))
            ? tokens[0]
            : null;
    }

    /// <summary>True if a word or phrase of the role stands anywhere in the name.</summary>
    public bool SpeaksOf(int role, string name)
    {
        var tokens = NameTokens.Of(name);
        for (var from = 0; from < tokens.Count; from++)
        {
            for (
                var length = Math.Min(words.LongestPhrase, tokens.Count - from);
                length > 0;
                length--
            )
            {
                if (words.StrengthOf(role, string.Join(' ', tokens.GetRange(from, length))) > 0)
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>True if a name has no telling word beside those of the role.</summary>
    public bool IsNothingBut(int role, string name)
    {
        var telling = NameTokens.Of(name).Where(token => !IsBuilding(token)).ToList();
        return telling.Count > 0
            && (
                telling.TrueForAll(token => words.StrengthOf(role, token) > 0)
                || words.StrengthOf(role, string.Join(' ', telling)) > 0
            );
    }

    private string? First(int role, List<string> tokens, out int strength)
    {
        var telling = tokens.IndexOf(NameTokens.Break) is var end and >= 0 ? end : tokens.Count;
        for (var length = Math.Min(words.LongestPhrase, telling); length > 0; length--)
        {
            var phrase = string.Join(' ', tokens.Take(length));
            strength = words.StrengthOf(role, phrase);
            if (strength > 0)
            {
                return phrase;
            }
        }

        strength = 0;
        return null;
    }

    private bool IsBuilding(string token) =>
        token == NameTokens.Break
        || NameTokens.IsMark(token)
        || words.IsIgnored(token)
        || words.IsDivider(token)
        || words.IsJoiner(token);
}
