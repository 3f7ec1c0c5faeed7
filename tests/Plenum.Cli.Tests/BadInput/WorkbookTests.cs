using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.BadInput;

/// <summary>Workbooks that are damaged, or whose cells hold no data although they show something.</summary>
public class WorkbookTests
{
    private static readonly string Header = Workbooks.Row("package", "period", "percent");

    [Fact]
    public void Half_a_workbook_is_refused()
    {
        var whole = Workbooks.Of(("status", Header + Workbooks.Row("PH.30.2", "P4", "10")));
        Refused("the first half of a workbook", whole[..(whole.Length / 2)]);
    }

    [Fact]
    public void Text_under_the_name_of_a_workbook_is_refused() =>
        Refused("text", "package,period,percent\nPH.30.2,P4,10\n"u8.ToArray());

    [Fact]
    public void An_empty_workbook_file_is_refused() => Refused("nothing", []);

    [Fact]
    public void An_archive_that_is_no_workbook_is_refused()
    {
        using var stream = new MemoryStream();
        using (
            var zip = new System.IO.Compression.ZipArchive(
                stream,
                System.IO.Compression.ZipArchiveMode.Create
            )
        )
        {
            zip.CreateEntry("notes.txt");
        }

        Refused("an archive with a text file in it", stream.ToArray());
    }

    [Fact]
    public void A_formula_is_refused() =>
        Refused(
            "sheet status, C2 is the formula B9*2 with the value 10 beside it",
            Workbooks.Of(
                (
                    "status",
                    Header
                        + "<row><c t=\"inlineStr\"><is><t>PH.30.2</t></is></c><c t=\"inlineStr\"><is><t>P4</t></is></c><c><f>B9*2</f><v>10</v></c></row>"
                )
            )
        );

    [Fact]
    public void A_cell_that_shows_an_error_is_refused() =>
        Refused(
            "sheet status, C2 shows #N/A",
            Workbooks.Of(
                (
                    "status",
                    Header
                        + "<row><c t=\"inlineStr\"><is><t>PH.30.2</t></is></c><c t=\"inlineStr\"><is><t>P4</t></is></c><c t=\"e\"><v>#N/A</v></c></row>"
                )
            )
        );

    [Fact]
    public void An_unknown_sheet_is_refused() =>
        Refused(
            "sheet Sheet1",
            Workbooks.Of(("Sheet1", Header + Workbooks.Row("PH.30.2", "P4", "10")))
        );

    [Fact]
    public void A_key_that_stands_in_two_sheets_of_the_same_table_is_refused() =>
        Refused(
            "sheets status and STATUS, both with PH.30.2 in P4",
            Workbooks.Of(
                ("status", Header + Workbooks.Row("PH.30.2", "P4", "10")),
                ("STATUS", Header + Workbooks.Row("PH.30.2", "P4", "20"))
            )
        );

    [Fact]
    public void A_workbook_without_anything_in_its_sheets_is_refused() =>
        Refused("sheet status, empty", Workbooks.Of(("status", "")));

    private static void Refused(
        string what,
        byte[] content,
        [System.Runtime.CompilerServices.CallerMemberName] string name = ""
    )
    {
        using var terminal = PumpHouse.Open();
        Refusal.OfImport(terminal, [terminal.Write("progress.xlsx", content, what)], null, name);
    }
}
