using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Oracle.Generator;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Tests.Oracle;

namespace Plenum.Workbench.Tests.Commands;

/// <summary>Elements stand in depth-first order, sisters by their order and then by code, after any edit.</summary>
public sealed class OrderTests
{
    [Fact]
    public void An_edit_leaves_the_elements_where_sorting_all_of_them_anew_would()
    {
        for (var seed = 0; seed < 200; seed++)
        {
            var random = new Random(seed);
            var desk = Desk.Of(Answers.Import(ProjectGenerator.Project(seed % 40)));
            for (var edit = 0; edit < 8; edit++)
            {
                try
                {
                    desk.Edit(RandomCommands.Draw(desk.Current, random), "Ann");
                }
                catch (EditException)
                {
                    continue;
                }

                var elements = desk.Current[ElementTable.Definition];
                var order = DepthFirstOrder.Of(
                    ParentRules.ParentRows(elements, ElementTable.Parent),
                    elements.Ints(ElementTable.Order),
                    elements.Codes
                );
                Assert.True(
                    order.SequenceEqual(Enumerable.Range(0, elements.Count)),
                    $"seed {seed}, edit {edit}"
                );
                Assert.All(
                    Enumerable.Range(0, elements.Count),
                    row => Assert.Equal(row, elements.RowOfCode(elements.Codes[row]))
                );
            }
        }
    }
}
