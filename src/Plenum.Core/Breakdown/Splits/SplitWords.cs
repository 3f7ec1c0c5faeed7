using System.Collections.Concurrent;
using System.Globalization;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown.Splits;

/// <summary>
/// The words from which the logic of a split is read: each stands for one or several logics, more or less strongly,
/// or says how a name is built. A list belongs to a language; a project adds its own words or takes some out.
/// </summary>
public sealed class SplitWords
{
    /// <summary>The languages for which a list comes with the program.</summary>
    public static readonly IReadOnlyList<string> Languages = ["en"];

    private const char StemMark = '*';

    private static readonly ConcurrentDictionary<string, SplitWords> AsShipped = new(
        StringComparer.Ordinal
    );

    private readonly Dictionary<string, int[]> strengths;
    private readonly Dictionary<string, int[]> stems;
    private readonly HashSet<string> ignored;
    private readonly HashSet<string> dividers;
    private readonly HashSet<string> joiners;
    private readonly (string Ending, string Instead)[] endings;

    // words of the roles between the logics and what only builds names
    private readonly Dictionary<string, int>[] said;

    private SplitWords(IReadOnlyDictionary<(string Word, int Role), int> entries)
    {
        strengths = new(StringComparer.Ordinal);
        stems = new(StringComparer.Ordinal);
        ignored = WordsOf(SplitWordTable.Ignored);
        dividers = WordsOf(SplitWordTable.Divider);
        joiners = WordsOf(SplitWordTable.Joiner);
        endings =
        [
            .. WordsOf(SplitWordTable.Ending)
                .Select(text => text.Split('='))
                .Select(pair => (pair[0], pair.Length > 1 ? pair[1] : ""))
                .OrderByDescending(pair => pair.Item1.Length)
                .ThenBy(pair => pair.Item1, StringComparer.Ordinal),
        ];
        said = new Dictionary<string, int>[SplitWordTable.Ignored - SplitLogic.Count];
        for (var role = 0; role < said.Length; role++)
        {
            said[role] = entries
                .Where(entry => entry.Key.Role == SplitLogic.Count + role && entry.Value > 0)
                .ToDictionary(
                    entry => entry.Key.Word,
                    entry => entry.Value,
                    StringComparer.Ordinal
                );
        }

        foreach (var ((word, role), strength) in entries)
        {
            if (role >= SplitWordTable.Ignored || strength == 0)
            {
                continue;
            }

            LongestPhrase = Math.Max(LongestPhrase, word.AsSpan().Count(' ') + 1);
            if (role >= SplitLogic.Count)
            {
                continue;
            }

            var isStem = word.EndsWith(StemMark);
            var known = isStem ? stems : strengths;
            var key = isStem ? word[..^1] : word;
            if (!known.TryGetValue(key, out var byLogic))
            {
                known[key] = byLogic = new int[SplitLogic.Count];
            }

            byLogic[role] = strength;
        }

        HashSet<string> WordsOf(int role) =>
            entries
                .Where(entry => entry.Key.Role == role && entry.Value > 0)
                .Select(entry => entry.Key.Word)
                .ToHashSet(StringComparer.Ordinal);
    }

    /// <summary>A list without words: every split is unknown.</summary>
    public static SplitWords None { get; } = new(new Dictionary<(string, int), int>());

    /// <summary>How many words and phrases stand for each logic.</summary>
    public IReadOnlyList<int> CountByLogic() =>
        [
            .. Enumerable
                .Range(0, SplitLogic.Count)
                .Select(logic =>
                    strengths.Values.Count(word => word[logic] > 0)
                    + stems.Values.Count(word => word[logic] > 0)
                ),
        ];

    /// <summary>Words in the longest phrase.</summary>
    internal int LongestPhrase { get; }

    /// <summary>The list that comes with the program for a language; null if there is none.</summary>
    public static SplitWords? Of(string language) =>
        EntriesOf(language) is { } entries ? new SplitWords(entries) : null;

    /// <summary>Reads a list from CSV text with the columns word, role and strength, without quotation marks.</summary>
    /// <exception cref="FormatException">A row has no such role or strength.</exception>
    public static SplitWords Parse(string csv) => new(Entries(csv));

    /// <summary>A language's list with the words of a project added, changed or (strength 0) taken out.</summary>
    public static SplitWords Of(string? language, Table projectWords)
    {
        if (projectWords.Count == 0)
        {
            return language is null ? None : AsShipped.GetOrAdd(language, of => Of(of) ?? None);
        }

        var entries = language is null ? [] : EntriesOf(language) ?? [];
        var words = projectWords.Texts(SplitWordTable.Word);
        var roles = projectWords.Ints(SplitWordTable.Role);
        var given = projectWords.Ints(SplitWordTable.Strength);
        for (var row = 0; row < projectWords.Count; row++)
        {
            entries[(Normal(words[row]!), roles[row])] = Cell.IsGiven(given[row])
                ? given[row]
                : SplitWordTable.UsualStrength;
        }

        return new SplitWords(entries);
    }

    internal bool IsIgnored(string token) => ignored.Contains(token);

    internal bool IsDivider(string token) => dividers.Contains(token);

    internal bool IsJoiner(string token) => joiners.Contains(token);

    /// <summary>
    /// How strongly a phrase stands for each logic; null if it is not known. Its last word may have an ending or go on
    /// after a stem. <paramref name="known"/> receives the phrase as it stands in the list.
    /// </summary>
    internal int[]? StrengthsOf(string phrase, out string known)
    {
        known = phrase;
        if (strengths.TryGetValue(phrase, out var found))
        {
            return found;
        }

        foreach (var bare in WithoutEnding(phrase))
        {
            known = bare;
            if (strengths.TryGetValue(known, out found))
            {
                return found;
            }
        }

        var lastWord = phrase.LastIndexOf(' ') + 1;
        for (var length = phrase.Length; length > lastWord + 1; length--)
        {
            known = phrase[..length];
            if (stems.TryGetValue(known, out found))
            {
                return found;
            }
        }

        return null;
    }

    /// <summary>
    /// How strongly a phrase plays one of the roles that are no logic; 0 where it does not. An ending is taken off; a
    /// stem is tried too.
    /// </summary>
    internal int StrengthOf(int role, string phrase)
    {
        var words = said[role - SplitLogic.Count];
        if (words.TryGetValue(phrase, out var strength))
        {
            return strength;
        }

        foreach (var bare in WithoutEnding(phrase))
        {
            if (words.TryGetValue(bare, out strength))
            {
                return strength;
            }
        }

        var lastWord = phrase.LastIndexOf(' ') + 1;
        for (var length = phrase.Length; length > lastWord + 2; length--)
        {
            if (words.TryGetValue(phrase[..length] + StemMark, out strength))
            {
                return strength;
            }
        }

        return 0;
    }

    /// <summary>True if a word has one of the endings and more letters before it.</summary>
    internal bool HasEnding(string word) => WithoutEnding(word).Any();

    private IEnumerable<string> WithoutEnding(string phrase) =>
        endings
            .Where(pair =>
                phrase.Length > pair.Ending.Length + 1
                && phrase.EndsWith(pair.Ending, StringComparison.Ordinal)
            )
            .Select(pair =>
                string.Concat(phrase.AsSpan(0, phrase.Length - pair.Ending.Length), pair.Instead)
            );

    private static Dictionary<(string Word, int Role), int>? EntriesOf(string language)
    {
        using var stream = typeof(SplitWords).Assembly.GetManifestResourceStream(
            $"words.{language}.csv"
        );
        if (stream is null)
        {
            return null;
        }

        using var reader = new StreamReader(stream);
        return Entries(reader.ReadToEnd());
    }

    private static Dictionary<(string Word, int Role), int> Entries(string csv)
    {
        Dictionary<(string, int), int> entries = [];
        foreach (var line in csv.Split('\n').Skip(1).Select(line => line.Trim()))
        {
            if (line.Length == 0)
            {
                continue;
            }

            if (
                line.Split(',') is not [var word, var name, var strength]
                || !SplitWordTable.Roles.TryParse(name, out var role)
                || !int.TryParse(
                    strength,
                    NumberStyles.None,
                    CultureInfo.InvariantCulture,
                    out var number
                )
            )
            {
                throw new FormatException($"\"{line}\" is no word, role and strength.");
            }

            entries[(Normal(word), role)] = number;
        }

        return entries;
    }

    /// <summary>As names are read: lower case, one space between words, no hyphens.</summary>
    private static string Normal(string word) =>
        string.Join(
            ' ',
            word.ToLowerInvariant().Split([' ', '-'], StringSplitOptions.RemoveEmptyEntries)
        );
}
