using Plenum.Core;
using Plenum.Core.Accounts;
using Plenum.Core.Accounts.Precision;
using Plenum.Core.Foundation;

namespace Plenum.Workbench.Questions;

/// <summary>
/// Which variances can be told from zero? Asks for the same rows as an <see cref="AccountsQuestion"/>, so that the two
/// answers can be shown beside each other by code.
/// </summary>
public sealed record CertaintyQuestion(
    DateOnly? At = null,
    string By = "account",
    int? Level = null,
    string? Under = null
)
{
    /// <exception cref="QuestionException">There is no such cut, level or element.</exception>
    public CertaintyAnswer Ask(Project project)
    {
        var accounts = new AccountsQuestion(At, By, Level, Under);
        var (cut, period) = accounts.CutAndPeriod(project);
        var (sums, total) = CutMeasures.At(project.TimePhased, cut, period, false);
        var (errors, error) = RowErrors.At(project.TimePhased, project.OpenShares, cut, period);
        List<CertaintyRow> rows = [new(Cut.Total, project.Settings.Name, 0, total, error, project)];
        for (var row = 0; row < sums.Length; row++)
        {
            if (!sums[row].IsEmpty || !cut.DropsWhenEmpty(row, project.TimePhased))
            {
                rows.Add(
                    new CertaintyRow(
                        cut.Rows[row].Code,
                        cut.Rows[row].Name,
                        cut.Rows[row].Level,
                        sums[row],
                        errors[row],
                        project
                    )
                );
            }
        }

        return new CertaintyAnswer(
            period < 0 ? null : project.Periods.End(period),
            this,
            project.Revision,
            project.Settings.Currency,
            project.Settings.VarianceThreshold,
            rows[0],
            rows.Skip(1).ToList()
        );
    }
}

/// <summary>One row. Money in major units, what is not exact rounded to the currency's digits.</summary>
public sealed class CertaintyRow(
    string code,
    string name,
    int level,
    MeasureSums sums,
    RowError error,
    Project project
)
{
    private readonly VarianceCertainty cost = VarianceCertainty.Of(
        Performance.CostVariance(sums),
        error
    );

    private readonly VarianceCertainty schedule = VarianceCertainty.Of(
        Performance.ScheduleVariance(sums),
        error
    );

    public string Code => code;

    public string Name => name;

    public int Level => level;

    public decimal BudgetAtCompletion => Major(sums.BudgetAtCompletion);

    public decimal EarnedValue => Major(sums.EarnedValue);

    /// <summary>Packages whose progress is open, apportioned effort counted with its base.</summary>
    public int Open => error.Count;

    public decimal Bias => Major(error.Error.Bias);

    public decimal Spread => Major(error.Error.Spread);

    public decimal Worst => Major(error.Error.Worst);

    /// <summary>Size of the error as a share of the budget; null without budget.</summary>
    public decimal? Precision =>
        sums.BudgetAtCompletion > 0 ? (decimal)(error.Error.Size / sums.BudgetAtCompletion) : null;

    /// <summary>Half the width of the 95 % interval of either variance.</summary>
    public decimal HalfWidth => Major(error.HalfWidth);

    public VarianceRead CostVariance => Read(cost);

    public VarianceRead ScheduleVariance => Read(schedule);

    /// <summary>The package whose finer measurement would buy most certainty; null where nothing is open.</summary>
    public string? Finest =>
        error.Parts is [var first, ..] ? project.Baseline.Code(first.Package) : null;

    public string? FinestName =>
        error.Parts is [var first, ..]
            ? project.Tree.Name(project.Tree.PackageRows[first.Package])
            : null;

    /// <summary>By how much the size of the error would fall, as a share of the budget; null where nothing is open.</summary>
    public decimal? FinestBuys =>
        error.Parts is [var first, ..] && sums.BudgetAtCompletion > 0
            ? (decimal)(first.Buys / sums.BudgetAtCompletion)
            : null;

    private VarianceRead Read(VarianceCertainty certainty) =>
        new(
            Major(certainty.Variance),
            Major(certainty.Low),
            Major(certainty.High),
            certainty.IsToldFromZero,
            certainty.HasOtherSign,
            certainty.NeedsExplanation(Thresholds.Of(sums, project.Settings.VarianceThreshold))
        );

    private decimal Major(long minorUnits) => project.Settings.Currency.ToMajorUnits(minorUnits);

    private decimal Major(double minorUnits) =>
        Major((long)Math.Round(minorUnits, MidpointRounding.AwayFromZero));
}

/// <summary>A variance with what can be told of it.</summary>
/// <param name="Amount">As measured.</param>
/// <param name="Low">The true one lies between this and the next with a chance of 95 %.</param>
/// <param name="High">The upper end.</param>
/// <param name="IsToldFromZero">Signal: zero lies outside.</param>
/// <param name="HasOtherSign">The true one is told to have the other sign: what is measured is the techniques' bias.</param>
/// <param name="NeedsExplanation">It is told from zero, with its sign, and beyond the threshold.</param>
public readonly record struct VarianceRead(
    decimal Amount,
    decimal Low,
    decimal High,
    bool IsToldFromZero,
    bool HasOtherSign,
    bool NeedsExplanation
);

public sealed record CertaintyAnswer(
    DateOnly? At,
    CertaintyQuestion Question,
    long Revision,
    Currency Currency,
    Fraction Threshold,
    CertaintyRow Total,
    IReadOnlyList<CertaintyRow> Rows
);
