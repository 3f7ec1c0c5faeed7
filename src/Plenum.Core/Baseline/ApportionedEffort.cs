using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Baseline;

/// <summary>
/// Apportioned effort: a package whose planned and earned share are those of its base package, value over budget.
/// Source: SAE EIA-748 guideline 10 and GAO-20-195G, apportioned effort follows related discrete work.
/// </summary>
public static class ApportionedEffort
{
    /// <summary>
    /// All packages, every base before those that follow it. Packages on a ring of bases come last, in no order that
    /// means anything; rings are refused on the way in.
    /// </summary>
    public static IEnumerable<int> BasesFirst(PackageBaseline baseline)
    {
        List<(int Depth, int Package)> followers = [];
        for (var package = 0; package < baseline.Count; package++)
        {
            if (baseline.Technique[package] == TechniqueCodec.Apportioned)
            {
                followers.Add((Depth(baseline, package), package));
            }
            else
            {
                yield return package;
            }
        }

        followers.Sort();
        foreach (var (_, package) in followers)
        {
            yield return package;
        }
    }

    /// <summary>The package that follows itself through its bases, if that is so; each base once, in order.</summary>
    public static IReadOnlyList<int>? Ring(PackageBaseline baseline, int package)
    {
        List<int> chain = [package];
        for (var at = Next(baseline, package); at >= 0; at = Next(baseline, at))
        {
            if (at == package)
            {
                return chain;
            }

            chain.Add(at);
            if (chain.Count > baseline.Count)
            {
                return null;
            }
        }

        return null;
    }

    /// <summary>Adds the changes of a follower, from those of its base, which are complete.</summary>
    public static void Follow(PackageBaseline baseline, int package, PeriodSeries.Builder series)
    {
        var basePackage = baseline.Base[package];
        var baseBudget = baseline.TotalBudget[basePackage];
        if (baseBudget == 0)
        {
            return;
        }

        SortedSet<int> changing = [];
        for (var costElement = 0; costElement < CostElements.Count; costElement++)
        {
            foreach (
                var period in series.PeriodsOf((basePackage * CostElements.Count) + costElement)
            )
            {
                changing.Add(period);
            }
        }

        var shares = changing.ToDictionary(
            period => period,
            period => new Share(ValueAt(series, basePackage, period), baseBudget)
        );
        for (var costElement = 0; costElement < CostElements.Count; costElement++)
        {
            var atom = (package * CostElements.Count) + costElement;
            var before = 0L;
            foreach (var period in changing)
            {
                var total = shares[period].Of(baseline.Budget[atom]);
                series.Add(atom, period, total - before);
                before = total;
            }
        }
    }

    private static long ValueAt(PeriodSeries.Builder series, int package, int period)
    {
        var total = 0L;
        for (var costElement = 0; costElement < CostElements.Count; costElement++)
        {
            total += series.At((package * CostElements.Count) + costElement, period);
        }

        return total;
    }

    private static int Depth(PackageBaseline baseline, int package)
    {
        var depth = 0;
        for (
            var at = Next(baseline, package);
            at >= 0 && depth <= baseline.Count;
            at = Next(baseline, at)
        )
        {
            depth++;
        }

        return depth;
    }

    private static int Next(PackageBaseline baseline, int package) =>
        baseline.Technique[package] == TechniqueCodec.Apportioned ? baseline.Base[package] : -1;
}
