using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Questions;

/// <summary>The breakdown, in depth-first order.</summary>
/// <param name="Level">Down to this level; null for all. The root has level 1.</param>
/// <param name="Under">Only this element and what is under it.</param>
public sealed record TreeQuestion(int? Level = null, string? Under = null)
{
    /// <exception cref="QuestionException">There is no such level or element.</exception>
    public TreeAnswer Ask(Project project)
    {
        if (Level < 1)
        {
            throw new QuestionException("Levels count from 1, the root.");
        }

        var under = ElementPosition.Of(project, Under);
        var tree = project.Tree;
        var hours = project.HourTotals.Budget;
        var packages = new int[tree.Count];
        foreach (var row in tree.PackageRows)
        {
            packages[row] = 1;
        }

        RollUp.Totals(tree.Level, tree.Depth, packages, packages);
        List<TreeRow> rows = [];
        var end = under < 0 ? tree.Count : tree.SubtreeEnd[under];
        for (var row = Math.Max(0, under); row < end; row++)
        {
            if (Level is null || tree.Level[row] <= Level)
            {
                rows.Add(RowOf(project, row, hours[row], packages[row]));
            }
        }

        return new TreeAnswer(project.Revision, project.Settings.Currency, rows);
    }

    private static TreeRow RowOf(Project project, int row, long hours, int packages)
    {
        var tree = project.Tree;
        var totals = project.Totals;
        var currency = project.Settings.Currency;
        return new TreeRow(
            tree.Code(row),
            tree.Name(row),
            tree.Level[row],
            ElementTable.Kinds.Format(tree.Kind(row)),
            tree.Elements.Texts(ElementTable.Split)[row],
            currency.ToMajorUnits(totals.Budget[row]),
            totals.Allotted[row] == Cell.NoLong
                ? null
                : currency.ToMajorUnits(totals.Allotted[row]),
            totals.Gap[row] == Cell.NoLong ? null : currency.ToMajorUnits(totals.Gap[row]),
            hours / 100m,
            packages
        );
    }
}

/// <summary>One element. Money in major units.</summary>
public sealed record TreeRow(
    string Code,
    string Name,
    int Level,
    string Kind,
    string? Split,
    decimal Budget,
    decimal? Allotted,
    decimal? Gap,
    decimal Hours,
    int Packages
);

public sealed record TreeAnswer(long Revision, Currency Currency, IReadOnlyList<TreeRow> Rows);
