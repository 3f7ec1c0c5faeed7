using Plenum.Oracle.Model;
using Plenum.Oracle.Tables;

namespace Plenum.Oracle.Tests;

public sealed class NumbersTests
{
    [Theory]
    [InlineData("2.5", 3)]
    [InlineData("-2.5", -3)]
    [InlineData("2.4999", 2)]
    [InlineData("-0.5", -1)]
    [InlineData("0", 0)]
    public void Halves_are_rounded_away_from_zero(string number, int rounded) =>
        Assert.Equal(rounded, Ratio.Parse(number).RoundHalfAway());

    [Fact]
    public void Floor_and_ceiling_hold_for_negative_numbers()
    {
        Assert.Equal(-2, new Ratio(-3, 2).Floor());
        Assert.Equal(-1, new Ratio(-3, 2).Ceiling());
        Assert.Equal(2, new Ratio(3, 2).Ceiling());
    }

    [Fact]
    public void Quotient_by_zero_or_a_negative_number_is_undefined()
    {
        Assert.Null(Ratio.Quotient(1, 0));
        Assert.Null(Ratio.Quotient(1, -2));
        Assert.Equal(new Ratio(-1, 2), Ratio.Quotient(-1, 2));
    }

    [Theory]
    [InlineData("100", "JPY", "0.0061", "EUR", 61)]
    [InlineData("1.005", "KWD", "1", "EUR", 101)]
    [InlineData("-1.005", "KWD", "1", "EUR", -101)]
    [InlineData("12.50", "EUR", "160", "JPY", 2000)]
    [InlineData("12.50", "", "", "EUR", 1250)]
    public void Another_currency_is_converted_once_at_the_row(
        string amount,
        string currency,
        string rate,
        string projectCurrency,
        int minorUnits
    ) => Assert.Equal(minorUnits, Currency.Converted(amount, currency, rate, projectCurrency));

    [Fact]
    public void More_decimals_than_the_currency_has_are_refused() =>
        Assert.Throws<FormatException>(() => Currency.MinorUnits("1.5", "JPY"));

    [Fact]
    public void Runs_of_digits_in_codes_compare_as_numbers()
    {
        string[] codes = ["CA-10", "1.10", "CA-2", "1.9", "1", "1.9.1"];
        Assert.Equal(
            "1 1.9 1.9.1 1.10 CA-2 CA-10",
            string.Join(' ', codes.Order(NaturalOrder.Instance))
        );
    }

    [Fact]
    public void Calendar_has_a_week_and_exceptions()
    {
        var saturday = new DateOnly(2026, 1, 10);
        var calendar = new Calendar(
            "1111100",
            new Dictionary<DateOnly, bool> { [saturday] = true, [new(2026, 1, 6)] = false }
        );
        Assert.Equal(5, Calendar.MondayToFriday.WorkingDays(new(2026, 1, 5), new(2026, 1, 11)));
        Assert.True(calendar.IsWorkingDay(saturday));
        Assert.Equal(5, calendar.WorkingDays(new(2026, 1, 5), new(2026, 1, 11)));
        Assert.Equal(1, calendar.WorkingDays(new(2026, 1, 5), new(2026, 1, 6)));
    }

    [Fact]
    public void Cells_with_separators_quotes_or_line_ends_are_quoted()
    {
        var project = new TextProject();
        project.Add("t", ("a", "plain"), ("b", "one, \"two\""));
        project.Add("t", ("c", "line\nend"), ("a", " space"));
        Assert.Equal(
            "a,b,c\r\nplain,\"one, \"\"two\"\"\",\r\n\" space\",,\"line\nend\"\r\n",
            CsvFolder.Text(project.Rows("t"))
        );
    }

    [Fact]
    public void Tables_are_written_one_file_each()
    {
        var folder = Directory.CreateTempSubdirectory("oracle").FullName;
        try
        {
            CsvFolder.Write(new Small().Text, folder);
            var files = Directory.GetFiles(folder).Select(Path.GetFileName);
            Assert.Equal(
                "elements.csv periods.csv project.csv",
                string.Join(' ', files.Order(StringComparer.Ordinal))
            );
            Assert.StartsWith(
                "period,end\r\nP1,2026-01-11\r\n",
                File.ReadAllText(Path.Combine(folder, "periods.csv"))
            );
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
