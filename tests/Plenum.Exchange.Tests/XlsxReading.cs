namespace Plenum.Exchange.Tests;

public sealed class XlsxReading : IDisposable
{
    private readonly Desk desk = new();

    public void Dispose() => desk.Dispose();

    [Fact]
    public void Each_sheet_is_a_table_but_empty_ones_and_those_that_begin_with_an_underscore()
    {
        var one = TinyWorkbook.Header("a");
        var path = desk.Put(
            "plant.xlsx",
            TinyWorkbook.Of(
                ("status", one, ""),
                ("nothing", "", ""),
                ("blank", "<row r=\"3\"><c r=\"B3\" s=\"1\"/></row>", ""),
                ("_notes", one, ""),
                ("scope", one, "state=\"hidden\""),
                ("units", one, "state=\"veryHidden\"")
            )
        );
        var sources = TableSource.Find([path], desk.Errors);
        Assert.Equal(["status", "scope", "units"], [.. sources.Select(source => source.Table)]);
        Assert.Equal("plant.xlsx, sheet scope", sources[1].File);
        Assert.True(sources[1].Bytes > 0);
        Assert.False(desk.Errors.Any);
    }

    [Fact]
    public void Sheets_can_be_read_in_any_order_and_side_by_side()
    {
        var path = desk.Put(
            "plant.xlsx",
            TinyWorkbook.Of([
                .. Enumerable
                    .Range(0, 5)
                    .Select(sheet =>
                        (
                            $"t{sheet}",
                            $"{TinyWorkbook.Header("a")}<row r=\"2\"><c><v>{sheet}</v></c></row>",
                            ""
                        )
                    ),
            ])
        );
        var sources = TableSource.Find([path], desk.Errors);
        using var last = sources[4].Open(desk.Errors)!;
        using var first = sources[0].Open(desk.Errors)!;
        using var middle = sources[2].Open(desk.Errors)!;
        Assert.Equal(["2: 0"], Desk.Rows(first));
        Assert.Equal(["2: 4"], Desk.Rows(last));
        Assert.Equal(["2: 2"], Desk.Rows(middle));
    }

    [Theory]
    [InlineData("0.1", "0.1")]
    [InlineData("-12.50", "-12.5")]
    [InlineData("1E+20", "100000000000000000000")]
    [InlineData("1.5E-7", "0.00000015")]
    [InlineData("-2.5E-3", "-0.0025")]
    [InlineData("0.30000000000000004", "0.3")]
    [InlineData("434.99999999999994", "435")]
    [InlineData("99999999999999.9", "99999999999999.9")]
    [InlineData("9007199254740991", "9007199254740991")]
    [InlineData("123456789012345680000", "123456789012346000000")]
    [InlineData("0", "0")]
    [InlineData("-0", "0")]
    [InlineData("1000000", "1000000")]
    public void Numbers_are_plain_decimals_of_the_digits_that_a_spreadsheet_shows(
        string inFile,
        string cell
    ) => Assert.Equal(cell, OnlyCell($"<c><v>{inFile}</v></c>"));

    /// <summary>Day 46112 of the spreadsheet calendar is 31 March 2026.</summary>
    [Theory]
    [InlineData(1, "46112", "2026-03-31")]
    [InlineData(2, "46112", "2026-03-31")]
    [InlineData(1, "46112.5", "2026-03-31 12:00:00")]
    [InlineData(2, "46112.75", "2026-03-31 18:00:00")]
    [InlineData(3, "1.5", "1.12:00:00")]
    [InlineData(0, "46112", "46112")]
    [InlineData(5, "0.25", "0.25")]
    public void Dates_are_iso_and_keep_a_time_of_day(int style, string inFile, string cell) =>
        Assert.Equal(cell, OnlyCell($"<c s=\"{style}\"><v>{inFile}</v></c>"));

    [Fact]
    public void Dates_of_a_workbook_that_counts_from_1904_are_the_days_it_shows()
    {
        var path = desk.Put(
            "plant.xlsx",
            TinyWorkbook.With(
                "<workbookPr date1904=\"1\"/>",
                [],
                (
                    "status",
                    $"{TinyWorkbook.Header("a")}<row r=\"2\"><c s=\"1\"><v>{46112 - 1462}</v></c></row>",
                    ""
                )
            )
        );
        using var reader = desk.Open(path);
        Assert.Equal(["2: 2026-03-31"], Desk.Rows(reader));
    }

    [Theory]
    [InlineData("1", "1")]
    [InlineData("0", "0")]
    public void Truth_is_1_or_0(string inFile, string cell) =>
        Assert.Equal(cell, OnlyCell($"<c t=\"b\"><v>{inFile}</v></c>"));

    [Theory]
    [InlineData("<c t=\"inlineStr\"><is><t>1.10</t></is></c>", "1.10")]
    [InlineData(
        "<c t=\"inlineStr\" s=\"4\"><is><t xml:space=\"preserve\"> =1+1 </t></is></c>",
        " =1+1 "
    )]
    [InlineData(
        "<c t=\"inlineStr\"><is><t>a_x000D_&#10;b_x005F_x0041_</t></is></c>",
        "a\r\nb_x0041_"
    )]
    [InlineData("<c t=\"inlineStr\" s=\"1\"><is><t>03/04/2026</t></is></c>", "03/04/2026")]
    [InlineData("<c t=\"str\"><v>worked out</v></c>", "worked out")]
    public void Text_is_text_whatever_it_looks_like(string inFile, string cell) =>
        Assert.Equal(cell, OnlyCell(inFile));

    [Theory]
    [InlineData(0, "shared")]
    [InlineData(1, "bold and plain")]
    [InlineData(2, " spaces ")]
    public void Texts_may_stand_in_the_list_that_sheets_share(int number, string cell)
    {
        var path = desk.Put(
            "plant.xlsx",
            TinyWorkbook.With(
                "",
                [
                    "<t>shared</t>",
                    "<r><rPr><b/></rPr><t>bold</t></r><r><t xml:space=\"preserve\"> and plain</t></r>",
                    "<t xml:space=\"preserve\"> spaces </t>",
                ],
                (
                    "status",
                    $"{TinyWorkbook.Header("a")}<row r=\"2\"><c t=\"s\" s=\"1\"><v>{number}</v></c></row>",
                    ""
                )
            )
        );
        using var reader = desk.Open(path);
        Assert.True(reader.Read());
        Assert.Equal(cell, reader[0].ToString());
    }

    [Fact]
    public void Rows_and_cells_that_are_not_in_the_file_are_empty_and_count()
    {
        var rows =
            $"{TinyWorkbook.Header(" a ", "b", "c")}<row r=\"2\"><c r=\"C2\"><v>3</v></c></row>"
            + "<row r=\"5\"><c r=\"A5\"><v>1</v></c><c r=\"B5\" t=\"inlineStr\"><is><t> </t></is></c></row>"
            + "<row r=\"6\"><c r=\"A6\" t=\"inlineStr\"><is><t> </t></is></c></row><row r=\"7\"/>";
        using var reader = desk.Open(desk.Put("plant.xlsx", TinyWorkbook.OfRows(rows)));
        Assert.Equal(["a", "b", "c"], reader.Header);
        Assert.Equal(["2: ||3", "5: 1| |"], Desk.Rows(reader));
        Assert.False(reader.Failed);
        Assert.False(desk.Errors.Any);
        Assert.Equal(1, reader.Fraction);
    }

    private string OnlyCell(string cell)
    {
        var rows = $"{TinyWorkbook.Header("a")}<row r=\"2\">{cell}</row>";
        using var reader = desk.Open(desk.Put("plant.xlsx", TinyWorkbook.OfRows(rows)));
        Assert.True(reader.Read());
        Assert.False(desk.Errors.Any);
        return reader[0].ToString();
    }
}
