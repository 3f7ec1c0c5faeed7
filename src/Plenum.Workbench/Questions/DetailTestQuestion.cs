using Plenum.Core;
using Plenum.Core.Accounts.Precision;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Questions;

/// <summary>
/// Is an element broken down far enough? Five questions, of which one is the status precision: how closely its earned
/// value is known at each period's end from now on. Source: own definition, see docs/breakdown.md.
/// </summary>
/// <param name="Element">Code of the element.</param>
public sealed record DetailTestQuestion(string Element)
{
    private const int MostPackages = 8;

    /// <exception cref="QuestionException">There is no such element.</exception>
    public DetailTestAnswer Ask(Project project)
    {
        var row = project.Tree.Elements.RowOfCode(Element);
        if (row < 0)
        {
            throw new QuestionException($"No element has the code \"{Element}\".");
        }

        var (worst, hasBudget) = WorstOf(project, row);
        return new DetailTestAnswer(
            [
                PersonInCharge(project, row),
                CanBeAccepted(project, row),
                Precision(project, worst, hasBudget),
                CanBeEstimated(project, row),
                IsWhole(project, row),
            ],
            worst is null
                ? []
                : [.. worst.Split.Take(MostPackages).Select(part => Told(project, worst, part))],
            Math.Max(0, (worst?.Split.Count ?? 0) - MostPackages),
            [.. Merges(project, row).Take(MostPackages)]
        );
    }

    private static IEnumerable<int> Packages(Project project, int row) =>
        Enumerable
            .Range(row, project.Tree.SubtreeEnd[row] - row)
            .Where(below => project.Tree.PackageOfRow[below] >= 0);

    private static DetailCheck PersonInCharge(Project project, int row)
    {
        var persons = project.Tree.Inherited(ElementTable.Person);
        var without = Packages(project, row).Count(package => persons[package] == Cell.NoInt);
        return Counted(
            "One person answers for each package",
            Packages(project, row).Any(),
            without,
            "has nobody",
            "have nobody"
        );
    }

    private static DetailCheck CanBeAccepted(Project project, int row)
    {
        var elements = project.Tree.Elements;
        var outputs = elements.Texts(ElementTable.Output).ToArray();
        var acceptances = elements.Texts(ElementTable.Acceptance).ToArray();
        var without = Packages(project, row)
            .Count(package => outputs[package] is null || acceptances[package] is null);
        return Counted(
            "Every package delivers something that can be accepted",
            Packages(project, row).Any(),
            without,
            "names no output or acceptance",
            "name no output or acceptance"
        );
    }

    private static DetailCheck Precision(Project project, PrecisionVerdict? worst, bool hasBudget)
    {
        const string Question = "Its status can be known closely enough";
        var threshold = project.Settings.VarianceThreshold.BasisPoints / 100m;
        if (!hasBudget)
        {
            return new DetailCheck(Question, null, "without budget there is nothing to know");
        }

        return worst is null
            ? new DetailCheck(
                Question,
                true,
                FormattableString.Invariant($"nothing is open; threshold {threshold:0.##} %")
            )
            : new DetailCheck(
                Question,
                !worst.IsTooCoarse,
                FormattableString.Invariant(
                    $"precision ±{worst.Precision * 100:0.0} % at the end of {project.Periods.Codes[worst.Period]}, threshold {threshold:0.##} %"
                )
            );
    }

    private static DetailCheck CanBeEstimated(Project project, int row)
    {
        var without = Packages(project, row)
            .Count(package =>
                project.Baseline.TotalBudget[project.Tree.PackageOfRow[package]] == 0
            );
        return Counted(
            "Cost can be estimated",
            Packages(project, row).Any(),
            without,
            "has no budget",
            "have no budget"
        );
    }

    private static DetailCheck IsWhole(Project project, int row)
    {
        const string Question = "All its parts together are 100 % of it";
        var gap = project.Totals.Gap[row];
        var allotted = project.Totals.Allotted[row];
        return !Cell.IsGiven(gap) || allotted == 0
            ? new DetailCheck(Question, null, "nothing was allotted to compare with")
            : new DetailCheck(Question, gap == 0, MoneyText.Percent(allotted - gap, allotted));
    }

    private static DetailCheck Counted(
        string question,
        bool any,
        int without,
        string one,
        string several
    ) =>
        !any ? new DetailCheck(question, null, "no packages yet")
        : without == 0 ? new DetailCheck(question, true, "")
        : new DetailCheck(
            question,
            false,
            without == 1
                ? $"one package {one}"
                : FormattableString.Invariant($"{without} packages {several}")
        );

    /// <summary>The verdict on the element at the period's end from now on at which least is known; null if nothing is ever open.</summary>
    private static (PrecisionVerdict? Worst, bool HasBudget) WorstOf(Project project, int row)
    {
        var cut = project.CutsUnder(row).Whole();
        var precision = new AccountPrecision(
            project.TimePhased,
            project.OpenShares,
            cut,
            project.Settings.VarianceThreshold
        );
        PrecisionVerdict? worst = null;
        var hasBudget = project.Totals.Budget[row] > 0;
        for (
            var period = Math.Max(0, project.CurrentPeriod());
            hasBudget && period < project.Periods.Count;
            period++
        )
        {
            var verdict = precision.At(0, period);
            if (verdict.Error.Count > 0 && !(worst?.Precision >= verdict.Precision))
            {
                worst = verdict;
            }
        }

        return (worst, hasBudget);
    }

    private static PackageToDetail Told(Project project, PrecisionVerdict verdict, ErrorPart part)
    {
        var technique = project.Baseline.Technique[part.Package];
        var counts =
            technique is TechniqueCodec.Milestones or TechniqueCodec.Units or TechniqueCodec.Items;
        return new PackageToDetail(
            project.Baseline.Code(part.Package),
            project.Tree.Name(project.Tree.PackageRows[part.Package]),
            technique == Cell.NoInt ? null : TechniqueCodec.Instance.Format(technique),
            counts
                ? "split it, or count smaller steps"
                : "split it, or count milestones, units or items",
            (decimal)(part.Buys / verdict.Budget)
        );
    }

    private static IEnumerable<PackagesToMerge> Merges(Project project, int row) =>
        MergeBook
            .Of(project)
            .Where(pair =>
                project.Tree.PackageRows[pair.First] >= row
                && project.Tree.PackageRows[pair.Second] < project.Tree.SubtreeEnd[row]
            )
            .Select(pair => new PackagesToMerge(
                project.Baseline.Code(pair.First),
                project.Baseline.Code(pair.Second),
                (decimal)pair.Costs
            ));
}

/// <param name="Checks">The five questions, in order.</param>
/// <param name="Split">Packages to split or to measure otherwise, in order of what that buys.</param>
/// <param name="MoreToSplit">How many more there are.</param>
/// <param name="Merge">Neighbours that could be one package without anything measurable being lost.</param>
public sealed record DetailTestAnswer(
    IReadOnlyList<DetailCheck> Checks,
    IReadOnlyList<PackageToDetail> Split,
    int MoreToSplit,
    IReadOnlyList<PackagesToMerge> Merge
)
{
    /// <summary>How many of the questions are answered with yes.</summary>
    public int Passed => Checks.Count(check => check.Passed == true);
}

/// <summary>One question of the detail test.</summary>
/// <param name="Question">The question as a statement.</param>
/// <param name="Passed">True or false; null where there is nothing to tell by.</param>
/// <param name="Detail">Figures behind it; empty for none.</param>
public sealed record DetailCheck(string Question, bool? Passed, string Detail);

/// <param name="Package">Code of the package.</param>
/// <param name="Name">Its name.</param>
/// <param name="Technique">How it earns now; null for none.</param>
/// <param name="Advice">What to do.</param>
/// <param name="Buys">By how much precision would get better if its progress were known, as a share of the element's budget.</param>
public sealed record PackageToDetail(
    string Package,
    string Name,
    string? Technique,
    string Advice,
    decimal Buys
);
