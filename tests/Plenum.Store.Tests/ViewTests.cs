using System.Globalization;
using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;
using Plenum.Store.Tests.Support;

namespace Plenum.Store.Tests;

/// <summary>The views for people who read the file with SQL say what the program says.</summary>
public sealed class ViewTests : IDisposable
{
    private readonly TemporaryFolder folder = new();
    private readonly Project project = GeneratedProject.Of(31, 60);

    public ViewTests() => Projects.With(folder.File(), project).Dispose();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Every_view_can_be_read()
    {
        var views = Sql.Texts(folder.File(), "SELECT name FROM sqlite_schema WHERE type = 'view'");
        Assert.True(views.Count > 12);
        foreach (var view in views)
        {
            Assert.NotEmpty(Sql.Texts(folder.File(), $"SELECT * FROM \"{view}\""));
        }
    }

    [Fact]
    public void The_breakdown_has_every_element_with_level_kind_and_the_budget_below_it()
    {
        var tree = project.Tree;
        var budget = project[BudgetTable.Definition];
        var expected = new List<string>();
        for (var row = 0; row < tree.Count; row++)
        {
            var sum = 0m;
            for (var line = 0; line < budget.Count; line++)
            {
                var package = tree.Elements.RowOf(budget.Ints(BudgetTable.Package)[line]);
                if (
                    package >= row
                    && package < tree.SubtreeEnd[row]
                    && Cell.IsGiven(budget.Longs(BudgetTable.Converted)[line])
                )
                {
                    sum += budget.Longs(BudgetTable.Converted)[line] / 1_000m;
                }
            }

            var parent = tree.Parent[row] < 0 ? "" : tree.Code(tree.Parent[row]);
            expected.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{tree.Code(row)}|{parent}|{tree.Level[row]}|{ElementTable.Kinds.Format(tree.Kind(row))}|{sum:F0}"
                )
            );
        }

        Assert.Equal(
            expected.Order(StringComparer.Ordinal),
            Sql.Texts(
                    folder.File(),
                    "SELECT code, parent, level, kind, printf('%.0f', budget) FROM breakdown"
                )
                .Order(StringComparer.Ordinal),
            StringComparer.Ordinal
        );
    }

    [Fact]
    public void The_breakdown_gives_a_parent_before_its_children_and_a_subtree_in_one_piece()
    {
        var path = new Stack<string>();
        foreach (var row in Sql.Texts(folder.File(), "SELECT code, parent FROM breakdown"))
        {
            var (code, parent) = (row.Split('|')[0], row.Split('|')[1]);
            while (path.TryPeek(out var above) && above != parent)
            {
                path.Pop();
            }

            Assert.True(parent.Length == 0 || path.Count > 0, $"{code} stands apart from {parent}");
            path.Push(code);
        }
    }

    [Fact]
    public void The_control_account_of_every_package_is_the_one_that_the_program_finds()
    {
        var tree = project.Tree;
        var named = new int[tree.PackageCount];
        named.AsSpan().Fill(Cell.NoInt);
        var packages = project[PackageTable.Definition];
        for (var row = 0; row < packages.Count; row++)
        {
            var package = tree.PackageOfId(packages.Ints(PackageTable.Package)[row]);
            if (package >= 0)
            {
                named[package] = packages.Ints(PackageTable.Account)[row];
            }
        }

        var accounts = project[AccountTable.Definition];
        var placement = new AccountPlacement(tree, accounts, named);
        var expected = Enumerable
            .Range(0, tree.PackageCount)
            .Select(package =>
            {
                var account = placement.AccountOfPackage[package];
                return tree.Code(tree.PackageRows[package])
                    + "|"
                    + (account < 0 ? "" : accounts.Codes[account]);
            });
        Assert.Equal(
            expected.Order(StringComparer.Ordinal),
            Sql.Texts(folder.File(), "SELECT package, account FROM packages_by_account")
                .Order(StringComparer.Ordinal),
            StringComparer.Ordinal
        );
    }

    [Fact]
    public void The_person_in_charge_is_inherited_from_the_nearest_element_that_names_one()
    {
        var tree = project.Tree;
        var people = project[PersonTable.Definition];
        var inherited = tree.Inherited(ElementTable.Person);
        var expected = Enumerable
            .Range(0, tree.Count)
            .Select(row =>
                tree.Code(row)
                + "|"
                + (inherited[row] == Cell.NoInt ? "" : people.Codes[people.RowOf(inherited[row])])
            );
        Assert.Equal(
            expected.Order(StringComparer.Ordinal),
            Sql.Texts(folder.File(), "SELECT code, person FROM responsibility")
                .Order(StringComparer.Ordinal),
            StringComparer.Ordinal
        );
    }

    [Fact]
    public void An_accrual_is_reversed_in_the_next_period_unless_accruals_stay_as_booked()
    {
        // Constructed: 100.000 KWD accrued in the first of two periods; 80.000 invoiced in the second.
        Projects.New(folder.File("small.plenum")).Dispose();
        Sql.Run(
            folder.File("small.plenum"),
            """
            UPDATE plenum SET value = '1000' WHERE "key" = 'currency_minor_units';
            INSERT INTO elements (id, code, name, parent_id) VALUES (1, '1', 'Tank farm', NULL), (2, '1.1', 'Tank', 1);
            INSERT INTO periods (id, period, "end") VALUES (1, 'P2', '2026-02-28'), (2, 'P1', '2026-01-31');
            INSERT INTO actuals (document, line, charge_element_id, period_id, cost_element, amount_minor, converted_minor, kind)
            VALUES ('A', '1', 2, 2, 'labour', 100000, 100000, 'accrual'), ('B', '1', 2, 1, 'labour', 80000, 80000, NULL);
            """
        );
        const string Query =
            "SELECT package, period, actual_cost FROM actual_cost_by_package_and_period ORDER BY period";
        Assert.Equal(
            ["1.1|P1|100.0", "1.1|P2|-20.0"],
            Sql.Texts(folder.File("small.plenum"), Query)
        );

        Sql.Run(
            folder.File("small.plenum"),
            "INSERT INTO project (\"key\", value) VALUES ('accruals', 'as_booked')"
        );
        Assert.Equal(
            ["1.1|P1|100.0", "1.1|P2|80.0"],
            Sql.Texts(folder.File("small.plenum"), Query)
        );
    }

    [Fact]
    public void Actual_cost_by_account_ties_out_with_the_ledger()
    {
        Assert.Equal(
            Sql.Texts(
                folder.File(),
                "SELECT printf('%.3f', sum(converted_minor) / 1000.0) FROM booked_cost"
            ),
            Sql.Texts(
                folder.File(),
                "SELECT printf('%.3f', sum(actual_cost)) FROM actual_cost_by_account_and_period"
            )
        );
    }

    [Fact]
    public void The_audit_trail_has_a_row_for_each_command_and_table()
    {
        using (var file = ProjectFile.Open(folder.File()))
        {
            file.SetText(file.Loaded(), ElementTable.Name, 1, "renamed");
        }

        Assert.Equal(
            ["2|planner|import|first issue|elements|0|1|0"],
            Sql.Texts(
                folder.File(),
                "SELECT revision, person, command, reason, \"table\", added, updated, removed FROM audit_trail WHERE revision = 2"
            )
        );
    }
}
