using Plenum.Core;
using Plenum.Core.Accounts;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Network;

namespace Plenum.Workbench.Questions;

/// <summary>How much of the project has passed each chapter's own test, and what waits for someone there?</summary>
public sealed record StandingQuestion
{
    public static StandingAnswer Ask(Project project) =>
        project.Tree.Count == 0
            ? new StandingAnswer([])
            : new StandingAnswer([
                Scope(project),
                Breakdown(project),
                People(project),
                Estimate(project),
                Network(project),
                Accounts(project),
            ]);

    /// <summary>Deliverables and requirements whose every phrase, or whole, is answered.</summary>
    private static Standing Scope(Project project)
    {
        var answer = new ScopeQuestion().Ask(project);
        var covered = answer.Count(Coverage.Covered);
        var open = answer.Count(Coverage.Partly) + answer.Count(Coverage.None);
        return new Standing(
            "scope",
            Ratio.Of(covered, covered + open),
            "of the deliverables and requirements are answered by parts",
            open,
            open == 1 ? "is not, or in part only" : "are not, or in part only"
        );
    }

    /// <summary>Decided cells of the matrix of parts by activities; and what the audit finds that nobody has accepted.</summary>
    private static Standing Breakdown(Project project)
    {
        var check = new CheckQuestion().Ask(project);
        var waiting = check.Count(Severity.Error) + check.Count(Severity.Warning);
        var matrix = project.ActivityMatrix;
        return new Standing(
            "breakdown",
            Ratio.Of(matrix.DecidedCount, matrix.CellCount),
            "of the activities that the parts need are planned or ruled out",
            waiting,
            waiting == 1 ? "finding waits" : "findings wait"
        );
    }

    private static Standing People(Project project)
    {
        var person = project.Tree.Inherited(ElementTable.Person);
        var placed = 0;
        for (var package = 0; package < project.Tree.PackageCount; package++)
        {
            if (
                person[project.Tree.PackageRows[package]] != Cell.NoInt
                && project.Placement.AccountOfPackage[package] >= 0
            )
            {
                placed++;
            }
        }

        var without = project.Tree.PackageCount - placed;
        return new Standing(
            "people",
            Ratio.Of(placed, project.Tree.PackageCount),
            "of the packages have a person in charge and a control account",
            without,
            without == 1 ? "package has not" : "packages have not"
        );
    }

    private static Standing Estimate(Project project)
    {
        var sum = project.Estimate.At(0);
        var without = sum.Packages - sum.Estimated;
        return new Standing(
            "estimate",
            Ratio.Of(sum.Estimated, sum.Packages),
            "of the packages are estimated",
            without,
            without == 1 ? "package has no estimate" : "packages have no estimate"
        );
    }

    /// <summary>Activities with logic at both ends: all but the first and the last of the project have one.</summary>
    private static Standing Network(Project project)
    {
        const string Test = "of the activities have logic at both ends";
        try
        {
            var input = project.Network.Input;
            var hasBefore = new bool[input.Codes.Count];
            var hasAfter = new bool[input.Codes.Count];
            for (var link = 0; link < input.From.Length; link++)
            {
                hasAfter[input.From[link]] = true;
                hasBefore[input.To[link]] = true;
            }

            var linked = hasBefore
                .Where((before, activity) => before && hasAfter[activity])
                .Count();
            var open = hasBefore.Length - linked;
            return new Standing(
                "network",
                Ratio.Of(linked, hasBefore.Length),
                Test,
                open,
                open == 1 ? "has an open end" : "have an open end"
            );
        }
        catch (NetworkException)
        {
            return new Standing("network", null, Test, 1, "thing keeps it from being computed");
        }
    }

    private static Standing Accounts(Project project)
    {
        var accounts = project.CutsUnder(-1).ByAccount();
        var rows = CutMeasures
            .At(project.TimePhased, accounts, project.CurrentPeriod(), false)
            .Rows;
        var count = 0;
        var toExplain = 0;
        for (var row = 0; row < rows.Length; row++)
        {
            if (!accounts.Rows[row].IsRest)
            {
                count++;
                toExplain += NeedsWords(rows[row], project.Settings.VarianceThreshold) ? 1 : 0;
            }
        }

        return new Standing(
            "accounts",
            Ratio.Of(count - toExplain, count),
            "of the accounts have no variance that waits for an explanation",
            toExplain,
            toExplain == 1 ? "account waits for one" : "accounts wait for one"
        );
    }

    /// <summary>A variance beyond the threshold, or offsets that hide one.</summary>
    private static bool NeedsWords(in MeasureSums sums, Fraction threshold)
    {
        var limit = Thresholds.Of(sums, threshold);
        return Math.Abs(Performance.CostVariance(sums)) > limit
            || Math.Abs(Performance.ScheduleVariance(sums)) > limit
            || Thresholds.Hides(sums.CostGained, sums.CostLost, limit)
            || Thresholds.Hides(sums.ScheduleGained, sums.ScheduleLost, limit);
    }
}

/// <param name="Standings">One for each chapter that has a test.</param>
public sealed record StandingAnswer(IReadOnlyList<Standing> Standings)
{
    public Standing? Of(string chapter) =>
        Standings.FirstOrDefault(standing => standing.Chapter == chapter);
}

/// <param name="Chapter">The chapter's word.</param>
/// <param name="Passed">Share that has passed, 0 to 1; null where there is nothing to pass.</param>
/// <param name="Test">What has passed, to stand after the share.</param>
/// <param name="Waiting">How many wait for someone.</param>
/// <param name="WaitingFor">What they wait for, to stand after the number.</param>
public sealed record Standing(
    string Chapter,
    decimal? Passed,
    string Test,
    int Waiting,
    string WaitingFor
);
