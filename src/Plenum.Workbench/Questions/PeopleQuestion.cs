using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;
using Plenum.Core.People.Audit;
using Plenum.Workbench.Words;

namespace Plenum.Workbench.Questions;

/// <summary>Who answers for which part: the plant by the organisation, and how much each person has.</summary>
/// <param name="At">Open packages are counted at the last period end on or before it; null for the status date.</param>
/// <param name="All">Every crossing at which an account could stand, not only those that have one or wait for one.</param>
public sealed record PeopleQuestion(DateOnly? At = null, bool All = false)
{
    /// <summary>Cost: one walk over packages and accounts.</summary>
    public PeopleAnswer Ask(Project project)
    {
        var period = At is { } date ? project.Periods.LastEndedBy(date) : project.CurrentPeriod();
        var loads = new AccountLoads(project, period);
        var waiting = new WaitingPackages(project);
        var columns = Columns(project, loads, waiting);
        var placement = project.Placement;
        return new PeopleAnswer(
            period < 0 ? null : project.Periods.End(period),
            columns,
            [.. Rows(project, loads, columns, waiting)],
            PersonLoads.Of(project, loads),
            Major(project, loads.Budget.Sum()),
            loads.PackagesWithoutAccount,
            Major(project, loads.BudgetWithoutAccount),
            Major(project, BudgetLedger.Undistributed(project[PostingTable.Definition]))
        )
        {
            Units = project[UnitTable.Definition].Count,
            Limit = project.Settings.MostOpenPackages,
            LargestAccount = Major(project, loads.Budget.DefaultIfEmpty(0).Max()),
            Overlaps = new AccountOverlapRule(project.Tree, placement).Run().Count(),
            PackagesOfAnotherUnit = new AccountUnitRule(project.Tree, placement).Run().Count(),
        };
    }

    /// <summary>The units that have accounts, in the order of the organisation, each under its parent.</summary>
    private List<UnitColumn> Columns(Project project, AccountLoads loads, WaitingPackages waiting)
    {
        var units = project[UnitTable.Definition];
        var parentIds = units.Ints(UnitTable.Parent).ToArray();
        int[] parent = [.. parentIds.Select(id => id == Cell.NoInt ? -1 : units.RowOf(id))];
        var accounts = project.Placement.Accounts;
        var number = new int[units.Count];
        var budget = new long[units.Count];
        for (var account = 0; account < accounts.Count; account++)
        {
            var unit = units.RowOf(accounts.Ints(AccountTable.Unit)[account]);
            number[unit]++;
            budget[unit] += loads.Budget[account];
        }

        var isNamed = new bool[units.Count];
        foreach (var unit in waiting.Units)
        {
            isNamed[units.RowOf(unit)] = true;
        }

        // without any account, all crossings are open
        if (All || accounts.Count == 0)
        {
            HashSet<int> parents = [.. parent];
            for (var unit = 0; unit < units.Count; unit++)
            {
                isNamed[unit] |= !parents.Contains(unit);
            }
        }

        return
        [
            .. DepthFirstOrder
                .Of(parent, [], units.Codes)
                .Where(unit => number[unit] > 0 || isNamed[unit])
                .Select(unit => new UnitColumn(
                    units.Codes[unit]!,
                    NameOf(units, unit),
                    parent[unit] < 0 ? "" : NameOf(units, parent[unit]),
                    number[unit],
                    Major(project, budget[unit])
                )
                {
                    Id = units.Ids[unit],
                }),
        ];
    }

    private IEnumerable<MatrixRow> Rows(
        Project project,
        AccountLoads loads,
        List<UnitColumn> columns,
        WaitingPackages waiting
    )
    {
        var tree = project.Tree;
        var placement = project.Placement;
        var columnOf = columns
            .Select((column, at) => (column.Code, at))
            .ToDictionary(pair => pair.Code, pair => pair.at, StringComparer.Ordinal);
        MatrixRow? group = null;
        List<MatrixRow> members = [];
        for (var row = 0; row < tree.Count; row++)
        {
            if (tree.Level[row] <= GroupLevel)
            {
                foreach (var done in Closed(group, members))
                {
                    yield return done;
                }

                members = [];
                group = new MatrixRow(row, tree.Code(row), tree.Name(row), true, 0, 0, []);
            }

            int[] accounts = placement.AccountsOfElement[row].ToArray();
            if (
                accounts.Length > 0
                || waiting.At(row) is not null
                || (All || placement.Accounts.Count == 0) && waiting.CouldCarry(row)
            )
            {
                members.Add(
                    MemberRow(project, loads, columnOf, row, accounts) with
                    {
                        Waiting = WaitingAt(project, columnOf, waiting.At(row)),
                    }
                );
            }
        }

        foreach (var done in Closed(group, members))
        {
            yield return done;
        }
    }

    /// <summary>A group with the sums over its rows, then the rows; nothing where no account stands in it.</summary>
    private static IEnumerable<MatrixRow> Closed(MatrixRow? group, List<MatrixRow> members) =>
        group is null || members.Count == 0
            ? []
            : members.Prepend(
                group with
                {
                    Accounts = members.Sum(member => member.Accounts),
                    Budget = members.Sum(member => member.Budget),
                }
            );

    private static MatrixRow MemberRow(
        Project project,
        AccountLoads loads,
        Dictionary<string, int> columnOf,
        int row,
        int[] accounts
    )
    {
        var units = project[UnitTable.Definition];
        var people = project[PersonTable.Definition];
        var table = project.Placement.Accounts;
        var crossings = Array.ConvertAll(
            accounts,
            account =>
            {
                var manager = table.Ints(AccountTable.Manager)[account];
                return new Crossing(
                    columnOf[units.Codes[units.RowOf(table.Ints(AccountTable.Unit)[account])]!],
                    table.Codes[account]!,
                    table.Texts(AccountTable.Name)[account] ?? "",
                    manager == Cell.NoInt ? null : people.Codes[people.RowOf(manager)],
                    manager == Cell.NoInt ? null : PersonNames.Of(project, manager),
                    Major(project, loads.Budget[account]),
                    loads.Packages[account],
                    loads.Open[account]
                )
                {
                    Id = table.Ids[account],
                    ManagerId = manager == Cell.NoInt ? 0 : manager,
                };
            }
        );
        return new MatrixRow(
            row,
            project.Tree.Code(row),
            project.Tree.Name(row),
            false,
            crossings.Length,
            crossings.Sum(crossing => crossing.Budget),
            [
                .. crossings
                    .OrderBy(crossing => crossing.Column)
                    .ThenBy(crossing => crossing.Account, NaturalOrder.Codes),
            ]
        )
        {
            Id = project.Tree.Elements.Ids[row],
        };
    }

    private static IReadOnlyList<WaitingCrossing> WaitingAt(
        Project project,
        Dictionary<string, int> columnOf,
        IReadOnlyList<int>? packages
    )
    {
        if (packages is null)
        {
            return [];
        }

        var units = project[UnitTable.Definition];
        var inherited = project.Tree.Elements.Ints(ElementTable.Unit).ToArray();
        return
        [
            .. packages
                .GroupBy(package => UnitOf(project, inherited, package))
                .Where(group => group.Key != Cell.NoInt)
                .Select(group => new WaitingCrossing(
                    columnOf[units.Codes[units.RowOf(group.Key)]!],
                    group.Count(),
                    Major(project, group.Sum(package => project.Baseline.TotalBudget[package])),
                    HandedPackagesQuestion.Day(
                        group
                            .Select(package => project.Baseline.Start[package])
                            .Where(day => Cell.IsGiven(day))
                            .DefaultIfEmpty(Cell.NoInt)
                            .Min()
                    )
                ))
                .OrderBy(waiting => waiting.Column),
        ];
    }

    private static int UnitOf(Project project, int[] named, int package)
    {
        var row = project.Tree.PackageRows[package];
        while (row >= 0 && named[row] == Cell.NoInt)
        {
            row = project.Tree.Parent[row];
        }

        return row < 0 ? Cell.NoInt : named[row];
    }

    private const int GroupLevel = 2;

    private static string NameOf(Table units, int unit) =>
        units.Texts(UnitTable.Name)[unit] ?? units.Codes[unit]!;

    private static decimal Major(Project project, long minorUnits) =>
        project.Settings.Currency.ToMajorUnits(minorUnits);
}
