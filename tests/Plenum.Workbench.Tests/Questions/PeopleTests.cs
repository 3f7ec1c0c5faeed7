using Plenum.Core.Accounts;
using Plenum.Core.People;
using Plenum.Workbench.Questions;
using Plenum.Workbench.Words;

namespace Plenum.Workbench.Tests.Questions;

/// <summary>The plant by the organisation: nothing twice, nothing left out, and the figures of the accounts.</summary>
public class PeopleTests
{
    [Fact]
    public void Every_account_stands_exactly_once_where_its_element_meets_its_unit() =>
        GeneratedProjects.Each(
            (project, _) =>
            {
                var answer = new PeopleQuestion().Ask(project);
                var accounts = project[AccountTable.Definition];
                var text = new Plenum.Core.ProjectText(project);
                Assert.Equal(
                    Enumerable
                        .Range(0, accounts.Count)
                        .Select(row =>
                            (
                                accounts.Codes[row]!,
                                text.Word(accounts, row, AccountTable.Element)!,
                                text.Word(accounts, row, AccountTable.Unit)!,
                                text.Word(accounts, row, AccountTable.Manager)
                            )
                        )
                        .Order(),
                    answer
                        .Rows.SelectMany(row =>
                            row.Crossings.Select(crossing =>
                                (
                                    crossing.Account,
                                    row.Code,
                                    answer.Columns[crossing.Column].Code,
                                    crossing.Manager
                                )
                            )
                        )
                        .Order()
                );
            }
        );

    [Fact]
    public void The_matrix_ties_out_with_the_accounts_to_the_cent() =>
        GeneratedProjects.Each(
            (project, _) =>
            {
                var answer = new PeopleQuestion().Ask(project);
                var accounts = new AccountsQuestion().Ask(project);
                var budgets = accounts.Rows.ToDictionary(
                    row => row.Code,
                    row => row.BudgetAtCompletion,
                    StringComparer.Ordinal
                );
                Assert.Equal(
                    budgets
                        .Where(pair => !pair.Key.StartsWith('*'))
                        .OrderBy(pair => pair.Key, StringComparer.Ordinal),
                    answer
                        .Rows.SelectMany(row => row.Crossings)
                        .Select(crossing => KeyValuePair.Create(crossing.Account, crossing.Budget))
                        .OrderBy(pair => pair.Key, StringComparer.Ordinal)
                );
                Assert.Equal(budgets.GetValueOrDefault(Cut.NoAccount), answer.BudgetWithoutAccount);
                Assert.Equal(
                    budgets.GetValueOrDefault(Cut.UndistributedBudget),
                    answer.Undistributed
                );
                Assert.Equal(accounts.Total.BudgetAtCompletion, answer.Whole);
            }
        );

    [Fact]
    public void Rows_groups_and_units_add_up_to_the_same_total() =>
        GeneratedProjects.Each(
            (project, _) =>
            {
                var answer = new PeopleQuestion().Ask(project);
                var rows = answer.Rows.Where(row => !row.IsGroup).ToList();
                var groups = answer.Rows.Where(row => row.IsGroup).ToList();
                Assert.Equal(answer.Budget, rows.Sum(row => row.Budget));
                Assert.Equal(answer.Budget, groups.Sum(row => row.Budget));
                Assert.Equal(answer.Budget, answer.Columns.Sum(column => column.Budget));
                Assert.Equal(project[AccountTable.Definition].Count, rows.Sum(row => row.Accounts));
                Assert.Equal(
                    project[AccountTable.Definition].Count,
                    groups.Sum(row => row.Accounts)
                );
                Assert.Equal(project[AccountTable.Definition].Count, answer.Accounts);
                for (var column = 0; column < answer.Columns.Count; column++)
                {
                    var at = column;
                    var here = rows.SelectMany(row => row.Crossings)
                        .Where(crossing => crossing.Column == at)
                        .ToList();
                    Assert.Equal(
                        answer.Columns[column].Budget,
                        here.Sum(crossing => crossing.Budget)
                    );
                    Assert.Equal(answer.Columns[column].Accounts, here.Count);
                }
            }
        );

    [Fact]
    public void Every_row_stands_below_the_group_that_it_is_part_of() =>
        GeneratedProjects.Each(
            (project, _) =>
            {
                var group = -1;
                foreach (var row in new PeopleQuestion().Ask(project).Rows)
                {
                    if (row.IsGroup)
                    {
                        Assert.True(row.Position > group);
                        group = row.Position;
                        continue;
                    }

                    Assert.InRange(row.Position, group, project.Tree.SubtreeEnd[group] - 1);
                    Assert.True(
                        row.Position == group || group == 0 || project.Tree.Level[group] == 2
                    );
                    Assert.True(
                        row.Crossings.Count + row.Waiting.Count > 0
                            || project.Placement.AccountOfPackage.Contains(-1)
                    );
                }
            }
        );

    [Fact]
    public void Every_package_is_counted_once_for_a_manager_or_is_in_no_account() =>
        GeneratedProjects.Each(
            (project, _) =>
            {
                var answer = new PeopleQuestion().Ask(project);
                Assert.Equal(
                    project.Tree.PackageCount,
                    answer.People.Sum(person => person.Packages) + answer.PackagesWithoutAccount
                );
                Assert.Equal(
                    answer.Rows.SelectMany(row => row.Crossings).Sum(crossing => crossing.Open),
                    answer.People.Sum(person => person.Open)
                );
                Assert.All(
                    answer.People,
                    person =>
                    {
                        Assert.InRange(person.Open, 0, person.Packages);
                        Assert.InRange(person.OpenInCharge, 0, person.InCharge);
                        Assert.Equal(person.Budget, person.Accounts.Sum(account => account.Budget));
                    }
                );
            }
        );

    [Fact]
    public void Nothing_is_open_before_the_first_period_ends() =>
        GeneratedProjects.Each(
            (project, _) =>
            {
                var answer = new PeopleQuestion(new DateOnly(1999, 1, 1)).Ask(project);
                Assert.Null(answer.At);
                Assert.All(answer.People, person => Assert.Equal(0, person.Open));
            }
        );

    [Fact]
    public void Arrows_lead_to_every_crossing_and_to_every_account_and_back() =>
        GeneratedProjects.Each(
            (project, _) =>
            {
                var answer = new PeopleQuestion(All: true).Ask(project);
                List<MatrixPlace> reached = [];
                var row = answer.Rows.ToList().FindIndex(one => !one.IsGroup);
                for (
                    var at =
                        row < 0 || answer.Columns.Count == 0
                            ? null
                            : MatrixSteps.First(answer, row, 0);
                    at is not null;
                    at = MatrixSteps.Next(answer, at, "ArrowDown")
                )
                {
                    for (
                        var along = MatrixSteps.Next(answer, at, "Home");
                        along is not null;
                        along = MatrixSteps.Next(answer, along, "ArrowRight")
                    )
                    {
                        reached.Add(along);
                        if (MatrixSteps.Next(answer, along, "ArrowRight") is { } right)
                        {
                            Assert.Equal(along, MatrixSteps.Next(answer, right, "ArrowLeft"));
                        }
                    }
                }

                Assert.Equal(reached.Distinct(), reached);
                Assert.Equal(
                    answer
                        .Rows.SelectMany(one => one.Crossings)
                        .Select(crossing => crossing.Account),
                    reached.Select(place => place.Account).Where(account => account.Length > 0)
                );
                Assert.Equal(
                    answer.Rows.Count(one => !one.IsGroup) * answer.Columns.Count,
                    reached.Select(place => (place.Row, place.Column)).Distinct().Count()
                );
            }
        );

    [Fact]
    public void Packages_without_account_wait_at_one_crossing_each_if_they_have_a_unit() =>
        GeneratedProjects.Each(
            (project, _) =>
            {
                var answer = new PeopleQuestion().Ask(project);
                var units = project.Tree.Inherited(Core.Breakdown.ElementTable.Unit);
                Assert.Equal(
                    Enumerable
                        .Range(0, project.Tree.PackageCount)
                        .Count(package =>
                            project.Placement.AccountOfPackage[package] < 0
                            && units[project.Tree.PackageRows[package]]
                                != Core.Foundation.Tables.Cell.NoInt
                        ),
                    answer
                        .Rows.SelectMany(row => row.Waiting)
                        .Sum(waiting => waiting.Packages)
                );
            }
        );

    [Fact]
    public void The_demo_plant_says_how_many_answer_and_what_is_in_no_account()
    {
        var answer = new PeopleQuestion().Ask(GeneratedProjects.Demo);
        Assert.Equal(
            "97 control accounts stand where the plant meets 8 units, and 15 managers answer for them. "
                + "10 packages are in no account.",
            PeopleSentence.Of(answer)
        );
        Assert.Equal("Rosa Velde", answer.Managers().First().Name);
        Assert.Equal(
            ["Rosa Velde", "Anneke Brandt", "Jonas Harrow"],
            answer.Managers("MEC").Select(one => one.Name)
        );
    }
}
