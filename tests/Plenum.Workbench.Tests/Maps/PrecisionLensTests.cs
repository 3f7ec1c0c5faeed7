using Plenum.Workbench.Maps;
using Plenum.Workbench.Questions;
using Plenum.Workbench.Tests.Audit;
using Plenum.Workbench.Tests.Oracle;

namespace Plenum.Workbench.Tests.Maps;

/// <summary>How closely the status of accounts is known, as colours of the map.</summary>
public class PrecisionLensTests
{
    [Fact]
    public void The_classes_are_the_verdicts_on_the_accounts_of_the_packages()
    {
        var project = Documents.Demo;
        var lens = new LensQuestion(LensQuestion.Precision).Ask(project);
        var verdicts = new PrecisionQuestion(project.Settings.StatusDate)
            .Ask(project)
            .Rows.ToDictionary(row => row.Account, StringComparer.Ordinal);
        Assert.True(verdicts.Count > 50);
        for (var package = 0; package < project.Tree.PackageCount; package++)
        {
            var row = project.Tree.PackageRows[package];
            var account = project.Placement.AccountOfPackage[package];
            Assert.Equal(
                account < 0
                    ? "no_account"
                    : Expected(
                        verdicts[project.Placement.Accounts.Codes[account]!],
                        project.Tree.Code(row),
                        project.Settings.VarianceThreshold.BasisPoints / 10_000m
                    ),
                lens.ClassAt(row).Key
            );
        }
    }

    [Fact]
    public void A_branch_shows_the_coarsest_below_it()
    {
        var project = Documents.Demo;
        var lens = new LensQuestion(LensQuestion.Precision).Ask(project);
        string[] order = ["known", "fine", "enough", "coarse", "split"];
        for (var row = 0; row < project.Tree.Count; row++)
        {
            if (project.Tree.PackageOfRow[row] < 0)
            {
                var below = Enumerable
                    .Range(row, project.Tree.SubtreeEnd[row] - row)
                    .Where(other => project.Tree.PackageOfRow[other] >= 0)
                    .Select(other => Array.IndexOf(order, lens.ClassAt(other).Key))
                    .DefaultIfEmpty(0)
                    .Max();
                Assert.Equal(order[Math.Max(0, below)], lens.ClassAt(row).Key);
            }
        }
    }

    [Fact]
    public void A_package_that_must_be_known_better_is_told_with_its_account_in_figures()
    {
        var text = SoundProject.Make();
        SoundProject.Package(text, "PLT.3.2")["technique"] = "0/100";
        var project = Answers.Import(text);
        var lens = new LensQuestion(LensQuestion.Precision, new DateOnly(2026, 4, 30)).Ask(project);
        var row = project.Tree.Elements.RowOfCode("PLT.3.2");
        Assert.Equal("split", lens.ClassAt(row).Key);
        Assert.Equal("its account is known to ±25.7 % of its budget", lens.ValueText(row));
        Assert.Equal("coarse", lens.ClassAt(project.Tree.Elements.RowOfCode("PLT.3.1")).Key);
    }

    [Fact]
    public void Before_the_first_period_nothing_is_open() =>
        Assert.All(
            new LensQuestion(LensQuestion.Precision, new DateOnly(2000, 1, 1))
                .Ask(Answers.Import(SoundProject.Make()))
                .ClassOf.ToArray(),
            one => Assert.Equal(0, one)
        );

    private static string Expected(PrecisionRow verdict, string package, decimal threshold) =>
        verdict.Open == 0 ? "known"
        : verdict.Split.Any(part => part.Package == package) ? "split"
        : !verdict.IsDetailedEnough ? "coarse"
        : verdict.Precision < threshold / 2 ? "fine"
        : "enough";
}
