using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Estimate;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Questions;

/// <summary>What is the estimate of an element made of?</summary>
/// <param name="Under">Code of the element; null for the whole project.</param>
/// <param name="OnlyOpen">Only packages without an estimate, and lines without an amount.</param>
public sealed record EstimateQuestion(string? Under = null, bool OnlyOpen = false)
{
    /// <summary>Cost: a step for each package and line in the range, beside the sums, which are kept with the value.</summary>
    /// <exception cref="QuestionException">No element has the code, or a sum does not fit.</exception>
    public EstimateAnswer Ask(Project project)
    {
        var under = Math.Max(0, ElementPosition.Of(project, Under));
        try
        {
            return new EstimateAnswer(project, under, Lines(project, under));
        }
        catch (OverflowException)
        {
            throw new QuestionException("The estimate is too large to be added up.");
        }
    }

    /// <summary>A row of the table of lines with its package, or ~ the package where it has none.</summary>
    private List<(int Package, int Line)> Lines(Project project, int under)
    {
        var tree = project.Tree;
        var table = project[EstimateTable.Definition];
        var currency = project.Settings.Currency;
        List<(int, int)> lines = [];
        for (var package = FirstFrom(tree, under); package < tree.PackageCount; package++)
        {
            if (tree.PackageRows[package] >= tree.SubtreeEnd[under])
            {
                break;
            }

            var rows = project.Estimate.LinesOf[package];
            if (rows.Length == 0)
            {
                lines.Add((package, -1));
            }

            foreach (var row in rows)
            {
                if (!OnlyOpen || !Cell.IsGiven(EstimateLines.Amount(table, row, currency)))
                {
                    lines.Add((package, row));
                }
            }
        }

        return lines;
    }

    private static int FirstFrom(ElementTree tree, int row)
    {
        var at = tree.PackageRows.BinarySearch(row);
        return at < 0 ? ~at : at;
    }
}

/// <summary>The estimate of an element, line by line.</summary>
public sealed class EstimateAnswer
{
    private readonly Project project;
    private readonly List<(int Package, int Line)> lines;
    private readonly ProjectText text;

    internal EstimateAnswer(Project project, int under, List<(int Package, int Line)> lines)
    {
        this.project = project;
        this.lines = lines;
        text = new ProjectText(project);
        Under = under;
        Sum = project.Estimate.At(under);
    }

    /// <summary>Position of the element.</summary>
    public int Under { get; }

    public string Name => project.Tree.Name(Under);

    public EstimateSum Sum { get; }

    public Currency Currency => project.Settings.Currency;

    /// <summary>The budget of the element, in minor units.</summary>
    public long Budget => project.Totals.Budget[Under];

    public int Count => lines.Count;

    /// <summary>Ids of the packages in the range that have lines.</summary>
    public IReadOnlyList<int> EstimatedPackages() =>
        [
            .. lines
                .Where(line => line.Line >= 0)
                .Select(line => project.Tree.Elements.Ids[project.Tree.PackageRows[line.Package]])
                .Distinct(),
        ];

    public IReadOnlyList<EstimateLine> Window(int first, int count)
    {
        List<EstimateLine> window = [];
        for (var number = first; number < Math.Min(first + count, lines.Count); number++)
        {
            window.Add(At(number));
        }

        return window;
    }

    public EstimateLine At(int number)
    {
        var (package, row) = lines[number];
        var tree = project.Tree;
        var element = tree.PackageRows[package];
        var table = project[EstimateTable.Definition];
        var currency =
            row < 0
                ? project.Settings.Currency
                : EstimateLines.CurrencyOf(table, row, project.Settings.Currency);
        return new EstimateLine(
            number,
            row < 0 ? 0 : table.Ids[row],
            tree.Elements.Ids[element],
            tree.Code(element),
            tree.Name(element),
            number == 0 || lines[number - 1].Package != package,
            row < 0
                ? [.. EstimateLine.Columns.Select(_ => (string?)null)]
                : [.. EstimateLine.Columns.Select(column => text.Of(table, row, column))],
            row < 0
                ? null
                : Major(EstimateLines.Amount(table, row, project.Settings.Currency), currency),
            row >= 0 && EstimateLines.IsComputed(table, row),
            row >= 0 && EstimateLines.Hours(table, row) is var hours && Cell.IsGiven(hours)
                ? hours / 100m
                : null
        )
        {
            Differs =
                row >= 0
                && EstimateLines.Product(table, row, project.Settings.Currency) is var product
                && Cell.IsGiven(product)
                && product != EstimateLines.Amount(table, row, project.Settings.Currency)
                    ? Major(product, currency)
                    : null,
        };
    }

    private static decimal? Major(long amount, Currency currency) =>
        Cell.IsGiven(amount) ? currency.ToMajorUnits(amount) : null;
}

/// <summary>A line of the estimate, or a package that has none yet.</summary>
/// <param name="Number">Number of the line, from 0.</param>
/// <param name="Id">Id of the estimate line; 0 for a package without one.</param>
/// <param name="Package">Id of the package.</param>
/// <param name="Code">Its code.</param>
/// <param name="Name">Its name.</param>
/// <param name="IsFirst">It is the first line of its package.</param>
/// <param name="Texts">Its cells as a file has them, for each of <see cref="Columns"/>.</param>
/// <param name="Amount">Amount in its currency, given or computed; null for none.</param>
/// <param name="IsComputed">The amount follows from quantity and rate.</param>
/// <param name="Hours">Hours that follow from quantity and hours per unit; null for none.</param>
public sealed record EstimateLine(
    int Number,
    int Id,
    int Package,
    string Code,
    string Name,
    bool IsFirst,
    IReadOnlyList<string?> Texts,
    decimal? Amount,
    bool IsComputed,
    decimal? Hours
)
{
    /// <summary>What quantity and rate make, where the amount that is given is another; null where they agree.</summary>
    public decimal? Differs { get; init; }

    /// <summary>The columns that can be written, in the order in which they are shown.</summary>
    public static readonly IReadOnlyList<ColumnDefinition> Columns =
    [
        EstimateTable.CostElement,
        EstimateTable.Line,
        EstimateTable.Quantity,
        EstimateTable.Unit,
        EstimateTable.HoursPerUnit,
        EstimateTable.Rate,
        EstimateTable.Amount,
        EstimateTable.Low,
        EstimateTable.Likely,
        EstimateTable.High,
        EstimateTable.Class,
        EstimateTable.Basis,
        EstimateTable.BaseDate,
        EstimateTable.Currency,
    ];
}
