using CsCheck;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Tests.Breakdown;

public class RollUpTests
{
    private static readonly Gen<int[]> Parents = Gen.Int[0, 1_000_000]
        .Array[0, 200]
        .Select(picks =>
        {
            var parents = new int[picks.Length + 1];
            parents[0] = -1;
            for (var row = 1; row < parents.Length; row++)
            {
                parents[row] = picks[row - 1] % row;
            }

            return parents;
        });

    [Fact]
    public void The_total_at_every_element_is_the_sum_over_its_subtree() =>
        Gen.Select(Parents, Gen.Long[-1_000_000, 1_000_000].Array[201])
            .Sample(
                (parents, amounts) =>
                {
                    var (order, level) = InDepthFirstOrder(parents);
                    var own = Array.ConvertAll(order, row => amounts[row]);
                    var totals = new long[own.Length];
                    RollUp.Totals(level, level.Max(), own, totals);

                    var expected = amounts[..parents.Length].ToArray();
                    for (var row = parents.Length - 1; row > 0; row--)
                    {
                        expected[parents[row]] += expected[row];
                    }

                    return order
                        .Select((row, place) => totals[place] == expected[row])
                        .All(same => same);
                }
            );

    [Fact]
    public void Several_measures_in_one_walk_have_the_totals_that_each_has_alone() =>
        Gen.Select(
                Parents,
                Gen.Long[long.MinValue / 1_000, long.MaxValue / 1_000].Array[201].Array[0, 9]
            )
            .Sample(
                (parents, amounts) =>
                {
                    var (_, level) = InDepthFirstOrder(parents);
                    var own = Array.ConvertAll(amounts, column => column[..level.Length]);
                    var together = Array.ConvertAll(own, _ => new long[level.Length]);
                    RollUp.Totals(level, level.Max(), own, together);
                    for (var measure = 0; measure < own.Length; measure++)
                    {
                        var alone = new long[level.Length];
                        RollUp.Totals(level, level.Max(), own[measure].AsSpan(), alone.AsSpan());
                        Assert.Equal(alone, together[measure]);
                    }

                    RollUp.Totals(level, level.Max(), own, own);
                    Assert.Equal(together, own);
                }
            );

    [Theory]
    [InlineData(0, long.MaxValue, 1)]
    [InlineData(1, long.MaxValue, 1)]
    [InlineData(2, long.MinValue, -1)]
    [InlineData(3, long.MaxValue, 1)]
    public void A_total_that_does_not_fit_is_refused_whichever_measure_it_is_of(
        int measure,
        long above,
        long below
    )
    {
        // in the parent; and between two sisters, where the parent's total would fit again
        foreach (var amounts in new[] { new[] { above, below, 0 }, [-(above / 2), above, below] })
        {
            var own = Enumerable.Range(0, 4).Select(_ => new long[3]).ToArray();
            own[measure] = amounts;
            Assert.Throws<OverflowException>(() =>
                RollUp.Totals([1, 2, 2], 2, own, Array.ConvertAll(own, _ => new long[3]))
            );
        }
    }

    [Fact]
    public void In_depth_first_order_a_subtree_is_one_piece_and_sisters_keep_their_order() =>
        Parents.Sample(parents =>
        {
            var (order, level) = InDepthFirstOrder(parents);
            Assert.Equal(Enumerable.Range(0, parents.Length), order.Order());
            var place = new int[order.Length];
            for (var at = 0; at < order.Length; at++)
            {
                place[order[at]] = at;
            }

            for (var row = 1; row < parents.Length; row++)
            {
                Assert.True(place[parents[row]] < place[row]);
            }

            for (var at = 1; at < order.Length; at++)
            {
                Assert.True(level[at] <= level[at - 1] + 1);
            }
        });

    [Fact]
    public void Sisters_without_an_order_stand_by_code_after_those_that_have_one()
    {
        int[] order = DepthFirstOrder.Of(
            [-1, 0, 0, 0, 0],
            [Cell.NoInt, Cell.NoInt, 2, Cell.NoInt, 1],
            ["1", "1.10", "1.30", "1.2", "1.40"]
        );
        Assert.Equal([0, 4, 2, 3, 1], order);
    }

    [Fact]
    public void A_ring_of_parents_is_found_whole_and_in_order()
    {
        var rings = DepthFirstOrder.Rings([-1, 2, 3, 1, 0, 4]).ToList();
        Assert.Equal([1, 2, 3], Assert.Single(rings));
    }

    private static (int[] Order, int[] Level) InDepthFirstOrder(int[] parents)
    {
        var order = DepthFirstOrder.Of(
            parents,
            [],
            [
                .. parents.Select(
                    (_, row) => row.ToString(System.Globalization.CultureInfo.InvariantCulture)
                ),
            ]
        );
        var levelOf = new int[parents.Length];
        for (var row = 0; row < parents.Length; row++)
        {
            levelOf[row] = parents[row] < 0 ? 1 : levelOf[parents[row]] + 1;
        }

        return (order, Array.ConvertAll(order, row => levelOf[row]));
    }
}
