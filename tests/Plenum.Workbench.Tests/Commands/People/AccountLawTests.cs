using Plenum.Core;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Commands.People;
using Plenum.Workbench.Tests.Questions;

namespace Plenum.Workbench.Tests.Commands.People;

/// <summary>
/// Laws of control accounts under commands, on generated projects. Every package is in one account at most, and budgets
/// tie out; what was in no account may come into one, as the rule of placement says. Source: SAE EIA-748 guideline 5 (work is assigned to one account), guidelines 17 and 18 (costs roll up to one
/// element and one unit), GAO-16-89G App. III, as the project's reference says.
/// </summary>
public sealed class AccountLawTests
{
    [Fact]
    public void Two_merged_accounts_hold_what_both_held_and_nobody_else_loses_a_package() =>
        Each(
            (desk, dice) =>
            {
                if (Two(desk, dice) is not var (into, other))
                {
                    return;
                }

                var before = AccountOf(desk.Current);
                var budget = Budgets(desk.Current);
                if (!Tried(desk, new MergeAccountsCommand(into, other, Anyway: true)))
                {
                    return;
                }

                var after = AccountOf(desk.Current);
                for (var package = 0; package < before.Length; package++)
                {
                    var expected = before[package] == other ? into : before[package];
                    Assert.True(
                        after[package] == expected || before[package] == 0,
                        $"package {package}: {expected} expected, {after[package]} found"
                    );
                }

                var camealong = Enumerable
                    .Range(0, before.Length)
                    .Where(package => before[package] == 0 && after[package] == into)
                    .Sum(package => desk.Current.Baseline.TotalBudget[package]);
                Assert.Equal(
                    budget.GetValueOrDefault(into) + budget.GetValueOrDefault(other) + camealong,
                    Budgets(desk.Current).GetValueOrDefault(into)
                );
                Assert.Equal(budget.Values.Sum(), Budgets(desk.Current).Values.Sum());
            }
        );

    [Theory]
    [InlineData(DivideBy.Children)]
    [InlineData(DivideBy.Unit)]
    public void A_divided_account_has_each_of_its_packages_in_exactly_one_part(DivideBy by) =>
        Each(
            (desk, dice) =>
            {
                var accounts = desk.Current[AccountTable.Definition];
                if (accounts.Count == 0)
                {
                    return;
                }

                var account = accounts.Ids[dice.Next(accounts.Count)];
                var before = AccountOf(desk.Current);
                var budget = Budgets(desk.Current);
                HashSet<int> known = [.. accounts.Ids];
                if (!Tried(desk, new DivideAccountCommand(account, by, Anyway: true)))
                {
                    return;
                }

                var after = AccountOf(desk.Current);
                for (var package = 0; package < before.Length; package++)
                {
                    if (before[package] == account)
                    {
                        Assert.True(after[package] == account || !known.Contains(after[package]));
                        Assert.NotEqual(0, after[package]);
                    }
                    else
                    {
                        Assert.True(after[package] == before[package] || before[package] == 0);
                    }
                }

                var parts = Enumerable
                    .Range(0, before.Length)
                    .Where(package => before[package] == account)
                    .GroupBy(package => after[package])
                    .ToList();
                Assert.True(parts.Count > 1);
                Assert.Equal(
                    budget.GetValueOrDefault(account),
                    parts.Sum(part =>
                        part.Sum(package => desk.Current.Baseline.TotalBudget[package])
                    )
                );
                Assert.Equal(budget.Values.Sum(), Budgets(desk.Current).Values.Sum());
            }
        );

    [Fact]
    public void A_moved_account_keeps_its_packages() =>
        Each(
            (desk, dice) =>
            {
                var accounts = desk.Current[AccountTable.Definition];
                if (accounts.Count == 0)
                {
                    return;
                }

                var account = accounts.Ids[dice.Next(accounts.Count)];
                var units = desk.Current[UnitTable.Definition];
                var before = AccountOf(desk.Current);
                var command = new MoveAccountCommand(
                    account,
                    desk.Current.Tree.Elements.Ids[dice.Next(desk.Current.Tree.Count)],
                    units.Ids[dice.Next(units.Count)],
                    Anyway: true
                );
                if (!Tried(desk, command))
                {
                    return;
                }

                var after = AccountOf(desk.Current);
                for (var package = 0; package < before.Length; package++)
                {
                    Assert.True(after[package] == before[package] || before[package] == 0);
                }
            }
        );

    [Fact]
    public void A_placed_account_takes_in_only_its_units_packages_and_those_that_were_in_none() =>
        Each(
            (desk, dice) =>
            {
                var project = desk.Current;
                var (units, people) = (project[UnitTable.Definition], project[PersonTable.Definition]);
                if (units.Count == 0)
                {
                    return;
                }

                var unit = units.Ids[dice.Next(units.Count)];
                var before = AccountOf(project);
                var inherited = project.Tree.Inherited(Core.Breakdown.ElementTable.Unit);
                var command = new PlaceAccountCommand(
                    project.Tree.Elements.Ids[dice.Next(project.Tree.Count)],
                    unit,
                    people.Ids[0],
                    Anyway: true
                );
                var answer = desk.Edit(command, "Ann");
                var placed = Assert.Single(answer.Added(AccountTable.Definition));
                var after = AccountOf(desk.Current);
                for (var package = 0; package < before.Length; package++)
                {
                    Assert.True(
                        after[package] == before[package]
                            || before[package] == 0
                            || (
                                after[package] == placed
                                && inherited[project.Tree.PackageRows[package]] == unit
                            )
                    );
                }
            }
        );

    [Fact]
    public void Every_such_edit_is_one_step_that_can_be_taken_back() =>
        Each(
            (desk, dice) =>
            {
                var accounts = desk.Current[AccountTable.Definition];
                if (accounts.Count == 0)
                {
                    return;
                }

                var before = desk.Current;
                var account = accounts.Ids[dice.Next(accounts.Count)];
                EditCommand command = dice.Next(4) switch
                {
                    0 => new DivideAccountCommand(account, DivideBy.Children, Anyway: true),
                    1 => new DivideAccountCommand(account, DivideBy.Unit, Anyway: true),
                    2 => new RemoveAccountCommand(account),
                    _ => new MergeAccountsCommand(
                        account,
                        accounts.Ids[dice.Next(accounts.Count)],
                        Anyway: true
                    ),
                };
                if (Tried(desk, command))
                {
                    desk.Undo("Ann");
                }

                foreach (var (was, now) in before.Tables.Zip(desk.Current.Tables))
                {
                    var difference = TableDifference.Between(was, now);
                    Assert.Empty(difference.Rows.ToArray());
                }
            }
        );

    private static void Each(Action<EditDesk, Random> check) =>
        GeneratedProjects.Each((project, dice) => check(Desk.Of(project), dice));

    /// <summary>A refusal is an answer too: nothing has changed then.</summary>
    private static bool Tried(EditDesk desk, EditCommand command)
    {
        var before = desk.Current;
        try
        {
            desk.Edit(command, "Ann");
            return true;
        }
        catch (EditException)
        {
            Assert.Same(before, desk.Current);
            return false;
        }
    }

    private static (int, int)? Two(EditDesk desk, Random dice)
    {
        var ids = desk.Current[AccountTable.Definition].Ids;
        return ids.Length < 2
            ? null
            : dice.Next(ids.Length) is var at
                ? (ids[at], ids[(at + 1 + dice.Next(ids.Length - 1)) % ids.Length])
                : null;
    }

    private static int[] AccountOf(Project project) =>
        Array.ConvertAll(
            project.Placement.AccountOfPackage.ToArray(),
            row => row < 0 ? 0 : project.Placement.Accounts.Ids[row]
        );

    /// <summary>Budget of each account in minor units; 0 for the packages that are in none.</summary>
    private static Dictionary<int, long> Budgets(Project project) =>
        AccountOf(project)
            .Select((account, package) => (account, project.Baseline.TotalBudget[package]))
            .GroupBy(pair => pair.account, pair => pair.Item2)
            .ToDictionary(group => group.Key, group => group.Sum());
}
