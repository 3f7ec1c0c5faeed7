namespace Plenum.Core.Breakdown.Splits;

/// <summary>
/// Reads the logic of a split from its parts. What most sisters share does not tell them apart, so it counts little as
/// long as something else does. Says nothing where too few of the names are known or they speak for several logics.
/// Source: own definition.
/// </summary>
public sealed class SplitReader(SplitWords words)
{
    // a word that only describes, one behind a divider, and one that most sisters share
    private const double BeforeWeight = 0.4;
    private const double AfterWeight = 0.2;
    private const double SharedWeight = 0.2;

    // a part of which less is known says nothing; it speaks clearly, and so loudly that it disturbs another logic
    private const double LeastKnown = 0.5;
    private const double Clear = 2;
    private const double Loud = 3;

    private const double SharedByPart = 0.75;
    private const double LeastKnownPart = 0.5;
    private const double LeastSupport = 0.6;
    private const double LeastLead = 0.15;
    private const double LeastClearPart = 0.4;

    private readonly NameReader names = new(words);
    private readonly Dictionary<string, WordFound[]> readBefore = new(StringComparer.Ordinal);

    /// <param name="parts">The children of one element, in order.</param>
    /// <param name="parent">The element's name; where a child's name begins with it, only the rest is read.</param>
    public SplitReading Read(IReadOnlyList<SplitPart> parts, string parent = "")
    {
        if (parts.Count < 2)
        {
            return SplitReading.Nothing;
        }

        var found = new WordFound[parts.Count][];
        for (var part = 0; part < found.Length; part++)
        {
            found[part] = WordsOf(Own(parts[part].Name, parent));
        }

        var shared = Shared(found);
        var scores = new Scores[parts.Count];
        for (var part = 0; part < scores.Length; part++)
        {
            scores[part] = ScoresOf(found[part], shared, parts[part].Hints);
        }

        return Judge(scores);
    }

    private static string Own(string name, string parent) =>
        parent.Length > 0
        && name.Length > parent.Length
        && name.StartsWith(parent, StringComparison.OrdinalIgnoreCase)
        && !char.IsLetterOrDigit(name[parent.Length])
        && name[parent.Length..].TrimStart(' ', ',', '-', ':') is { Length: > 0 } rest
            ? rest
            : name;

    private WordFound[] WordsOf(string name)
    {
        if (!readBefore.TryGetValue(name, out var found))
        {
            readBefore[name] = found = [.. names.Read(name)];
        }

        return found;
    }

    /// <summary>Phrases that most parts have.</summary>
    private static HashSet<string> Shared(WordFound[][] found)
    {
        Dictionary<string, int> counts = new(StringComparer.Ordinal);
        foreach (var part in found)
        {
            foreach (
                var phrase in part.Select(word => word.Phrase).Distinct(StringComparer.Ordinal)
            )
            {
                counts[phrase] = counts.GetValueOrDefault(phrase) + 1;
            }
        }

        return counts
            .Where(pair => pair.Value >= 2 && pair.Value >= SharedByPart * found.Length)
            .Select(pair => pair.Key)
            .ToHashSet(StringComparer.Ordinal);
    }

    private static Scores ScoresOf(
        WordFound[] found,
        HashSet<string> shared,
        IReadOnlyList<SplitHint>? hints
    )
    {
        var tellsApart = false;
        var headIsShared = false;
        foreach (var word in found)
        {
            tellsApart |= !shared.Contains(word.Phrase);
            headIsShared |=
                word.Place == WordPlace.Head && shared.Contains(word.Phrase) && !Decides(word);
        }

        var scores = new Scores();
        var sharedScores = new Scores();
        foreach (var word in found)
        {
            var weight = word.Place switch
            {
                WordPlace.Head => 1,
                // where all are sections, north and south say what each is
                WordPlace.Before => headIsShared ? 1 : BeforeWeight,
                _ => AfterWeight,
            };
            var to =
                tellsApart && shared.Contains(word.Phrase) && !Decides(word)
                    ? sharedScores
                    : scores;
            for (var logic = 0; logic < SplitLogic.Count; logic++)
            {
                to.Add(logic, weight * word.Strengths[logic], word.Phrase);
            }
        }

        // north section: both speak for a place; civil design: what is shared yields to what tells apart
        scores.Add(sharedScores, scores.Agrees(sharedScores) ? 1 : SharedWeight);

        foreach (var hint in hints ?? [])
        {
            scores.Add(hint.Logic, hint.Strength, hint.Told);
        }

        return scores;
    }

    /// <summary>
    /// Where all are contracts, or departments, that is the logic, whatever each is about; unlike sections, designs or
    /// works, of which each is told apart by another logic.
    /// </summary>
    private static bool Decides(WordFound word) =>
        word.Place == WordPlace.Head
        && Math.Max(word.Strengths[SplitLogic.Contract], word.Strengths[SplitLogic.Organisation])
            == word.Strengths.Max();

    private static SplitReading Judge(Scores[] scores)
    {
        var supports = new double[SplitLogic.Count];
        var weights = new double[SplitLogic.Count];
        var known = 0;
        List<SplitEvidence> evidence = [];
        for (var part = 0; part < scores.Length; part++)
        {
            if (scores[part].Most < LeastKnown)
            {
                continue;
            }

            known++;
            evidence.Add(scores[part].Strongest(part));
            for (var logic = 0; logic < SplitLogic.Count; logic++)
            {
                supports[logic] += scores[part].Fits(logic) ? 1 : 0;
                weights[logic] += scores[part].ShareOf(logic);
            }
        }

        if (known < 2 || known < LeastKnownPart * scores.Length)
        {
            return SplitReading.Nothing;
        }

        var best = 0;
        for (var logic = 0; logic < SplitLogic.Count; logic++)
        {
            supports[logic] /= known;
            weights[logic] /= known;
            best = supports[logic] + weights[logic] > supports[best] + weights[best] ? logic : best;
        }

        List<SplitEvidence> strangers = [];
        foreach (var one in evidence)
        {
            if (
                !SplitLogic.MayStandAmong(one.Logic, best)
                && !scores[one.Part].Fits(best)
                && scores[one.Part].Loudest >= Loud
            )
            {
                strangers.Add(one);
            }
        }

        var clearlyBest = evidence.Count(one =>
            scores[one.Part].Fits(best) && scores[one.Part].Most >= Clear
        );
        // a logic that only weak words speak for is no logic that a loud one could disturb
        var loudlyBest = evidence.Count(one =>
            scores[one.Part].Fits(best) && scores[one.Part].Of(best) >= Loud
        );
        if (strangers.Count > 0 && clearlyBest >= 2 && loudlyBest >= 1)
        {
            return new SplitReading(best, supports, evidence, strangers);
        }

        for (var logic = 0; logic < SplitLogic.Count; logic++)
        {
            if (
                logic != best
                && supports[best] + weights[best] - supports[logic] - weights[logic] < LeastLead
            )
            {
                return new SplitReading(SplitLogic.Unknown, supports, evidence, []);
            }
        }

        return supports[best] >= LeastSupport && clearlyBest >= Math.Max(2, LeastClearPart * known)
            ? new SplitReading(best, supports, evidence, [])
            : new SplitReading(SplitLogic.Unknown, supports, evidence, []);
    }

    /// <summary>How strongly one part speaks for each logic.</summary>
    private sealed class Scores
    {
        private const double FitsFrom = 0.4;

        private readonly double[] sums = new double[SplitLogic.Count];
        private readonly double[] greatest = new double[SplitLogic.Count];
        private readonly string[] told = new string[SplitLogic.Count];

        public double Most => sums.Max();

        public double Of(int logic) => sums[logic];

        /// <summary>The strongest single word or hint.</summary>
        public double Loudest => greatest.Max();

        /// <summary>What the other speaks for most fits here too.</summary>
        public bool Agrees(Scores other) => Fits(Array.IndexOf(other.sums, other.Most));

        public void Add(Scores other, double weight)
        {
            for (var logic = 0; logic < SplitLogic.Count; logic++)
            {
                if (other.sums[logic] > 0)
                {
                    sums[logic] += weight * other.sums[logic];
                    if (weight * other.greatest[logic] > greatest[logic])
                    {
                        greatest[logic] = weight * other.greatest[logic];
                        told[logic] = other.told[logic];
                    }
                }
            }
        }

        public void Add(int logic, double score, string word)
        {
            sums[logic] += score;
            if (score > greatest[logic])
            {
                greatest[logic] = score;
                told[logic] = word;
            }
        }

        /// <summary>The logic is among those that the part may well follow.</summary>
        public bool Fits(int logic) => sums[logic] > 0 && sums[logic] >= FitsFrom * Most;

        public double ShareOf(int logic) => sums[logic] / sums.Sum();

        public SplitEvidence Strongest(int part)
        {
            var logic = Array.IndexOf(sums, Most);
            return new SplitEvidence(part, logic, told[logic]);
        }
    }
}
