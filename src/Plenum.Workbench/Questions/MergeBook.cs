using System.Runtime.CompilerServices;
using Plenum.Core;
using Plenum.Core.Accounts.Precision;

namespace Plenum.Workbench.Questions;

/// <summary>Keeps for each value of a project which neighbours could be merged: it is asked for at every element.</summary>
internal static class MergeBook
{
    private static readonly ConditionalWeakTable<
        Project,
        Lazy<IReadOnlyList<MergeCandidate>>
    > Pages = [];

    public static IReadOnlyList<MergeCandidate> Of(Project project) =>
        Pages
            .GetValue(project, of => new Lazy<IReadOnlyList<MergeCandidate>>(() => Find(of)))
            .Value;

    private static IReadOnlyList<MergeCandidate> Find(Project project)
    {
        var accounts = project.CutsUnder(-1).ByAccount();
        var threshold = project.Settings.VarianceThreshold;
        var precision = new AccountPrecision(
            project.TimePhased,
            project.OpenShares,
            accounts,
            threshold
        );
        var next = project.CurrentPeriod() + 1;
        return MergeCandidates.Of(
            project.TimePhased,
            accounts,
            threshold,
            next,
            [
                .. Enumerable
                    .Range(next, project.Periods.Count - next)
                    .Select(period => precision.At(period)),
            ]
        );
    }
}
