using System.Globalization;
using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Status;
using Plenum.Workbench.Standards;

namespace Plenum.Workbench.Tests.Standards;

/// <summary>A standard breakdown saved from a project holds its structure and nothing of its people, money and dates.</summary>
public class SavedStandardTests
{
    private static readonly string[] Tables =
    [
        "project",
        "part_types",
        "work_sets",
        "elements",
        "split_words",
        "not_needed",
        "left_out",
        "packages",
        "milestones",
        "estimate",
    ];

    [Fact]
    public void No_money_date_person_or_status_is_in_a_standard_breakdown()
    {
        var standard = ProjectStandard.Of(DemoFiles.Project, 0);
        foreach (var table in standard.Tables.Where(table => table.Count > 0))
        {
            Assert.Contains(table.Definition.Name, Tables);
            Assert.Empty(table.OwnFields);
            foreach (var column in table.Definition.Columns)
            {
                var isPrivate =
                    column.Kind is CellKind.Money or CellKind.Hours or CellKind.Date
                    || column.Targets.Any(target =>
                        target is "people" or "units" or "accounts" or "periods"
                    )
                    || column.Name is "rate" or "quantity" or "amount" or "currency";
                Assert.True(
                    !isPrivate
                        || Enumerable
                            .Range(0, table.Count)
                            .All(row => table[column].IsMissing(row)),
                    $"{column} is kept"
                );
            }
        }
    }

    [Fact]
    public void No_name_of_a_person_is_in_a_standard_breakdown()
    {
        var people = DemoFiles.Project[Core.People.PersonTable.Definition];
        var standard = ProjectStandard.Of(DemoFiles.Project, 0);
        var texts = TextsOf(standard).ToHashSet(StringComparer.Ordinal);
        for (var row = 0; row < people.Count; row++)
        {
            Assert.DoesNotContain(people.Texts(Core.People.PersonTable.Name)[row]!, texts);
            Assert.DoesNotContain(people.Codes[row]!, texts);
        }
    }

    [Fact]
    public void A_standard_breakdown_has_the_parts_logics_types_and_dictionary_of_its_project()
    {
        var project = DemoFiles.Project;
        var root = project[ElementTable.Definition].RowOfCode("03.4");
        var standard = ProjectStandard.Of(project, root);
        var (tree, whole) = (standard.Tree, project.Tree);

        Assert.Equal(whole.SubtreeEnd[root] - root, tree.Count);
        var text = new ProjectText(standard);
        var before = new ProjectText(project);
        for (var row = 0; row < tree.Count; row++)
        {
            Assert.Equal(whole.Code(root + row), tree.Code(row));
            Assert.Equal(whole.Level[root + row] - whole.Level[root] + 1, tree.Level[row]);
            foreach (
                var column in ProjectStandard
                    .Columns(ElementTable.Definition)
                    .Where(column =>
                        row > 0
                        || (
                            column != ElementTable.Parent
                            && column != ElementTable.Kind
                            && column != ElementTable.Order
                        )
                    )
            )
            {
                Assert.Equal(
                    before.Of(whole.Elements, root + row, column),
                    text.Of(tree.Elements, row, column)
                );
            }
        }
    }

    [Fact]
    public void A_standard_breakdown_is_a_project_file_that_opens_like_any_other()
    {
        using var folder = new TemporaryFolder();
        var path = folder["plant.plenum"];
        var saved = StandardLibrary.Save(
            DemoFiles.Project,
            "03",
            path,
            "a.planner",
            TimeProvider.System
        );
        using var opened = OpenProject.Open(
            path,
            TimeProvider.System,
            ct: TestContext.Current.CancellationToken
        );

        Assert.Equal("03", opened.Current.Settings.Code);
        Assert.Equal(saved.Tree.Count, opened.Current.Tree.Count);
        Assert.Equal(TextsOf(saved), TextsOf(opened.Current));
        Assert.Empty(opened.Current[ActualTable.Definition].Ids);
    }

    private static List<string> TextsOf(Project project)
    {
        var text = new ProjectText(project);
        return
        [
            .. from table in project.Tables
            from row in Enumerable.Range(0, table.Count)
            from column in table.Definition.Columns
            select text.Of(table, row, column)?.ToString(CultureInfo.InvariantCulture) into cell
            where cell is not null
            select cell,
        ];
    }
}
