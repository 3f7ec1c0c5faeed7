using Plenum.Core;
using Plenum.Core.Accounts;
using Plenum.Core.Forecast;
using Plenum.Core.Foundation;

namespace Plenum.Workbench.Questions;

/// <summary>How is it going, by which cut, at which date.</summary>
/// <param name="At">Everything is taken at the last period end on or before it; null for the status date.</param>
/// <param name="By">account, element, unit, cost_element, package, or the name of a grouping.</param>
/// <param name="Level">For elements: those of this level and the leaves above it.</param>
/// <param name="Under">Only what lies under this element.</param>
/// <param name="PeriodOnly">Values and variances of the last period alone; all else stays to date.</param>
/// <param name="PackagesOf">Not the cut itself but the packages that make this row of it.</param>
public sealed record AccountsQuestion(
    DateOnly? At = null,
    string By = "account",
    int? Level = null,
    string? Under = null,
    bool PeriodOnly = false,
    string? PackagesOf = null
)
{
    /// <exception cref="QuestionException">There is no such cut, level or element.</exception>
    public AccountsAnswer Ask(Project project)
    {
        var (cut, period) = CutAndPeriod(project);
        var cuts = project.CutsUnder(ElementPosition.Of(project, Under));
        var (sums, total) = CutMeasures.At(project.TimePhased, cut, period, PeriodOnly);
        var schedules = new EarnedSchedule[sums.Length];
        EarnedSchedule whole = default;
        CutSeries.Walk(
            project.TimePhased,
            cut,
            (row, planned, earned) =>
            {
                var schedule = EarnedSchedule.At(planned, earned, period);
                if (row < 0)
                {
                    whole = schedule;
                }
                else
                {
                    schedules[row] = schedule;
                }
            }
        );
        return new AccountsAnswer(
            period < 0 ? null : project.Periods.End(period),
            this,
            project.Revision,
            project.Settings.Currency,
            project.Settings.VarianceThreshold,
            new MeasureRow(
                Cut.Total,
                NameOfTheWhole(project, cuts),
                0,
                total,
                whole,
                project.Settings.Currency,
                project.Periods
            ),
            [.. RowsOf(project, cut, sums, schedules)]
        );
    }

    /// <summary>The cut that is asked for, and the index of the period at whose end everything is taken.</summary>
    /// <exception cref="QuestionException">There is no such cut, level or element.</exception>
    internal (Cut Cut, int Period) CutAndPeriod(Project project)
    {
        if (Level is not null && By != "element")
        {
            throw new QuestionException(
                "A level can be asked for by element only: --by element --level N."
            );
        }

        if (Level < 1)
        {
            throw new QuestionException("Levels count from 1, the root.");
        }

        return (
            CutOf(project, project.CutsUnder(ElementPosition.Of(project, Under))),
            PeriodOf(project)
        );
    }

    private static IEnumerable<MeasureRow> RowsOf(
        Project project,
        Cut cut,
        MeasureSums[] sums,
        EarnedSchedule[] schedules
    )
    {
        for (var row = 0; row < sums.Length; row++)
        {
            if (!sums[row].IsEmpty || !cut.DropsWhenEmpty(row, project.TimePhased))
            {
                yield return new MeasureRow(
                    cut.Rows[row].Code,
                    cut.Rows[row].Name,
                    cut.Rows[row].Level,
                    sums[row],
                    schedules[row],
                    project.Settings.Currency,
                    project.Periods
                );
            }
        }
    }

    private string NameOfTheWhole(Project project, Cuts cuts) =>
        PackagesOf is not null && CutBy(project, cuts) is var whole
            ? whole.Rows[RowOf(whole, PackagesOf)] is { Name.Length: > 0 } row
                ? row.Name
                : PackagesOf
            : Under is null
                ? project.Settings.Name
                : project.Tree.Name(ElementPosition.Of(project, Under));

    private static int RowOf(Cut cut, string code)
    {
        for (var row = 0; row < cut.Rows.Count; row++)
        {
            if (cut.Rows[row].Code == code)
            {
                return row;
            }
        }

        throw new QuestionException($"The cut by {cut.By} has no row \"{code}\".");
    }

    private Cut CutOf(Project project, Cuts cuts)
    {
        var cut = CutBy(project, cuts);
        return PackagesOf is null ? cut : cuts.ByPackageOf(cut, RowOf(cut, PackagesOf));
    }

    private Cut CutBy(Project project, Cuts cuts) =>
        By switch
        {
            "account" => cuts.ByAccount(),
            "element" => cuts.ByElement(Level),
            "unit" => cuts.ByUnit(),
            "cost_element" => cuts.ByCostElement(),
            "package" => cuts.ByPackage(),
            _ => cuts.ByGrouping(By)
                ?? throw new QuestionException(
                    $"There is no cut by \"{By}\". Known are account, element, unit, cost_element, package"
                        + string.Concat(Groupings(project).Select(name => ", " + name))
                        + "."
                ),
        };

    /// <summary>The groupings that a project has: each is a cut of its own.</summary>
    public static IEnumerable<string> Groupings(Project project)
    {
        var groups = project[Core.Breakdown.GroupTable.Definition];
        return groups
            .Texts(Core.Breakdown.GroupTable.Grouping)
            .ToArray()
            .OfType<string>()
            .Distinct(StringComparer.Ordinal);
    }

    private int PeriodOf(Project project) =>
        At is { } date ? project.Periods.LastEndedBy(date) : project.CurrentPeriod();
}

/// <summary>The answer to an <see cref="AccountsQuestion"/>.</summary>
/// <param name="At">The day at which everything is taken; null before the first period's end.</param>
/// <param name="Question">What was asked.</param>
/// <param name="Revision">Revision of the project that answered.</param>
/// <param name="Currency">The project's currency.</param>
/// <param name="Threshold">Variance threshold as a share of a row's budget.</param>
/// <param name="Total">The whole, undistributed budget included.</param>
/// <param name="Rows">The rows of the cut; those that only make it tie out stand last.</param>
public sealed record AccountsAnswer(
    DateOnly? At,
    AccountsQuestion Question,
    long Revision,
    Currency Currency,
    Fraction Threshold,
    MeasureRow Total,
    IReadOnlyList<MeasureRow> Rows
);
