using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Oracle.Generator;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Commands.Breakdown;
using Plenum.Workbench.Tests.Audit;
using Plenum.Workbench.Tests.Oracle;

namespace Plenum.Workbench.Tests.Commands;

/// <summary>
/// Nothing is lost and nothing counted twice when work is divided or merged. Source of the rule: MIL-STD-881F section 1
/// and GAO-20-195G step 4 (children hold all of the parent's work, each piece in one place); seen in public summaries.
/// </summary>
public sealed class MergeAndDivideTests
{
    [Fact]
    public void A_divided_package_keeps_its_budget_to_the_last_cent()
    {
        var desk = Desk.Of(Answers.Import(WithOpenPackage()));
        var package = desk.Id("OPEN");
        var before = desk.Current.Totals.Budget[0];
        desk.Edit(new DivideElementCommand(package, ["East", "Middle", "West"]), "Ann");
        Assert.Equal(before, desk.Current.Totals.Budget[0]);
        var tree = desk.Current.Tree;
        var row = tree.Elements.RowOf(package);
        Assert.Equal(
            [33_33L, 33_34L, 33_33L],
            Enumerable.Range(row + 1, 3).Select(child => desk.Current.Totals.Budget[child])
        );
        Assert.Equal(ElementTable.Branch, tree.Kind(row));
    }

    [Fact]
    public void Shares_that_are_given_divide_it_so()
    {
        var desk = Desk.Of(Answers.Import(WithOpenPackage()));
        desk.Edit(new DivideElementCommand(desk.Id("OPEN"), ["A", "B"], [3, 1]), "Ann");
        var row = desk.Current.Tree.Elements.RowOf(desk.Id("OPEN"));
        Assert.Equal(75_00L, desk.Current.Totals.Budget[row + 1]);
        Assert.Equal(25_00L, desk.Current.Totals.Budget[row + 2]);
    }

    [Fact]
    public void What_was_divided_and_merged_again_has_the_budget_it_had()
    {
        var desk = Desk.Of(Answers.Import(WithOpenPackage()));
        var package = desk.Id("OPEN");
        desk.Edit(new DivideElementCommand(package, ["East", "Middle", "West"]), "Ann");
        var row = desk.Current.Tree.Elements.RowOf(package);
        int[] parts =
        [
            .. Enumerable.Range(row + 1, 3).Select(at => desk.Current.Tree.Elements.Ids[at]),
        ];
        desk.Edit(new MergeElementsCommand(parts[0], parts[1..]), "Ann");
        Assert.Equal(
            100_00L,
            desk.Current.Totals.Budget[desk.Current.Tree.Elements.RowOf(parts[0])]
        );
        Assert.Equal("2026-05-04", desk.Cell(PackageTable.Start, PlanOf(desk, parts[0])));
    }

    [Fact]
    public void Merging_and_dividing_never_change_the_budget_of_the_whole_project()
    {
        for (var seed = 0; seed < 200; seed++)
        {
            var random = new Random(seed);
            var desk = Desk.Of(Answers.Import(ProjectGenerator.Project(seed)));
            for (var edit = 0; edit < 6; edit++)
            {
                var before = desk.Current.Totals.Budget[0];
                var tree = desk.Current.Tree;
                var ids = tree.Elements.Ids;
                var row = random.Next(tree.Count);
                var sister = random.Next(tree.Count);
                try
                {
                    desk.Edit(
                        random.Next(2) == 0
                            ? new DivideElementCommand(ids[row], ["One", "Two", "Three"])
                            : new MergeElementsCommand(ids[row], [ids[sister]]),
                        "Ann"
                    );
                }
                catch (EditException)
                {
                    continue; // reported on, or no sisters
                }

                Assert.True(before == desk.Current.Totals.Budget[0], $"seed {seed}, edit {edit}");
            }
        }
    }

    [Fact]
    public void Work_that_was_reported_on_is_neither_divided_nor_merged()
    {
        var desk = Desk.Of(Answers.Import(SoundProject.Make()));
        var status = desk.Current[Core.Status.StatusTable.Definition];
        var (_, package) = Core.Status.StatusTable.Package.DecodeReference(
            status.Ints(Core.Status.StatusTable.Package)[0]
        );
        var wrong = Assert.Throws<EditException>(() =>
            desk.Edit(new DivideElementCommand(package, ["One", "Two"]), "Ann")
        );
        Assert.Contains("What has happened", wrong.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("One", "", "Give each part a name; there are at least two.")]
    [InlineData("One", null, "Give each part a name; there are at least two.")]
    public void A_package_is_divided_into_two_named_parts_at_least(
        string one,
        string? other,
        string message
    )
    {
        var desk = Desk.Of(Answers.Import(WithOpenPackage()));
        var wrong = Assert.Throws<EditException>(() =>
            desk.Edit(
                new DivideElementCommand(desk.Id("OPEN"), other is null ? [one] : [one, other]),
                "Ann"
            )
        );
        Assert.Equal(message, wrong.Message);
    }

    private static int PlanOf(EditDesk desk, int element)
    {
        var packages = desk.Current[PackageTable.Definition];
        var owners = packages.Ints(PackageTable.Package);
        for (var row = 0; row < packages.Count; row++)
        {
            if (owners[row] == element)
            {
                return packages.Ids[row];
            }
        }

        return 0;
    }

    /// <summary>The pumping plant with one more package, of 100 and 10 hours, on which nothing was reported yet.</summary>
    private static Plenum.Oracle.Tables.TextProject WithOpenPackage()
    {
        var text = SoundProject.Make();
        var root = text.Rows("elements").First(row => row["parent"] is null or "")["code"]!;
        SoundProject.AddElement(text, "OPEN", root, "Landscaping");
        SoundProject.AddPackage(text, "OPEN");
        return text;
    }
}
