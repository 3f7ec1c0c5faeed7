using System.Text;
using CsCheck;
using Plenum.Core.Foundation;

namespace Plenum.Exchange.Tests;

public sealed class CsvFaults : IDisposable
{
    private readonly Desk desk = new();

    public void Dispose() => desk.Dispose();

    [Fact]
    public void An_empty_file_is_refused()
    {
        Assert.Equal(
            "table.csv: the file is empty: its first row must hold the names of the columns",
            desk.RefusedCsv([]).ToString()
        );
    }

    [Theory]
    [InlineData("\n\n")]
    [InlineData(" , ,\n1,2,3\n")]
    [InlineData("\r\na,b\r\n")]
    public void A_file_without_headings_in_its_first_row_is_refused(string text)
    {
        Assert.Equal(
            "table.csv, row 1: no headings found: the first row must hold the names of the columns",
            desk.RefusedCsv(Encoding.UTF8.GetBytes(text)).ToString()
        );
    }

    [Fact]
    public void A_byte_order_mark_alone_is_an_empty_file()
    {
        Assert.Contains("the file is empty", desk.RefusedCsv([0xEF, 0xBB, 0xBF]).Message);
    }

    [Fact]
    public void Headings_that_differ_only_in_case_or_spaces_are_duplicates()
    {
        Assert.Equal(
            "table.csv, row 1, column  Code: columns A and C are both headed \"Code\": rename or remove one of them".Replace(
                "  ",
                " ",
                StringComparison.Ordinal
            ),
            desk.RefusedCsv("code,name, Code \n1,2,3\n"u8.ToArray()).ToString()
        );
    }

    [Fact]
    public void A_column_between_others_needs_a_heading()
    {
        Assert.Equal(
            "table.csv, row 1: column B has no heading: name it, or remove the column",
            desk.RefusedCsv("a,,c\n1,2,3\n"u8.ToArray()).ToString()
        );
    }

    [Theory]
    [InlineData("utf-16", true)]
    [InlineData("utf-16", false)]
    [InlineData("utf-16BE", true)]
    [InlineData("utf-16BE", false)]
    public void Utf_16_is_refused_with_and_without_byte_order_mark(string name, bool mark)
    {
        var encoding = Encoding.GetEncoding(name);
        byte[] bytes =
        [
            .. mark ? encoding.GetPreamble() : [],
            .. encoding.GetBytes("package,name\nP1,Größe\n"),
        ];
        Assert.Equal(
            "table.csv: the file is UTF-16 (\"Unicode text\"): save it as CSV UTF-8",
            desk.RefusedCsv(bytes).ToString()
        );
    }

    [Fact]
    public void Zero_bytes_alone_are_refused()
    {
        Assert.Contains("nothing but zero bytes", desk.RefusedCsv(new byte[10_000]).Message);
    }

    [Fact]
    public void Binary_content_is_refused()
    {
        byte[] bytes =
        [
            0x7F,
            0x45,
            0x4C,
            0x46,
            2,
            1,
            1,
            0,
            0,
            0,
            0x41,
            0x42,
            0x43,
            0x44,
            0x45,
            0x46,
        ];
        Assert.Contains("not text", desk.RefusedCsv(bytes).Message);
    }

    [Fact]
    public void A_workbook_named_as_csv_is_refused()
    {
        Assert.Contains("workbook", desk.RefusedCsv([.. "PK\x03\x04"u8, 0x14, 0]).Message);
    }

    [Fact]
    public void Bytes_that_are_not_utf_8_are_reported_with_their_row()
    {
        using var reader = desk.Open(
            desk.Put("table.csv", [.. "a,b\n1,x\n2,y\n3,Gr"u8, 0xF6, 0xDF, .. "e\n4,z\n"u8])
        );
        Assert.Equal(["2: 1|x", "3: 2|y"], Desk.Rows(reader));
        Assert.True(reader.Failed);
        Assert.Equal(
            "table.csv, row 4: the byte F6 is not UTF-8 here: save the file as CSV UTF-8. Nothing below was read",
            desk.OnlyError.ToString()
        );
    }

    [Fact]
    public void Bytes_that_are_not_utf_8_in_the_header_are_in_row_1()
    {
        Assert.Equal(1, desk.RefusedCsv([.. "Gr"u8, 0xF6, .. "e,b\n1,2\n"u8]).Row);
    }

    [Fact]
    public void A_file_that_ends_inside_a_character_is_refused()
    {
        using var reader = desk.Open(desk.Put("table.csv", [.. "a\nx\ny"u8, 0xE2, 0x82]));
        Assert.Equal(["2: x"], Desk.Rows(reader));
        Assert.Equal(3, desk.OnlyError.Row);
    }

    [Fact]
    public void The_row_of_a_zero_byte_or_a_bad_byte_is_right_wherever_it_stands()
    {
        var bad = Gen.Bool.Select(zero => zero ? (byte)0 : (byte)0xFF);
        Gen.Int[1_000, 20_000]
            .Select(bad, Gen.Int[0, 3])
            .Sample(
                (row, value, at) =>
                {
                    using var own = new Desk();
                    var bytes = Encoding.UTF8.GetBytes(
                        "a,b\n" + string.Concat(Enumerable.Range(2, 20_000).Select(r => $"{r},é\n"))
                    );
                    bytes[LineStart(bytes, row - 1) + at] = value;
                    using var reader = own.Open(own.Put("table.csv", bytes));
                    var read = 0;
                    while (reader.Read())
                    {
                        read++;
                    }

                    Assert.True(reader.Failed);
                    Assert.Equal(row, own.OnlyError.Row);
                    Assert.Equal(row - 2, read);
                },
                iter: 100
            );
    }

    [Fact]
    public void A_line_of_a_hundred_megabytes_is_refused_without_being_held()
    {
        var path = desk.PathOf("table.csv");
        using (var file = File.Create(path))
        {
            file.Write("a,b\n1,2\n"u8);
            var block = new byte[1 << 20];
            Array.Fill(block, (byte)'x');
            for (var count = 0; count < 100; count++)
            {
                file.Write(block);
            }
        }

        var before = GC.GetAllocatedBytesForCurrentThread();
        using var reader = desk.Open(path);
        Assert.Equal(["2: 1|2"], Desk.Rows(reader));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 40_000_000);
        Assert.InRange(reader.Fraction, 0, 0.1);
        Assert.True(reader.Failed);
        Assert.Equal(3, desk.OnlyError.Row);
        Assert.Contains("longer than 1 000 000 characters", desk.OnlyError.Message);
    }

    [Theory]
    [InlineData(1_000_000, true)]
    [InlineData(1_000_001, false)]
    public void A_record_has_at_most_a_million_characters(int length, bool read)
    {
        using var reader = desk.OpenCsv($"a\n{new string('x', length)}\ny\n");
        Assert.Equal(read, reader.Read());
        Assert.Equal(!read, desk.Errors.Any);
    }

    [Fact]
    public void Short_records_after_a_long_one_are_not_taken_for_a_long_one()
    {
        var rows = string.Concat(Enumerable.Repeat("1,2\n", 1_000_000));
        using var reader = desk.OpenCsv($"a,b\n{new string('x', 999_000)},y\n{rows}");
        Assert.Equal(1_000_001, Desk.Rows(reader).Count);
        Assert.False(desk.Errors.Any);
    }

    [Fact]
    public void A_header_of_many_megabytes_is_refused()
    {
        Assert.Equal(1, desk.RefusedCsv(Encoding.UTF8.GetBytes(new string(',', 5_000_000))).Row);
    }

    [Fact]
    public void A_quotation_mark_that_is_never_closed_is_reported_where_it_opens()
    {
        Assert.Equal(["2: 1|x"], desk.RowsOfCsv("a,b\n1,x\n2,\"y\n3,z\n4,z\n"));
        var error = desk.OnlyError;
        Assert.Equal((3, "b"), (error.Row, error.Column));
        Assert.Equal(
            "a quotation mark is opened here and never closed: close it, and double each one inside the value. "
                + "Nothing below was read",
            error.Message
        );
    }

    [Fact]
    public void A_quotation_mark_that_is_never_closed_in_a_long_file_is_a_record_too_long()
    {
        var rows = string.Concat(Enumerable.Repeat("1,2,3\n", 400_000));
        Assert.Equal(["2: 1|2|3"], desk.RowsOfCsv("a,b,c\n1,2,3\n\"1,2,3\n" + rows));
        Assert.Equal(3, desk.OnlyError.Row);
        Assert.Contains("never closed", desk.OnlyError.Message);
    }

    [Fact]
    public void Text_after_a_closing_quotation_mark_is_reported_and_the_next_row_is_read()
    {
        Assert.Equal(["3: 2|y"], desk.RowsOfCsv("a,b\n1,\"x\" y\n2,y\n"));
        var error = desk.OnlyError;
        Assert.Equal((2, "b", "\"x\" y"), (error.Row, error.Column, error.Value));
        Assert.StartsWith("text follows the closing quotation mark", error.Message);
    }

    [Fact]
    public void A_quotation_mark_inside_a_bare_value_is_reported_and_the_next_row_is_read()
    {
        using var reader = desk.OpenCsv("a,b\n1,pipe 5\" x 3\"\n2,y\n");
        Assert.Equal(["3: 2|y"], Desk.Rows(reader));
        Assert.False(reader.Failed);
        Assert.Equal((2, "b"), (desk.OnlyError.Row, desk.OnlyError.Column));
        Assert.StartsWith("a quotation mark stands inside a value", desk.OnlyError.Message);
    }

    /// <summary>A reader cannot know whether the row ends at the first line break or after the second inch mark.</summary>
    [Fact]
    public void Reading_ends_where_a_misplaced_quotation_mark_hides_the_end_of_the_row()
    {
        using var reader = desk.OpenCsv("a,b\n1,pipe 5\"\n2,pipe 6\"\n3,x\n");
        Assert.Empty(Desk.Rows(reader));
        Assert.True(reader.Failed);
        Assert.Equal(2, desk.OnlyError.Row);
        Assert.EndsWith("Nothing below was read", desk.OnlyError.Message);
    }

    [Fact]
    public void All_rows_are_judged_and_a_thousand_errors_kept()
    {
        desk.RowsOfCsv("a,b\n" + string.Concat(Enumerable.Repeat("1\n", 5_000)));
        Assert.Equal((5_000, InputErrors.Kept), (desk.Errors.Count, desk.Errors.Items.Count));
    }

    [Fact]
    public void A_file_that_vanished_is_reported()
    {
        var source = desk.Source(desk.Put("table.csv", "a\n"));
        File.Delete(desk.PathOf("table.csv"));
        Assert.Null(source.Open(desk.Errors));
        Assert.Contains("cannot be read", desk.OnlyError.Message);
    }

    private static int LineStart(byte[] bytes, int line)
    {
        var at = 0;
        for (; line > 0; line--)
        {
            at += bytes.AsSpan(at).IndexOf((byte)'\n') + 1;
        }

        return at;
    }
}
