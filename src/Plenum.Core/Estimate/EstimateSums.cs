using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Estimate;

/// <summary>
/// The estimate at every element, in minor units of the project's currency: sums of the lines of the packages below it.
/// A line in another currency, or without an amount, is counted and left out of the sums. Sums of low and high are
/// bounds, not percentiles: percentiles do not add. Source of that: GAO-20-195G (from a summary).
/// </summary>
public sealed class EstimateSums
{
    /// <summary>Least defined class of each package's lines, 1 to 5.</summary>
    public const byte NoLines = 0;

    /// <summary>A package has lines, none of which names a class from 1 to 5.</summary>
    public const byte NoClass = 6;

    private readonly long[][] totals;

    /// <exception cref="OverflowException">A sum does not fit.</exception>
    public EstimateSums(ElementTree tree, Table lines, Currency project)
    {
        LinesOf = RowGroups.By(PackagesOf(tree, lines), tree.PackageCount);
        ClassOf = new byte[tree.PackageCount];
        var own = new long[Measures][];
        for (var measure = 0; measure < Measures; measure++)
        {
            own[measure] = new long[tree.Count];
        }

        var classes = lines.Texts(EstimateTable.Class);
        for (var package = 0; package < tree.PackageCount; package++)
        {
            var element = tree.PackageRows[package];
            var rows = LinesOf[package];
            own[Packages][element] = 1;
            own[Estimated][element] = rows.Length > 0 ? 1 : 0;
            own[Lines][element] = rows.Length;
            var worst = NoLines;
            foreach (var row in rows)
            {
                Add(own, element, lines, row, project);
                worst = Math.Max(worst, (byte)(EstimateClass.Of(classes[row])?.Number ?? 0));
            }

            ClassOf[package] = worst == 0 && rows.Length > 0 ? NoClass : worst;
        }

        RollUp.Totals(tree.Level, tree.Depth, own, own);
        totals = own;
    }

    private const int Amount = 0;
    private const int Low = 1;
    private const int Likely = 2;
    private const int High = 3;
    private const int Hours = 4;
    private const int Lines = 5;
    private const int Unpriced = 6;
    private const int Foreign = 7;
    private const int Packages = 8;
    private const int Estimated = 9;
    private const int Ranged = 10;
    private const int Measures = 11;

    /// <summary>Rows of each package's lines.</summary>
    public RowGroups LinesOf { get; }

    /// <summary>
    /// For each package the least defined class of its lines; <see cref="NoLines"/> or <see cref="NoClass"/>.
    /// </summary>
    public byte[] ClassOf { get; }

    /// <summary>The sums at the element of a position.</summary>
    public EstimateSum At(int row) =>
        new(
            totals[Amount][row],
            totals[Low][row],
            totals[Likely][row],
            totals[High][row],
            totals[Hours][row],
            (int)totals[Lines][row],
            (int)totals[Unpriced][row],
            (int)totals[Foreign][row],
            (int)totals[Ranged][row],
            (int)totals[Packages][row],
            (int)totals[Estimated][row]
        );

    private static int[] PackagesOf(ElementTree tree, Table lines)
    {
        var ids = lines.Ints(EstimateTable.Package);
        var packages = new int[ids.Length];
        for (var row = 0; row < packages.Length; row++)
        {
            packages[row] = tree.PackageOfId(ids[row]);
        }

        return packages;
    }

    private static void Add(long[][] own, int element, Table lines, int row, Currency project)
    {
        var hours = EstimateLines.Hours(lines, row);
        Sum(Hours, hours);
        if (EstimateLines.CurrencyOf(lines, row, project) != project)
        {
            own[Foreign][element]++;
            return;
        }

        var amount = EstimateLines.Amount(lines, row, project);
        own[Unpriced][element] += Cell.IsGiven(amount) ? 0 : 1;
        Sum(Amount, amount);
        var low = lines.Longs(EstimateTable.Low)[row];
        var likely = lines.Longs(EstimateTable.Likely)[row];
        var high = lines.Longs(EstimateTable.High)[row];
        own[Ranged][element] += Cell.IsGiven(low) && Cell.IsGiven(high) ? 1 : 0;

        // a line without a range of its own counts with its amount
        Sum(Low, Cell.IsGiven(low) ? low : amount);
        Sum(Likely, Cell.IsGiven(likely) ? likely : amount);
        Sum(High, Cell.IsGiven(high) ? high : amount);

        void Sum(int measure, long value)
        {
            if (Cell.IsGiven(value))
            {
                own[measure][element] = checked(own[measure][element] + value);
            }
        }
    }
}

/// <summary>The estimate of an element.</summary>
/// <param name="Amount">Sum of amounts, in minor units.</param>
/// <param name="Low">Sum of low amounts.</param>
/// <param name="Likely">Sum of most likely amounts.</param>
/// <param name="High">Sum of high amounts.</param>
/// <param name="Hours">Hours, in hundredths.</param>
/// <param name="Lines">Lines.</param>
/// <param name="Unpriced">Lines without an amount, given or computed.</param>
/// <param name="Foreign">Lines in another currency, left out of the sums.</param>
/// <param name="Ranged">Lines with low and high.</param>
/// <param name="Packages">Packages.</param>
/// <param name="Estimated">Packages with lines.</param>
public readonly record struct EstimateSum(
    long Amount,
    long Low,
    long Likely,
    long High,
    long Hours,
    int Lines,
    int Unpriced,
    int Foreign,
    int Ranged,
    int Packages,
    int Estimated
);
