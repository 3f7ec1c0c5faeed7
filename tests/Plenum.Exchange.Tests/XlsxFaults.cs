using System.Buffers.Binary;

namespace Plenum.Exchange.Tests;

public sealed class XlsxFaults : IDisposable
{
    private readonly Desk desk = new();

    public void Dispose() => desk.Dispose();

    [Fact]
    public void A_formula_is_reported_even_if_its_last_value_is_beside_it()
    {
        var rows =
            TinyWorkbook.Header("package", "percent")
            + "<row r=\"2\"><c><v>1</v></c><c><v>50</v></c></row>"
            + "<row r=\"3\"><c r=\"A3\"><v>2</v></c><c r=\"B3\"><f>B2+10</f><v>60</v></c></row>"
            + "<row r=\"4\"><c r=\"A4\"><v>3</v></c><c r=\"B4\"><f t=\"shared\" si=\"0\"/><v>7</v></c></row>"
            + "<row r=\"5\"><c r=\"A5\"><v>4</v></c><c r=\"B5\"><v>80</v></c></row>";
        Assert.Equal(["2: 1|50", "5: 4|80"], RowsOf(rows));
        Assert.Equal(
            [
                "plant.xlsx, sheet status, row 3, column percent: a formula found in B3: paste its value",
                "plant.xlsx, sheet status, row 4, column percent: a formula found in B4: paste its value",
            ],
            [.. desk.Errors.Items.Select(error => error.ToString())]
        );
    }

    [Fact]
    public void A_formula_below_or_beside_the_table_is_reported_too()
    {
        var rows =
            TinyWorkbook.Header("a")
            + "<row r=\"2\"><c r=\"A2\"><v>1</v></c></row>"
            + "<row r=\"9\"><c r=\"AB9\"><f>SUM(A:A)</f></c></row>";
        Assert.Equal(["2: 1"], RowsOf(rows));
        Assert.Equal((9, "AB"), (desk.OnlyError.Row, desk.OnlyError.Column));
        Assert.Contains("a formula found in AB9", desk.OnlyError.Message);
    }

    [Fact]
    public void A_cell_that_shows_an_error_is_named()
    {
        var rows =
            TinyWorkbook.Header("a", "b")
            + "<row r=\"2\"><c><v>1</v></c><c t=\"e\"><v>#N/A</v></c></row>"
            + "<row r=\"3\"><c><v>2</v></c><c><v>3</v></c></row>";
        Assert.Equal(["3: 2|3"], RowsOf(rows));
        Assert.Equal(
            "plant.xlsx, sheet status, row 2, column b: #N/A found in B2: type the value, or empty the cell",
            desk.OnlyError.ToString()
        );
        Assert.Equal("#N/A", desk.OnlyError.Value);
    }

    [Fact]
    public void A_formula_that_came_to_an_error_is_one_fault()
    {
        var rows =
            TinyWorkbook.Header("a") + "<row r=\"2\"><c t=\"e\"><f>1/0</f><v>#DIV/0!</v></c></row>";
        Assert.Empty(RowsOf(rows));
        Assert.Contains("a formula found in A2", desk.OnlyError.Message);
    }

    [Fact]
    public void A_formula_in_the_header_keeps_the_sheet_from_being_read()
    {
        const string rows =
            "<row r=\"1\"><c t=\"str\"><f>\"a\"</f><v>a</v></c></row><row r=\"2\"><c><v>1</v></c></row>";
        Assert.Null(desk.Source(Put(TinyWorkbook.OfRows(rows))).Open(desk.Errors));
        Assert.Equal(1, desk.OnlyError.Row);
    }

    [Theory]
    [InlineData("<row r=\"3\"><c><v>1</v></c></row>", "no headings found")]
    [InlineData(
        "<row r=\"1\"><c r=\"A1\"><v>1</v></c><c r=\"C1\"><v>2</v></c></row>",
        "column B has no heading"
    )]
    [InlineData(
        "<row r=\"1\"><c><v>7</v></c><c><v>7</v></c></row>",
        "columns A and B are both headed \"7\""
    )]
    public void A_sheet_needs_a_sound_header_in_its_first_row(string rows, string message)
    {
        Assert.Null(desk.Source(Put(TinyWorkbook.OfRows(rows))).Open(desk.Errors));
        Assert.Equal(1, desk.OnlyError.Row);
        Assert.Contains(message, desk.OnlyError.Message);
    }

    [Fact]
    public void A_value_beside_the_table_is_reported_and_its_row_skipped()
    {
        var rows =
            TinyWorkbook.Header("a")
            + "<row r=\"2\"><c r=\"A2\"><v>1</v></c><c r=\"D2\"><v>9</v></c></row>"
            + "<row r=\"3\"><c r=\"A3\"><v>2</v></c></row>";
        Assert.Equal(["3: 2"], RowsOf(rows));
        Assert.StartsWith("4 cells found, 1 cell expected", desk.OnlyError.Message);
    }

    [Fact]
    public void Half_a_workbook_is_one_error_wherever_it_was_cut()
    {
        var whole = TinyWorkbook.OfRows(
            TinyWorkbook.Header("a") + "<row r=\"2\"><c><v>1</v></c></row>"
        );
        for (var length = 4; length < whole.Length; length += 23)
        {
            using var own = new Desk();
            Assert.Empty(TableSource.Find([own.Put("plant.xlsx", whole[..length])], own.Errors));
            Assert.Equal(
                "plant.xlsx: the workbook is damaged or only half there: copy it again, or open and save it as .xlsx",
                own.OnlyError.ToString()
            );
        }
    }

    [Fact]
    public void A_damaged_workbook_gives_errors_and_never_anything_else()
    {
        var rows = string.Concat(
            Enumerable
                .Range(2, 500)
                .Select(row => $"<row r=\"{row}\"><c><v>{row * 7919}</v></c></row>")
        );
        var whole = TinyWorkbook.OfRows(TinyWorkbook.Header("a") + rows);
        for (var at = 0; at < whole.Length; at += 7)
        {
            using var own = new Desk();
            var bytes = whole.ToArray();
            bytes[at] ^= 0x55;
            foreach (var source in TableSource.Find([own.Put("plant.xlsx", bytes)], own.Errors))
            {
                using var reader = source.Open(own.Errors);
                while (reader?.Read() == true)
                {
                    Assert.Equal(1, reader.CellCount);
                }

                Assert.True(reader is { Failed: false } || own.Errors.Any);
            }
        }
    }

    [Fact]
    public void A_sheet_that_breaks_off_is_reported_where_it_does()
    {
        var rows = TinyWorkbook.Header("a") + "<row r=\"2\"><c><v>1</v></c></row><row r=\"3\"><c>";
        Assert.Null(desk.Source(Put(TinyWorkbook.OfRows(rows))).Open(desk.Errors));
        Assert.Contains("damaged or only half there", desk.OnlyError.Message);
    }

    [Theory]
    [InlineData(new byte[0], "empty")]
    [InlineData(new byte[] { 0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1, 0, 0 }, "password")]
    [InlineData(new byte[] { 0x61, 0x2C, 0x62, 0x0A, 0x31, 0x2C, 0x32, 0x0A }, "not a workbook")]
    [InlineData(new byte[] { 0, 0, 0, 0, 0, 0, 0, 0, 0 }, "not a workbook")]
    public void What_is_no_workbook_is_refused(byte[] bytes, string message)
    {
        Assert.Empty(TableSource.Find([Put(bytes)], desk.Errors));
        Assert.Contains(message, desk.OnlyError.Message);
    }

    [Fact]
    public void Another_kind_of_archive_is_refused()
    {
        Assert.Empty(TableSource.Find([Put(TinyWorkbook.Zip([("a.txt", "text")]))], desk.Errors));
        Assert.Contains("damaged", desk.OnlyError.Message);
    }

    [Fact]
    public void A_workbook_without_tables_is_an_error()
    {
        Assert.Empty(TableSource.Find([Put(TinyWorkbook.Of(("status", "", "")))], desk.Errors));
        Assert.Contains("holds no table", desk.OnlyError.Message);
    }

    [Fact]
    public void An_entity_that_unfolds_into_many_is_refused()
    {
        var bytes = TinyWorkbook.Zip([
            (
                "xl/workbook.xml",
                "<!DOCTYPE w [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;\">]><workbook>&b;</workbook>"
            ),
            ("xl/_rels/workbook.xml.rels", "<Relationships/>"),
        ]);
        Assert.Empty(TableSource.Find([Put(bytes)], desk.Errors));
        Assert.Contains("damaged", desk.OnlyError.Message);
    }

    /// <summary>The sizes stand in the directory of the archive (APPNOTE.TXT of the ZIP format, section 4.3.12).</summary>
    [Theory]
    [InlineData("xl/worksheets/sheet1.xml", 2_000_000_000u, true)]
    [InlineData("xl/sharedStrings.xml", 600_000_000u, true)]
    [InlineData("xl/worksheets/sheet1.xml", 600_000_000u, false)]
    public void A_part_that_would_unpack_to_an_absurd_size_is_refused(
        string part,
        uint size,
        bool refused
    )
    {
        var bytes = TinyWorkbook.With("", ["<t>x</t>"], ("status", TinyWorkbook.Header("a"), ""));
        var name = System.Text.Encoding.ASCII.GetBytes(part);
        var entry = bytes.AsSpan().LastIndexOf(name) - 46;
        Assert.Equal(0x02014B50u, BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(entry)));
        BinaryPrimitives.WriteUInt32LittleEndian(bytes.AsSpan(entry + 24), size);
        TableSource.Find([Put(bytes)], desk.Errors);
        Assert.Equal(
            refused,
            desk.Errors.Items.Any(error => error.Message.Contains("would unpack to"))
        );
    }

    private string Put(byte[] bytes) => desk.Put("plant.xlsx", bytes);

    private IReadOnlyList<string> RowsOf(string rows)
    {
        using var reader = desk.Open(Put(TinyWorkbook.OfRows(rows)));
        return Desk.Rows(reader);
    }
}
