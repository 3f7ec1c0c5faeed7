using Plenum.Core;
using Plenum.Core.Accounts;
using Plenum.Core.Accounts.Precision;
using Plenum.Core.Foundation;

namespace Plenum.Workbench.Questions;

/// <summary>Is the breakdown detailed enough to know the status of every account at every period's end?</summary>
/// <param name="At">Only the last period that ends on or before it; null for all periods.</param>
/// <param name="Account">Only this account; null for all.</param>
public sealed record PrecisionQuestion(DateOnly? At = null, string? Account = null)
{
    /// <exception cref="QuestionException">There is no such account.</exception>
    public PrecisionAnswer Ask(Project project)
    {
        var accounts = project.CutsUnder(-1).ByAccount();
        if (Account is not null && accounts.Rows.All(row => row.Code != Account))
        {
            var nearest = NearestWord.Of(Account, accounts.Rows.Select(row => row.Code));
            throw new QuestionException(
                $"No account has the code \"{Account}\"."
                    + (nearest is null ? "" : $" Did you mean {nearest}?")
            );
        }

        var threshold = project.Settings.VarianceThreshold;
        var last = project.Periods.Count - 1;
        var precision = new AccountPrecision(
            project.TimePhased,
            project.OpenShares,
            accounts,
            threshold
        );
        List<PrecisionVerdict[]> verdicts =
        [
            .. Enumerable.Range(0, last + 1).Select(period => precision.At(period)),
        ];
        var present = project.CurrentPeriod();
        var merges = MergeCandidates.Of(
            project.TimePhased,
            accounts,
            threshold,
            present + 1,
            verdicts.Skip(present + 1).ToList()
        );
        var effort = AccountPrecision.LevelOfEffortShares(project.TimePhased, accounts);
        var budgets = AccountPrecision.Budgets(project.TimePhased, accounts);
        var only = At is { } date ? project.Periods.LastEndedBy(date) : (int?)null;
        List<PrecisionRow> rows = [];
        foreach (var row in Enumerable.Range(0, accounts.Rows.Count))
        {
            var known = accounts.Rows[row];
            if (
                (Account is not null && known.Code != Account)
                || (known.IsRest && budgets[row] == 0)
            )
            {
                continue;
            }

            foreach (var period in Enumerable.Range(0, last + 1))
            {
                if (only is null || period == only)
                {
                    rows.Add(
                        new PrecisionRow(
                            known,
                            project,
                            verdicts[period][row],
                            effort[row],
                            [.. merges.Where(pair => pair.Row == row && pair.Period == period)]
                        )
                    );
                }
            }
        }

        return new PrecisionAnswer(
            At,
            Account,
            project.Revision,
            project.Settings.Currency,
            threshold,
            present < 0 ? null : project.Periods.Codes[present],
            rows
        );
    }
}

/// <summary>An account at a period's end. Money in major units, rounded to the currency's digits.</summary>
public sealed class PrecisionRow(
    CutRow account,
    Project project,
    PrecisionVerdict verdict,
    double levelOfEffortShare,
    IReadOnlyList<MergeCandidate> merges
)
{
    public string Account => account.Code;

    public string Name => account.Name;

    public string Period => project.Periods.Codes[verdict.Period];

    public DateOnly End => project.Periods.End(verdict.Period);

    public decimal Budget => Major(verdict.Budget);

    /// <summary>Level of effort's part of the budget, 0 to 1: it earns what was planned and is left out.</summary>
    public decimal LevelOfEffortShare => (decimal)levelOfEffortShare;

    /// <summary>Packages that are open, apportioned effort counted with its base.</summary>
    public int Open => verdict.Error.Count;

    public decimal Bias => Major(verdict.Error.Error.Bias);

    public decimal Spread => Major(verdict.Error.Error.Spread);

    public decimal Worst => Major(verdict.Error.Error.Worst);

    /// <summary>Size of the error as a share of the budget; null without budget.</summary>
    public decimal? Precision => (decimal?)verdict.Precision;

    public bool IsDetailedEnough => !verdict.IsTooCoarse;

    /// <summary>Packages to split or to measure otherwise, in order of what they buy.</summary>
    public IReadOnlyList<PackageToSplit> Split =>
        [
            .. verdict.Split.Select(part => new PackageToSplit(
                project.Baseline.Code(part.Package),
                NameOf(part.Package),
                Major(part.Error.Bias),
                Major(part.Error.Spread),
                Major(part.Error.Worst),
                verdict.Budget > 0 ? (decimal)(part.Buys / verdict.Budget) : 0
            )),
        ];

    /// <summary>Neighbours that begin in this period and could be one package, in order of what they cost.</summary>
    public IReadOnlyList<PackagesToMerge> Merge =>
        [
            .. merges.Select(pair => new PackagesToMerge(
                project.Baseline.Code(pair.First),
                project.Baseline.Code(pair.Second),
                (decimal)pair.Costs
            )),
        ];

    private string NameOf(int package) => project.Tree.Name(project.Tree.PackageRows[package]);

    private decimal Major(double minorUnits) =>
        project.Settings.Currency.ToMajorUnits(
            (long)Math.Round(minorUnits, MidpointRounding.AwayFromZero)
        );
}

/// <param name="Buys">By how much precision would get better if its progress were known, as a share of the account's budget.</param>
public sealed record PackageToSplit(
    string Package,
    string Name,
    decimal Bias,
    decimal Spread,
    decimal Worst,
    decimal Buys
);

/// <param name="Costs">By how much precision would get worse at most, as a share of the account's budget.</param>
public sealed record PackagesToMerge(string First, string Second, decimal Costs);

/// <summary>The answer to a <see cref="PrecisionQuestion"/>.</summary>
/// <param name="Threshold">The variance threshold: a precision under it is detailed enough.</param>
/// <param name="Present">The period up to which reports are in; null before the first.</param>
public sealed record PrecisionAnswer(
    DateOnly? At,
    string? Account,
    long Revision,
    Currency Currency,
    Fraction Threshold,
    string? Present,
    IReadOnlyList<PrecisionRow> Rows
);
