using System.Numerics;
using CsCheck;
using Plenum.Core.Foundation;

namespace Plenum.Core.Tests.Foundation;

public class ExactnessTests
{
    [Fact]
    public void A_share_of_an_amount_is_rounded_once_half_away_from_zero() =>
        Gen.Select(
                Gen.Long[0, 1_000_000_000_000_000],
                Gen.Long[0, 1_000_000_000_000],
                Gen.Long[1, 1_000_000_000_000]
            )
            .Sample(
                (amount, part, whole) =>
                {
                    var capped = Math.Min(part, whole);
                    var expected =
                        ((2 * (BigInteger)amount * capped) + whole) / (2 * (BigInteger)whole);
                    return new Share(capped, whole).Of(amount) == (long)expected
                        && Share.Ratio(capped, whole).Of(amount) == (long)expected;
                }
            );

    [Fact]
    public void Shares_of_running_totals_add_up_to_the_whole() =>
        Gen.Select(Gen.Long[0, 1_000_000_000_000], Gen.Int[1, 60])
            .Sample(
                (amount, periods) =>
                {
                    var sum = 0L;
                    for (var period = 1; period <= periods; period++)
                    {
                        sum +=
                            new Share(period, periods).Of(amount)
                            - new Share(period - 1, periods).Of(amount);
                    }

                    return sum == amount;
                }
            );

    [Fact]
    public void A_sum_of_money_that_does_not_fit_is_an_error() =>
        Assert.Throws<OverflowException>(() => new Money(long.MaxValue) + new Money(1));

    [Fact]
    public void Amounts_of_other_currencies_are_converted_exactly_and_rounded_once()
    {
        var yen = new ForeignMoney(1_000, Currency.Parse("JPY"));
        Assert.Equal(new Money(617), yen.At(0.00617m, Currency.Euro));
        var dinar = new ForeignMoney(1_005, Currency.Parse("KWD"));
        Assert.Equal(new Money(151), dinar.At(1.5m, Currency.Euro));
    }

    [Fact]
    public void A_ratio_has_no_value_when_its_divisor_is_zero_or_negative()
    {
        Assert.Null(Ratio.Of(5, 0));
        Assert.Null(Ratio.Of(5, -1));
        Assert.Equal(2.5m, Ratio.Of(5, 2));
    }

    [Theory]
    [InlineData("0.8695652173913", "0.869565")]
    [InlineData("150000", "150000")]
    [InlineData("1234567.8", "1234570")]
    [InlineData("0.00012345678", "0.000123457")]
    public void Ratios_are_told_to_six_significant_digits(string exact, string told) =>
        Assert.Equal(
            decimal.Parse(told, System.Globalization.CultureInfo.InvariantCulture),
            Ratio.Significant(
                decimal.Parse(exact, System.Globalization.CultureInfo.InvariantCulture),
                6
            )
        );

    [Fact]
    public void Exact_fractions_round_like_whole_numbers_divided_by_hand() =>
        Gen.Select(Gen.Long[-1_000_000, 1_000_000], Gen.Long[1, 1_000])
            .Sample(
                (numerator, denominator) =>
                    new ExactFraction(numerator, denominator).RoundHalfAwayFromZero()
                        == (long)
                            Math.Round(
                                (decimal)numerator / denominator,
                                MidpointRounding.AwayFromZero
                            )
                    && new ExactFraction(numerator, denominator).Floor()
                        == (long)Math.Floor((decimal)numerator / denominator)
            );
}
