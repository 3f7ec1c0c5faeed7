using Plenum.Core;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;
using Plenum.Core.Status;
using Plenum.Workbench.Words;

namespace Plenum.Workbench.Questions;

/// <summary>What is in each control account, by its row: packages, open packages, budget in minor units.</summary>
internal sealed class AccountLoads
{
    /// <param name="project">The project.</param>
    /// <param name="period">Packages are open, or not, at the end of this period.</param>
    public AccountLoads(Project project, int period)
    {
        var placement = project.Placement;
        Packages = new int[placement.Accounts.Count];
        Open = new int[Packages.Length];
        Budget = new long[Packages.Length];
        IsOpen = new bool[project.Tree.PackageCount];
        for (var package = 0; package < IsOpen.Length; package++)
        {
            IsOpen[package] = OpenPackages.IsOpen(
                project.Baseline,
                project.Status,
                project.Periods,
                package,
                period
            );
            var account = placement.AccountOfPackage[package];
            if (account < 0)
            {
                PackagesWithoutAccount++;
                BudgetWithoutAccount += project.Baseline.TotalBudget[package];
                continue;
            }

            Packages[account]++;
            Open[account] += IsOpen[package] ? 1 : 0;
            Budget[account] += project.Baseline.TotalBudget[package];
        }
    }

    public int[] Packages { get; }

    public int[] Open { get; }

    public long[] Budget { get; }

    /// <summary>For each package whether it is open.</summary>
    public bool[] IsOpen { get; }

    public int PackagesWithoutAccount { get; }

    public long BudgetWithoutAccount { get; }
}

/// <summary>What each person answers for.</summary>
internal static class PersonLoads
{
    /// <summary>Everybody, by name.</summary>
    public static List<PersonLoad> Of(Project project, AccountLoads loads)
    {
        var people = project[PersonTable.Definition];
        var units = project[UnitTable.Definition];
        var accounts = project.Placement.Accounts;
        var accountsOf = RowGroups.By(
            Array.ConvertAll(
                accounts.Ints(AccountTable.Manager).ToArray(),
                id => id == Cell.NoInt ? -1 : people.RowOf(id)
            ),
            people.Count
        );
        var (inCharge, openInCharge) = InCharge(project, loads, people);
        List<PersonLoad> found = [];
        for (var person = 0; person < people.Count; person++)
        {
            var unit = people.Ints(PersonTable.Unit)[person];
            var own = accountsOf[person].ToArray();
            found.Add(
                new PersonLoad(
                    people.Codes[person]!,
                    PersonNames.Of(project, people.Ids[person]),
                    unit == Cell.NoInt ? null : units.Codes[units.RowOf(unit)],
                    unit == Cell.NoInt
                        ? null
                        : units.Texts(UnitTable.Name)[units.RowOf(unit)]
                            ?? units.Codes[units.RowOf(unit)],
                    [
                        .. own.Select(account => new ManagedAccount(
                                accounts.Codes[account]!,
                                accounts.Texts(AccountTable.Name)[account] ?? "",
                                project.Tree.Code(project.Placement.ElementRow[account]),
                                Major(project, loads.Budget[account]),
                                loads.Packages[account],
                                loads.Open[account]
                            ))
                            .OrderByDescending(account => account.Budget)
                            .ThenBy(account => account.Account, NaturalOrder.Codes),
                    ],
                    own.Sum(account => loads.Packages[account]),
                    own.Sum(account => loads.Open[account]),
                    Major(project, own.Sum(account => loads.Budget[account])),
                    inCharge[person],
                    openInCharge[person]
                )
                {
                    Id = people.Ids[person],
                    Beyond = project.Settings.MostOpenPackages is { } most
                        ? Math.Max(0, own.Sum(account => loads.Open[account]) - most)
                        : 0,
                }
            );
        }

        found.Sort((left, right) => string.CompareOrdinal(left.Name, right.Name));
        return found;
    }

    /// <summary>Packages for which each person is in charge, by row of the person, all and open.</summary>
    private static (int[] All, int[] Open) InCharge(
        Project project,
        AccountLoads loads,
        Table people
    )
    {
        var all = new int[people.Count];
        var open = new int[people.Count];
        var person = ElementSizes.Of(project).Person;
        for (var package = 0; package < loads.IsOpen.Length; package++)
        {
            if (person[project.Tree.PackageRows[package]] is var id && id != Cell.NoInt)
            {
                var row = people.RowOf(id);
                all[row]++;
                open[row] += loads.IsOpen[package] ? 1 : 0;
            }
        }

        return (all, open);
    }

    private static decimal Major(Project project, long minorUnits) =>
        project.Settings.Currency.ToMajorUnits(minorUnits);
}
