using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Workbench.Tests.Questions;

namespace Plenum.Workbench.Tests.Parts;

/// <summary>The matrix of parts by activities against a slow look at every cell.</summary>
public class MatrixTests
{
    [Fact]
    public void Every_cell_says_what_a_look_at_the_elements_below_the_part_says()
    {
        Check(GeneratedProjects.Demo);
        GeneratedProjects.Each((project, _) => Check(project));
    }

    [Fact]
    public void Columns_stand_by_facet_in_the_order_of_the_work()
    {
        using var hall = new PumpHall();
        Assert.Equal(
            [
                "engineering Design",
                "procurement Manufacture",
                "procurement Factory test",
                "construction Erection",
                "commissioning Commissioning",
            ],
            hall.Now.ActivityMatrix.Columns.Select(column => $"{column.Facet} {column.Activity}")
        );
    }

    [Fact]
    public void A_cell_is_compared_with_the_part_of_the_same_name_in_the_sister_train()
    {
        using var hall = new PumpHall();
        var matrix = hall.Now.ActivityMatrix;
        var part = matrix.PartAt(hall.Now.Tree.Elements.RowOfCode("H.2.1"));
        var sisters = CellSisters.Of(matrix, part, matrix.ColumnOf("Factory test"));
        Assert.Equal(SisterCircle.SameNameBesideParent, sisters.Circle);
        Assert.Equal(8_800, sisters.Median);
        Assert.Equal(
            ["H.1.1", "H.2.1"],
            sisters.Parts.Select(other => hall.Now.Tree.Code(matrix.PartRows[other]))
        );
    }

    [Theory]
    [InlineData(10_000, new[] { 33.33, 33.33, 33.34 }, new long[] { 3_333, 3_333, 3_334 })]
    [InlineData(1, new[] { 50.0, 50.0 }, new long[] { 1, 0 })]
    [InlineData(999, new[] { 10.0, 0.0, 15.5 }, new long[] { 100, 0, 155 })]
    public void Shares_add_up_to_what_is_allotted(long allotted, double[] percents, long[] amounts)
    {
        decimal[] shares = [.. percents.Select(percent => (decimal)percent)];
        Assert.Equal(amounts, ShareOut.Of(allotted, shares));
    }

    private static void Check(Project project)
    {
        var tree = project.Tree;
        var matrix = project.ActivityMatrix;
        var single = new PartActivities(
            tree,
            project[WorkSetTable.Definition],
            project[NotNeededTable.Definition]
        );
        var (cells, decided) = (0, 0);
        for (var row = 0; row < tree.Count; row++)
        {
            var needed = single.Needed(row);
            var part = matrix.PartAt(row);
            Assert.Equal(needed.Count > 0, part >= 0);
            if (part < 0)
            {
                continue;
            }

            var planned = single.Planned(row);
            Assert.Equal(
                needed,
                matrix.Cells(part).Select(cell => matrix.Columns[cell.Column].Activity)
            );
            foreach (var cell in matrix.Cells(part))
            {
                var activity = matrix.Columns[cell.Column].Activity;
                var isPlanned = planned.Contains(activity);
                var isRuledOut = single.IsRuledOut(row, activity);
                Assert.Equal(isPlanned, cell.PackageRow >= 0);
                Assert.Equal(isRuledOut, cell.ReasonRow >= 0);
                Assert.Equal(isPlanned != isRuledOut, cell.IsDecided);
                Assert.Equal(cell, matrix.CellOf(part, cell.Column));
                cells++;
                decided += cell.IsDecided ? 1 : 0;
            }
        }

        Assert.Equal((decided, cells), (matrix.DecidedCount, matrix.CellCount));
        Assert.Equal((decided, cells), matrix.Count(0, matrix.PartRows.Length));
        Assert.Equal(cells - decided, matrix.Undecided(0, matrix.PartRows.Length).Sum());
    }
}
