using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;
using Plenum.Core.Status;

namespace Plenum.Core.Accounts.Precision;

/// <summary>Two neighbours that could be one package without anything measurable being lost.</summary>
/// <param name="Row">Row of the cut by account.</param>
/// <param name="Period">The period in which the merged package would begin.</param>
/// <param name="First">The first package.</param>
/// <param name="Second">The one after it.</param>
/// <param name="Costs">By how much the account's precision would fall in the worst period, as a share of its budget.</param>
public readonly record struct MergeCandidate(
    int Row,
    int Period,
    int First,
    int Second,
    double Costs
);

/// <summary>
/// Looks for neighbours whose merging changes nothing measurable: sisters that follow each other, in one account, with
/// start and finish techniques or a judged per cent, that have not begun, together touch at most two periods, and as
/// one 50/50 package raise the size of the account's error in no period by more than a hundredth of its threshold, nor
/// beyond it. Source: own definition.
/// </summary>
public static class MergeCandidates
{
    private const int MostPeriods = 2;
    private const double NotMeasurable = 0.01;

    /// <param name="verdicts">The verdicts of one period after the other, from <paramref name="firstPeriod"/>.</param>
    public static IReadOnlyList<MergeCandidate> Of(
        TimePhased source,
        Cut accounts,
        Fraction threshold,
        int firstPeriod,
        IReadOnlyList<PrecisionVerdict[]> verdicts
    )
    {
        var baseline = source.Baseline;
        HashSet<int> bases = [.. baseline.Base.Where(package => package >= 0)];
        List<MergeCandidate> found = [];
        for (var package = 0; package + 1 < baseline.Count; package++)
        {
            if (
                MayMerge(package)
                && MayMerge(package + 1)
                && accounts.RowOfPackage[package] >= 0
                && accounts.RowOfPackage[package] == accounts.RowOfPackage[package + 1]
                && AreNeighbours(baseline.Tree, package)
                && Judge(package) is { } candidate
            )
            {
                found.Add(candidate);
            }
        }

        return Apart(found);

        bool MayMerge(int package) =>
            baseline.TotalBudget[package] > 0
            && (
                TechniqueCodec.IsStartFinish(baseline.Technique[package])
                || baseline.Technique[package] == TechniqueCodec.Percent
            )
            && baseline.IsScheduled(package)
            && !bases.Contains(package)
            && StartPeriod(source.Periods, baseline, package) >= firstPeriod
            && !Cell.IsGiven(source.Status.StartedAt(package, firstPeriod - 1));

        MergeCandidate? Judge(int package)
        {
            var start = Math.Min(baseline.Start[package], baseline.Start[package + 1]);
            var finish = Math.Max(baseline.Finish[package], baseline.Finish[package + 1]);
            var begin = source.Periods.FirstEndingFrom(DateOnly.FromDayNumber(start));
            var end = source.Periods.FirstEndingFrom(DateOnly.FromDayNumber(finish));
            if (end - begin + 1 > MostPeriods || end >= firstPeriod + verdicts.Count)
            {
                return null;
            }

            var row = accounts.RowOfPackage[package];
            var budget = (double)(
                baseline.TotalBudget[package] + baseline.TotalBudget[package + 1]
            );
            var costs = 0.0;
            for (var period = begin; period <= end; period++)
            {
                var verdict = verdicts[period - firstPeriod][row];
                var day = source.Periods.End(period).DayNumber;
                var merged = Merged(verdict.Error, package, day < finish ? budget : 0);
                var limit = (double)threshold.BasisPoints / Fraction.Whole;
                var rise = (merged.Error.Size - verdict.Error.Error.Size) / verdict.Budget;
                if (
                    rise > NotMeasurable * limit
                    || (rise > 0 && merged.Error.Size >= limit * verdict.Budget)
                )
                {
                    return null;
                }

                costs = Math.Max(costs, rise);
            }

            return new MergeCandidate(row, begin, package, package + 1, costs);
        }
    }

    private static RowError Merged(RowError error, int package, double openBudget)
    {
        var others = error
            .Parts.Where(part => part.Package != package && part.Package != package + 1)
            .Select(part => (part.Package, part.Error));
        var share = OpenShare.StartFinish(0.5);
        return RowError.Of(
            openBudget == 0
                ? others
                : others.Append(
                    (
                        package,
                        new StatusError(
                            share.Bias * openBudget,
                            share.Spread * openBudget,
                            share.Worst * openBudget
                        )
                    )
                )
        );
    }

    private static int StartPeriod(PeriodTimeline periods, PackageBaseline baseline, int package) =>
        periods.FirstEndingFrom(DateOnly.FromDayNumber(baseline.Start[package]));

    private static bool AreNeighbours(ElementTree tree, int package)
    {
        var first = tree.PackageRows[package];
        var second = tree.PackageRows[package + 1];
        return second == first + 1 && tree.Parent[first] == tree.Parent[second];
    }

    /// <summary>Each package in one pair at most; those that cost least come first.</summary>
    private static List<MergeCandidate> Apart(List<MergeCandidate> found)
    {
        HashSet<int> taken = [];
        return
        [
            .. found
                .OrderBy(pair => pair.Costs)
                .ThenBy(pair => pair.First)
                .Where(pair =>
                    !taken.Contains(pair.First)
                    && !taken.Contains(pair.Second)
                    && taken.Add(pair.First)
                    && taken.Add(pair.Second)
                )
                .ToList(),
        ];
    }
}
