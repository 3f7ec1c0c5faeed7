using System.Numerics;
using CsCheck;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Tests.Foundation;

public class PeriodSeriesTests
{
    private const int Series = 7;
    private const int Periods = 12;

    [Fact]
    public void Bookings_in_any_order_add_up_by_series_and_period() =>
        Gen.Select(Gen.Int[0, Series - 1], Gen.Int[0, Periods - 1], Gen.Long[-50, 50])
            .Array[0, 300]
            .Sample(bookings =>
            {
                var sums = new SeriesSums(Series, Periods, expected: 10);
                var expected = new long[Series * Periods];
                foreach (var (series, period, amount) in bookings)
                {
                    sums.Add(series, period, amount);
                    expected[(series * Periods) + period] += amount;
                }

                var booked = sums.Build();
                for (var series = 0; series < Series; series++)
                {
                    var byPeriod = new long[Periods];
                    booked.AddChangesTo(series, byPeriod);
                    Assert.Equal(expected[(series * Periods)..((series + 1) * Periods)], byPeriod);
                    Assert.Equal(
                        booked.PeriodsOf(series).ToArray().Distinct().Order(),
                        booked.PeriodsOf(series).ToArray()
                    );
                }
            });

    [Fact]
    public void Running_totals_are_kept_as_changes_and_periods_without_one_take_no_room()
    {
        var builder = new PeriodSeries.Builder(3);
        builder.AddTotals(2, 4, [0, 10, 10, 25, 25]);
        builder.AddTotals(0, 0, []);
        builder.AddTotals(1, 1, [-5]);
        var series = builder.Build();

        Assert.Equal([5, 7], series.PeriodsOf(2));
        Assert.Equal([10L, 15L], series.ChangesOf(2));
        Assert.Equal([1], series.PeriodsOf(1));
        Assert.True(series.PeriodsOf(0).IsEmpty);
        Assert.Equal(10, series.At(2, 6));
        Assert.Equal(25, series.At(2, 11));
    }

    [Fact]
    public void Shares_of_many_parts_are_rounded_half_away_from_zero_whatever_the_amount() =>
        Gen.Select(
                Gen.OneOf(Gen.Long[-1_000, 1_000_000], Gen.Long),
                Gen.OneOf(Gen.Long[1, 1_000], Gen.Long[1, long.MaxValue]),
                Gen.Double[0, 1].Array[0, 20]
            )
            .Where((amount, _, _) => amount > long.MinValue)
            .Sample(
                (amount, whole, places) =>
                {
                    var parts = Array.ConvertAll(
                        places,
                        place => Math.Clamp((long)(place * whole), 0, whole)
                    );
                    var totals = new long[parts.Length];
                    Share.Totals(amount, parts, whole, totals);
                    Assert.Equal(
                        Array.ConvertAll(parts, part => Rounded(amount, part, whole)),
                        totals
                    );
                    Assert.Equal(
                        Array.ConvertAll(parts, part => new Share(part, whole).Of(amount)),
                        totals
                    );
                }
            );

    [Fact]
    public void Every_day_between_the_first_and_the_last_end_lies_in_the_period_that_a_search_finds()
    {
        // months of unequal length, and a period of one day
        DateOnly[] ends =
        [
            new(2026, 1, 31),
            new(2026, 2, 28),
            new(2026, 3, 1),
            new(2026, 3, 31),
            new(2026, 6, 30),
        ];
        var table = PeriodTable.Definition;
        var columns = table.Columns.Select(column => column.NewBuilder()).ToArray();
        foreach (var end in ends)
        {
            ((TextColumnBuilder)columns[PeriodTable.Period.Index]).Add($"{end:yyyy-MM-dd}");
            ((NumberColumnBuilder<int>)columns[PeriodTable.End.Index]).Add(end.DayNumber);
        }

        var timeline = new PeriodTimeline(
            new Table(table, [1, 2, 3, 4, 5], Array.ConvertAll(columns, column => column.Build())),
            null
        );
        var each = timeline.FirstEndingFromEach();

        Assert.Equal(ends[^1].DayNumber - ends[0].DayNumber + 1, each.Length);
        for (var day = 0; day < each.Length; day++)
        {
            Assert.Equal(timeline.FirstEndingFrom(ends[0].AddDays(day)), each[day]);
        }
    }

    private static long Rounded(long amount, long part, long whole)
    {
        var magnitude = ((2 * BigInteger.Abs(amount) * part) + whole) / (2 * (BigInteger)whole);
        return (long)(amount < 0 ? -magnitude : magnitude);
    }
}
