using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Words;

/// <summary>The main reading of the breakdown as one or two plain sentences.</summary>
public static class BreakdownSentence
{
    /// <param name="project">A project with at least the root.</param>
    /// <param name="row">Position of the element that is read; −1 or 0 for the whole project.</param>
    /// <param name="amounts">The unit of money.</param>
    public static string Of(Project project, int row, Amounts amounts)
    {
        var tree = project.Tree;
        if (row <= 0)
        {
            return OfTheWhole(project, amounts);
        }

        var name = tree.Name(row);
        if (tree.PackageOfRow[row] >= 0)
        {
            var kind =
                tree.Kind(row) == ElementTable.PlanningPackage
                    ? "planning package"
                    : "work package";
            return $"{name} is a {kind} with a budget of {Finer(project, project.Totals.Budget[row], amounts)}.";
        }

        if (!tree.HasChildren(row))
        {
            var size = project.Totals.Allotted[row];
            return Cell.IsGiven(size)
                ? $"{name} is not broken down: {Finer(project, size, amounts)} belong to no part."
                : $"{name} is not broken down, and its size is unknown.";
        }

        return $"{name} is split {By(project, row)}into {Parts(project, row)}.{Rest(project, row, amounts)}";
    }

    private static string OfTheWhole(Project project, Amounts amounts)
    {
        var sizes = ElementSizes.Of(project);
        var whole = Math.Max(sizes.Size(0), sizes.Whole[0]);
        if (project.Tree.Count == 1)
        {
            return $"{NameOf(project)} is not broken down yet. Press Enter on it and type its first part.";
        }

        var begin =
            $"{NameOf(project)} is broken down into {Amounts.Count(project.Tree.Count)} elements on "
            + $"{Amounts.Count(project.Tree.Depth)} levels.";
        return sizes.Missing == 0
            ? begin
            : $"{begin} {Amounts.Percent(Ratio.Of(sizes.Missing, whole))} of it "
                + $"({Finer(project, sizes.Missing, amounts)}) belongs to no part.";
    }

    private static string NameOf(Project project) =>
        project.Tree.Name(0) is { Length: > 0 } name ? name : "The project";

    private static string By(Project project, int row) =>
        project.Tree.Elements.Texts(ElementTable.Split)[row] is { } split
            ? $"by {SplitWords.Of(split)} "
            : "";

    private static string Parts(Project project, int row)
    {
        var parts = ElementSizes.Of(project).Parts[row];
        return parts == 1 ? "one part" : Amounts.Count(parts) + " parts";
    }

    private static string Rest(Project project, int row, Amounts amounts)
    {
        var gap = project.Totals.Gap[row];
        var allotted = project.Totals.Allotted[row];
        return gap switch
        {
            Cell.NoLong => "",
            0 => " All of it belongs to a part.",
            > 0 =>
                $" {Amounts.Percent(Ratio.Of(gap, allotted))} of it ({Finer(project, gap, amounts)}) belongs to no part.",
            _ =>
                $" Together they have {Finer(project, -gap, amounts)} more than the {Finer(project, allotted, amounts)} it was given.",
        };
    }

    /// <summary>With one decimal more than in tables: what is missing is small beside the whole.</summary>
    private static string Finer(Project project, long minorUnits, Amounts amounts) =>
        amounts.Variance(project.Settings.Currency.ToMajorUnits(minorUnits)).TrimStart('+');
}
