using System.Text;

namespace Plenum.Exchange.Tests;

public sealed class CsvReading : IDisposable
{
    private readonly Desk desk = new();

    public void Dispose() => desk.Dispose();

    [Fact]
    public void Cells_are_as_written_and_headings_are_trimmed()
    {
        using var reader = desk.OpenCsv(" package , Name\nP1, two  spaces \n");
        Assert.Equal(["package", "Name"], reader.Header);
        Assert.Equal(["2: P1| two  spaces "], Desk.Rows(reader));
        Assert.False(desk.Errors.Any);
    }

    [Theory]
    [InlineData(',')]
    [InlineData(';')]
    [InlineData('\t')]
    public void The_separator_is_found_from_the_header(char separator)
    {
        var rows = desk.RowsOfCsv(
            $"a{separator}b{separator}c\n1{separator}x,y;z{separator}3\n".Replace(
                "x,y;z",
                "\"x,y;z\"",
                StringComparison.Ordinal
            )
        );
        Assert.Equal(["2: 1|x,y;z|3"], rows);
    }

    [Fact]
    public void Separators_inside_a_quoted_heading_do_not_count()
    {
        using var reader = desk.OpenCsv("\"x_a;b;c\",code\n1,2\n");
        Assert.Equal(["x_a;b;c", "code"], reader.Header);
    }

    [Fact]
    public void A_table_may_have_one_column()
    {
        Assert.Equal(["2: x;y"], desk.RowsOfCsv("a\nx;y\n"));
    }

    [Fact]
    public void A_byte_order_mark_is_not_part_of_the_first_heading()
    {
        using var reader = desk.Open(desk.Put("table.csv", [0xEF, 0xBB, 0xBF, .. "a,b\n1,2\n"u8]));
        Assert.Equal(["a", "b"], reader.Header);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Lines_may_end_in_any_of_the_usual_ways(string end)
    {
        Assert.Equal(["2: 1|2", "3: 3|4"], desk.RowsOfCsv(string.Join(end, "a,b", "1,2", "3,4")));
    }

    /// <summary>RFC 4180, section 2, rules 5 to 7.</summary>
    [Fact]
    public void Quotation_marks_hold_separators_line_breaks_and_doubled_quotation_marks()
    {
        Assert.Equal(
            ["2: 1,5|say \"so\"|line\r\nbreak", "3: \"||plain"],
            desk.RowsOfCsv(
                "a,b,c\n\"1,5\",\"say \"\"so\"\"\",\"line\r\nbreak\"\n\"\"\"\",\"\",plain\n"
            )
        );
    }

    [Fact]
    public void A_record_with_line_breaks_is_one_row_and_empty_rows_count()
    {
        Assert.Equal(
            ["2: x\n\ny|1", "5: z|2"],
            desk.RowsOfCsv("a,b\n\"x\n\ny\",1\n\n ,\t\nz,2\n\n\n")
        );
        Assert.False(desk.Errors.Any);
    }

    [Fact]
    public void A_header_alone_is_a_table_without_rows()
    {
        Assert.Empty(desk.RowsOfCsv("a,b"));
        Assert.False(desk.Errors.Any);
    }

    [Fact]
    public void Empty_columns_at_the_right_are_left_off()
    {
        using var reader = desk.OpenCsv("a,b,,\n1,2,,\n3,4\n5,6,,,, \n");
        Assert.Equal(["a", "b"], reader.Header);
        Assert.Equal(["2: 1|2", "3: 3|4", "4: 5|6"], Desk.Rows(reader));
        Assert.False(desk.Errors.Any);
    }

    [Fact]
    public void A_row_with_too_many_or_too_few_cells_is_reported_and_skipped()
    {
        Assert.Equal(["2: 1|2", "5: 6|7"], desk.RowsOfCsv("a,b\n1,2\n3\n4,5,x\n6,7\n"));
        Assert.Equal(
            [
                "table.csv, row 3: 1 cell found, 2 cells expected, one for each heading: "
                    + "add the missing cells, empty ones too",
                "table.csv, row 4: 3 cells found, 2 cells expected, one for each heading: "
                    + "put a value that holds the separator into quotation marks, or give each column a heading",
            ],
            [.. desk.Errors.Items.Select(error => error.ToString())]
        );
    }

    [Fact]
    public void Characters_beyond_ascii_are_kept_wherever_the_blocks_of_the_file_end()
    {
        var text = new StringBuilder("a,b\n");
        var expected = new List<string>();
        for (var row = 0; row < 20_000; row++)
        {
            var cell = string.Concat(Enumerable.Repeat("ä€😀", row % 5)) + row;
            text.Append(cell).Append(",\"").Append(cell).Append("\"\r\n");
            expected.Add($"{row + 2}: {cell}|{cell}");
        }

        Assert.Equal(expected, desk.RowsOfCsv(text.ToString()));
        Assert.False(desk.Errors.Any);
    }

    [Fact]
    public void The_share_read_grows_from_zero_to_one()
    {
        using var reader = desk.OpenCsv(
            "a\n" + string.Concat(Enumerable.Repeat("12345678\n", 50_000))
        );
        var last = reader.Fraction;
        Assert.InRange(last, 0, 0.5);
        while (reader.Read())
        {
            Assert.True(reader.Fraction >= last);
            last = reader.Fraction;
        }

        Assert.Equal(1, last);
        Assert.False(reader.Failed);
    }

    [Fact]
    public void A_file_can_be_opened_again()
    {
        var source = desk.Source(desk.Put("status.csv", "a\n1\n"));
        Assert.Equal("status", source.Table);
        Assert.Equal("status.csv", source.File);
        Assert.Equal(4, source.Bytes);
        for (var time = 0; time < 2; time++)
        {
            using var reader = source.Open(desk.Errors);
            Assert.Equal(["2: 1"], Desk.Rows(reader!));
        }
    }

    [Fact]
    public void Memory_does_not_grow_with_the_file()
    {
        var path = desk.PathOf("table.csv");
        using (var file = new StreamWriter(path))
        {
            file.WriteLine("document,amount");
            for (var row = 0; row < 500_000; row++)
            {
                file.WriteLine("\"D\"\"1\",1234.56");
            }
        }

        using var reader = desk.Open(path);
        var before = GC.GetAllocatedBytesForCurrentThread();
        var rows = 0;
        while (reader.Read())
        {
            rows += reader[0] is "D\"1" ? 1 : 0;
        }

        Assert.Equal(500_000, rows);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 500_000);
    }
}
