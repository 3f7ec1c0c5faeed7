using System.IO.Compression;
using System.Text;

namespace Plenum.Exchange.Tests;

public sealed class Writing : IDisposable
{
    private readonly Desk desk = new();

    public void Dispose() => desk.Dispose();

    [Fact]
    public void Csv_is_utf_8_with_line_feeds_commas_and_quotation_marks_only_where_needed()
    {
        using (var writer = new CsvTablesWriter(desk.PathOf("out")))
        {
            writer.StartTable("status", ["package", "percent", "on", "x_a;b"]);
            writer.Text("P 1;ä");
            writer.Number(12.50m);
            writer.Date(new DateOnly(2026, 3, 31));
            writer.Empty();
            writer.EndRow();
            writer.Text("1,5");
            writer.Text("say \"so\"");
            writer.Text("two\r\nlines");
            writer.Text("=1+1");
            writer.EndRow();
            writer.Finish();
        }

        Assert.Equal(
            "package,percent,on,\"x_a;b\"\nP 1;ä,12.5,2026-03-31,\n\"1,5\",\"say \"\"so\"\"\",\"two\r\nlines\",=1+1\n"u8.ToArray(),
            File.ReadAllBytes(desk.PathOf("out/status.csv"))
        );
    }

    [Theory]
    [InlineData("0.000", "0")]
    [InlineData("-0.0", "0")]
    [InlineData("100", "100")]
    [InlineData("1200.3400", "1200.34")]
    [InlineData("-0.0000000000000000000000000001", "-0.0000000000000000000000000001")]
    [InlineData("-79228162514264337593543950335", "-79228162514264337593543950335")]
    [InlineData("999999999999999", "999999999999999")]
    [InlineData("1234567890123.456", "1234567890123.456")]
    [InlineData("0.1234567890123456", "0.1234567890123456")]
    [InlineData("9999999999999999", "9999999999999999")]
    public void Numbers_are_written_exactly_and_without_zeros_at_the_end(string number, string cell)
    {
        Write(
            (writer) =>
            {
                writer.StartTable("table", ["a", "b"]);
                writer.Number(
                    decimal.Parse(number, System.Globalization.CultureInfo.InvariantCulture)
                );
                writer.Text("x");
                writer.EndRow();
            },
            [$"2: {cell}|x"]
        );
    }

    [Theory]
    [InlineData("0001-01-01")]
    [InlineData("1900-02-28")]
    [InlineData("1900-03-01")]
    [InlineData("2026-02-28")]
    [InlineData("9999-12-31")]
    public void Days_of_all_years_are_written(string day)
    {
        Write(
            writer =>
            {
                writer.StartTable("table", ["a"]);
                writer.Date(
                    DateOnly.ParseExact(day, "O", System.Globalization.CultureInfo.InvariantCulture)
                );
                writer.EndRow();
            },
            [$"2: {day}"]
        );
    }

    [Fact]
    public void What_utf_8_text_cannot_carry_becomes_the_replacement_character()
    {
        Write(
            writer =>
            {
                writer.StartTable("table", ["a", "b", "c"]);
                writer.Text("x\0y");
                writer.Text("x\uD83Dy");
                writer.Text("x\U0001F600y");
                writer.EndRow();
            },
            ["2: x\uFFFDy|x\uFFFDy|x\U0001F600y"]
        );
    }

    [Fact]
    public void Cells_of_a_workbook_are_numbers_dates_and_text_by_kind_and_the_header_is_frozen()
    {
        using (var writer = new XlsxTablesWriter(desk.PathOf("out.xlsx")))
        {
            writer.StartTable("status", ["a", "b", "c", "d", "e"]);
            writer.Number(12.5m);
            writer.Date(new DateOnly(2026, 3, 31));
            writer.Text("12.5");
            writer.Text("=1+1");
            writer.Number(12345678901234.567m);
            writer.EndRow();
            writer.Finish();
        }

        using var archive = ZipFile.OpenRead(desk.PathOf("out.xlsx"));
        using var part = new StreamReader(archive.GetEntry("xl/worksheets/sheet1.xml")!.Open());
        var xml = part.ReadToEnd();
        Assert.Contains("state=\"frozen\"", xml, StringComparison.Ordinal);
        Assert.Contains("<c r=\"A2\"><v>12.5</v></c>", xml, StringComparison.Ordinal);
        Assert.Matches("<c r=\"B2\" s=\"\\d+\"><v>46112</v></c>", xml);
        Assert.Matches("<c r=\"C2\" [^>]*t=\"inlineStr\"[^>]*><is><t[^>]*>12.5</t></is></c>", xml);
        Assert.Matches(
            "<c r=\"D2\" [^>]*t=\"inlineStr\"[^>]*><is><t[^>]*>=1\\+1</t></is></c>",
            xml
        );
        Assert.Matches(
            "<c r=\"E2\" [^>]*t=\"inlineStr\"[^>]*><is><t[^>]*>12345678901234.567</t></is></c>",
            xml
        );
        Assert.DoesNotContain("<f>", xml, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_table_gets_its_own_file_or_sheet()
    {
        WriteTables(new CsvTablesWriter(desk.PathOf("csv")));
        WriteTables(new XlsxTablesWriter(desk.PathOf("xlsx/plant.xlsx")));
        foreach (var folder in (string[])["csv", "xlsx"])
        {
            var sources = TableSource.Find([desk.PathOf(folder)], desk.Errors);
            Assert.Equal(
                ["people", "units"],
                [.. sources.Select(source => source.Table).Order(StringComparer.Ordinal)]
            );
            foreach (var source in sources)
            {
                using var reader = source.Open(desk.Errors)!;
                Assert.Equal([$"2: {source.Table}"], Desk.Rows(reader));
            }
        }

        static void WriteTables(TablesWriter writer)
        {
            using (writer)
            {
                foreach (var table in (string[])["units", "people"])
                {
                    writer.StartTable(table, ["a"]);
                    writer.Text(table);
                    writer.EndRow();
                }

                writer.Finish();
            }
        }
    }

    [Fact]
    public void Nothing_is_seen_before_the_export_is_finished_and_nothing_is_left_of_one_that_is_not()
    {
        desk.Put("status.csv", "old\n");
        desk.Put("plant.xlsx", "old");
        foreach (
            var open in (Func<TablesWriter>[])
                [
                    () => new CsvTablesWriter(desk.Folder),
                    () => new XlsxTablesWriter(desk.PathOf("plant.xlsx")),
                ]
        )
        {
            using (var writer = open())
            {
                writer.StartTable("scope", ["a"]);
                writer.Text("x");
                writer.EndRow();
                writer.StartTable("status", ["a"]);
                Assert.Equal(["plant.xlsx", "status.csv"], Names(hidden: false));
            }

            Assert.Equal(["plant.xlsx", "status.csv"], Names(hidden: true));
        }

        Assert.Equal("old\n", File.ReadAllText(desk.PathOf("status.csv"), Encoding.UTF8));
        Assert.Equal("old", File.ReadAllText(desk.PathOf("plant.xlsx"), Encoding.UTF8));
    }

    [Fact]
    public void A_finished_export_takes_the_place_of_an_older_one()
    {
        desk.Put("table.csv", "old\n");
        desk.Put("plant.xlsx", "old");
        Write(
            writer =>
            {
                writer.StartTable("table", ["a"]);
                writer.Text("new");
                writer.EndRow();
            },
            ["2: new"]
        );
        Assert.Equal(["plant.xlsx", "table.csv"], Names(hidden: true));
    }

    [Fact]
    public void More_rows_than_a_sheet_has_are_refused_with_the_way_out()
    {
        using var writer = new XlsxTablesWriter(desk.PathOf("plant.xlsx"));
        writer.StartTable("actuals", ["a"]);
        for (var row = 0; row < 1_048_575; row++)
        {
            writer.Empty();
            writer.EndRow();
        }

        writer.Empty();
        var refusal = Assert.Throws<IOException>(writer.EndRow);
        Assert.Equal(
            "The table actuals has more than 1 048 575 rows, the most that fit in a sheet: export as CSV.",
            refusal.Message
        );
    }

    [Fact]
    public void A_text_longer_than_a_cell_holds_is_refused_with_the_way_out()
    {
        using var writer = new XlsxTablesWriter(desk.PathOf("plant.xlsx"));
        writer.StartTable("scope", ["a", "b"]);
        writer.Text(new string('x', 32_767));
        Assert.Contains(
            "export as CSV",
            Assert.Throws<IOException>(() => writer.Text(new string('x', 32_768))).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Calls_out_of_order_are_refused()
    {
        using var writer = new CsvTablesWriter(desk.Folder);
        Assert.Throws<InvalidOperationException>(writer.Empty);
        Assert.Throws<ArgumentException>(() => writer.StartTable("../units", ["a"]));
        writer.StartTable("units", ["a", "b"]);
        writer.Empty();
        Assert.Throws<InvalidOperationException>(writer.EndRow);
        Assert.Throws<InvalidOperationException>(writer.Finish);
        writer.Empty();
        Assert.Throws<InvalidOperationException>(writer.Empty);
        writer.EndRow();
        Assert.Throws<InvalidOperationException>(() => writer.StartTable("Units", ["a"]));
        writer.Finish();
        Assert.Throws<InvalidOperationException>(writer.Empty);
    }

    private string[] Names(bool hidden) =>
        [
            .. new DirectoryInfo(desk.Folder)
                .GetFiles()
                .Select(file => file.Name)
                .Where(name => hidden || !name.StartsWith('.'))
                .Order(StringComparer.Ordinal),
        ];

    /// <summary>Writes the one table named table in both ways and reads it back.</summary>
    private void Write(Action<TablesWriter> write, string[] expected)
    {
        foreach (var name in (string[])["table.csv", "plant.xlsx"])
        {
            using (
                TablesWriter writer =
                    name == "table.csv"
                        ? new CsvTablesWriter(desk.Folder)
                        : new XlsxTablesWriter(desk.PathOf(name))
            )
            {
                write(writer);
                writer.Finish();
            }

            using var reader = desk.Open(desk.PathOf(name));
            Assert.Equal(expected, Desk.Rows(reader));
            Assert.False(desk.Errors.Any);
        }
    }
}
