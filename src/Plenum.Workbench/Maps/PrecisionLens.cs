using Plenum.Core;
using Plenum.Core.Accounts.Precision;
using Plenum.Core.Foundation;

namespace Plenum.Workbench.Maps;

/// <summary>
/// The lens of precision: how closely the earned value of each package's control account is known at a period's end, against
/// the variance threshold, and which packages would have to be known better. A branch shows the coarsest below it.
/// </summary>
internal static class PrecisionLens
{
    private const byte Known = 0;
    private const byte Fine = 1;
    private const byte Enough = 2;
    private const byte Coarse = 3;
    private const byte Split = 4;
    private const byte NoAccount = 5;

    private static readonly LensClass[] Classes =
    [
        new("known", "nothing open", "none"),
        new("fine", "within half the threshold", "neu"),
        new("enough", "within the threshold", "c1"),
        new("coarse", "account too coarse", "unf1", "ruled"),
        new("split", "to split or measure otherwise", "unf3", "ruled"),
        new("no_account", "in no account", "raised"),
    ];

    public static Lens Of(Project project, int period)
    {
        var tree = project.Tree;
        var accounts = project.CutsUnder(-1).ByAccount();
        var precision = new AccountPrecision(
            project.TimePhased,
            project.OpenShares,
            accounts,
            project.Settings.VarianceThreshold
        );
        var rowOfCode = accounts
            .Rows.Select((row, at) => (row.Code, at))
            .ToDictionary(pair => pair.Code, pair => pair.at, StringComparer.Ordinal);
        var verdicts = period < 0 ? [] : precision.At(period);
        var toSplit = verdicts
            .Where(verdict => !accounts.Rows[verdict.Row].IsRest)
            .SelectMany(verdict => verdict.Split)
            .Select(part => part.Package)
            .ToHashSet();
        var classOf = new byte[tree.Count];
        for (var row = tree.Count - 1; row >= 0; row--)
        {
            if (tree.PackageOfRow[row] is var package and >= 0)
            {
                classOf[row] = ClassOf(package);
            }

            // classes stand from known to coarse; what lies in no account tells nothing of its branch
            if (tree.Parent[row] is var parent and >= 0 && classOf[row] != NoAccount)
            {
                classOf[parent] = Math.Max(classOf[parent], classOf[row]);
            }
        }

        return new Lens(
            project,
            new LensHead(
                new LensText(
                    "Precision",
                    "How closely the status of each account is known, coarsest inside",
                    period < 0 ? null : project.Periods.End(period)
                ),
                new LensLegend("Precision", Classes)
            ),
            classOf,
            row =>
                VerdictOf(tree.PackageOfRow[row])?.Precision is { } share
                    ? FormattableString.Invariant(
                        $"its account is known to ±{share * 100:0.0} % of its budget"
                    )
                    : ""
        );

        PrecisionVerdict? VerdictOf(int package) =>
            period >= 0
            && package >= 0
            && project.Placement.AccountOfPackage[package] is var account and >= 0
                ? verdicts[rowOfCode[project.Placement.Accounts.Codes[account]!]]
                : null;

        byte ClassOf(int package)
        {
            if (project.Placement.AccountOfPackage[package] < 0)
            {
                return NoAccount;
            }

            var limit = (double)project.Settings.VarianceThreshold.BasisPoints / Fraction.Whole;
            return VerdictOf(package) is not { } verdict || verdict.Error.Count == 0 ? Known
                : toSplit.Contains(package) ? Split
                : verdict.IsTooCoarse ? Coarse
                : verdict.Precision < limit / 2 ? Fine
                : Enough;
        }
    }
}
