using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Baseline;

/// <summary>
/// What the baseline says of every package, by package number: technique, spread, dates and budget. Money in minor
/// units of the project's currency. The atom of money is a package's budget for one cost element; atoms are numbered
/// package × 5 + cost element.
/// </summary>
public sealed class PackageBaseline
{
    private readonly int[] rowOfPackage;

    public PackageBaseline(
        ElementTree tree,
        PeriodTimeline periods,
        Table packages,
        Table budget,
        Table budgetPeriods,
        Table milestones
    )
    {
        Tree = tree;
        Packages = packages;
        BudgetPeriods = budgetPeriods;
        Milestones = milestones;
        var count = tree.PackageCount;
        rowOfPackage = new int[count];
        rowOfPackage.AsSpan().Fill(-1);
        Technique = Filled(count);
        Spread = new int[count];
        Start = Filled(count);
        Finish = Filled(count);
        Base = new int[count];
        Base.AsSpan().Fill(-1);
        NamedAccount = Filled(count);
        ReadPackages(packages);

        Budget = new long[count * CostElements.Count];
        TotalBudget = new long[count];
        BudgetHours = new long[count];
        ReadBudget(budget);

        MilestonesOf = RowGroups.By(OwnersOf(milestones, MilestoneTable.Package), count);
        PeriodAmountsOf = RowGroups.By(
            OwnersOf(budgetPeriods, BudgetPeriodTable.Package),
            count,
            Array.ConvertAll(
                budgetPeriods.Ints(BudgetPeriodTable.Period).ToArray(),
                periods.IndexOf
            )
        );
    }

    private PackageBaseline(ElementTree tree, PackageBaseline same)
    {
        Tree = tree;
        Packages = same.Packages;
        BudgetPeriods = same.BudgetPeriods;
        Milestones = same.Milestones;
        rowOfPackage = same.rowOfPackage;
        Technique = same.Technique;
        Spread = same.Spread;
        Start = same.Start;
        Finish = same.Finish;
        Base = same.Base;
        NamedAccount = same.NamedAccount;
        Budget = same.Budget;
        TotalBudget = same.TotalBudget;
        BudgetHours = same.BudgetHours;
        MilestonesOf = same.MilestonesOf;
        PeriodAmountsOf = same.PeriodAmountsOf;
    }

    /// <summary>The same baseline over a tree of the same shape; nothing is computed anew.</summary>
    public PackageBaseline Over(ElementTree tree) => new(tree, this);

    public ElementTree Tree { get; }

    public Table Packages { get; }

    public Table BudgetPeriods { get; }

    public Table Milestones { get; }

    /// <summary>Technique as numbered by <see cref="TechniqueCodec"/>, or <see cref="Cell.NoInt"/>.</summary>
    public int[] Technique { get; }

    /// <summary>A spread of <see cref="PackageTable.Spreads"/>; even where none is named.</summary>
    public int[] Spread { get; }

    /// <summary>Baseline start as a day number, or <see cref="Cell.NoInt"/>.</summary>
    public int[] Start { get; }

    /// <summary>Baseline finish as a day number, or <see cref="Cell.NoInt"/>.</summary>
    public int[] Finish { get; }

    /// <summary>Number of the package that apportioned effort follows; −1 if there is none.</summary>
    public int[] Base { get; }

    /// <summary>Id of the control account that the package names, or <see cref="Cell.NoInt"/>.</summary>
    public int[] NamedAccount { get; }

    /// <summary>Budget of each atom, in minor units.</summary>
    public long[] Budget { get; }

    /// <summary>Budget of each package, in minor units.</summary>
    public long[] TotalBudget { get; }

    /// <summary>Budgeted hours of each package, in hundredths.</summary>
    public long[] BudgetHours { get; }

    /// <summary>Rows of the milestones table by package.</summary>
    public RowGroups MilestonesOf { get; }

    /// <summary>Rows of the period amounts by package, ordered by period.</summary>
    public RowGroups PeriodAmountsOf { get; }

    public int Count => Technique.Length;

    /// <summary>Row of a package in the packages table; −1 if it has none.</summary>
    public int RowOf(int package) => rowOfPackage[package];

    /// <summary>True if both baseline dates are given.</summary>
    public bool IsScheduled(int package) =>
        Start[package] != Cell.NoInt && Finish[package] != Cell.NoInt;

    public string Code(int package) => Tree.Code(Tree.PackageRows[package]);

    /// <summary>The number of the package that each row of a table belongs to; −1 where it is no package.</summary>
    public int[] OwnersOf(Table table, ColumnDefinition column)
    {
        var ids = table.Ints(column);
        var owners = new int[ids.Length];
        for (var row = 0; row < owners.Length; row++)
        {
            owners[row] = Tree.PackageOfId(ids[row]);
        }

        return owners;
    }

    private static int[] Filled(int count)
    {
        var values = new int[count];
        values.AsSpan().Fill(Cell.NoInt);
        return values;
    }

    private void ReadPackages(Table packages)
    {
        var owners = OwnersOf(packages, PackageTable.Package);
        var techniques = packages.Ints(PackageTable.Technique);
        var spreads = packages.Ints(PackageTable.Spread);
        var starts = packages.Ints(PackageTable.Start);
        var finishes = packages.Ints(PackageTable.Finish);
        var bases = packages.Ints(PackageTable.Base);
        var accounts = packages.Ints(PackageTable.Account);
        for (var row = 0; row < owners.Length; row++)
        {
            if (owners[row] is var package and >= 0)
            {
                rowOfPackage[package] = row;
                Technique[package] = techniques[row];
                Spread[package] = spreads[row] == Cell.NoInt ? PackageTable.Even : spreads[row];
                Start[package] = starts[row];
                Finish[package] = finishes[row];
                Base[package] = bases[row] == Cell.NoInt ? -1 : Tree.PackageOfId(bases[row]);
                NamedAccount[package] = accounts[row];
            }
        }
    }

    private void ReadBudget(Table budget)
    {
        var owners = OwnersOf(budget, BudgetTable.Package);
        var costElements = budget.Ints(BudgetTable.CostElement);
        var amounts = budget.Longs(BudgetTable.Converted);
        var hours = budget.Longs(BudgetTable.Hours);
        for (var row = 0; row < owners.Length; row++)
        {
            if (
                owners[row] is var package and >= 0
                && Cell.IsGiven(amounts[row])
                && costElements[row] >= 0
            )
            {
                Budget[(package * CostElements.Count) + costElements[row]] += amounts[row];
                TotalBudget[package] += amounts[row];
                BudgetHours[package] += Cell.IsGiven(hours[row]) ? hours[row] : 0;
            }
        }
    }
}
