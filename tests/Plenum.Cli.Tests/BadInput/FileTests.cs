using System.Text;
using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.BadInput;

/// <summary>Files that are not what their names say, and CSV that breaks its rules.</summary>
public class FileTests
{
    private const string People = "person,name\ndee,Zoë Åsh\n";

    [Fact]
    public void Utf16_with_a_byte_order_mark_is_refused() =>
        Refused(
            "UTF-16 with a byte order mark",
            [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(People)]
        );

    [Fact]
    public void Utf16_without_a_byte_order_mark_is_refused() =>
        Refused("UTF-16 without a byte order mark", Encoding.Unicode.GetBytes(People));

    [Fact]
    public void Utf16_with_the_high_byte_first_is_refused() =>
        Refused("UTF-16, high byte first, no mark", Encoding.BigEndianUnicode.GetBytes(People));

    [Fact]
    public void Latin_1_is_refused() => Refused("Latin-1", Encoding.Latin1.GetBytes(People));

    [Fact]
    public void A_file_of_zeros_is_refused() => Refused("100 000 zero bytes", new byte[100_000]);

    [Fact]
    public void A_zero_byte_inside_is_refused() =>
        Refused(
            "a zero byte in row 3 000",
            Encoding.UTF8.GetBytes(
                "person,name\n"
                    + string.Concat(Enumerable.Range(1, 2_998).Select(row => $"p{row},x\n"))
                    + "dee,A\0sh\n"
            )
        );

    [Fact]
    public void A_workbook_under_the_name_of_a_csv_file_is_refused() =>
        Refused(
            "a workbook",
            Workbooks.Of(("people", "<row><c t=\"inlineStr\"><is><t>person</t></is></c></row>"))
        );

    [Fact]
    public void An_unclosed_quotation_mark_is_refused() =>
        Refusal.Of(
            """
            [people.csv]
            person,name
            dee,"Dee Ash
            eli,Eli Oak
            """
        );

    [Fact]
    public void Text_after_a_closing_quotation_mark_is_refused() =>
        Refusal.Of(
            """
            [people.csv]
            person,name
            dee,"Dee" Ash
            eli,Eli Oak
            eli,Eli Elm
            """
        );

    [Fact]
    public void A_quotation_mark_inside_a_bare_value_is_refused() =>
        Refusal.Of(
            """
            [people.csv]
            person,name
            dee,Dee "D" Ash
            """
        );

    [Fact]
    public void A_row_with_too_many_cells_is_refused() =>
        Refusal.Of(
            """
            [people.csv]
            person,name
            dee,Ash, Dee
            """
        );

    [Fact]
    public void A_row_with_too_few_cells_is_refused() =>
        Refusal.Of(
            """
            [people.csv]
            person,name,unit
            dee,Dee Ash
            """
        );

    [Fact]
    public void A_decimal_comma_between_commas_is_refused() =>
        Refusal.Of(
            """
            [budget.csv]
            package,cost_element,amount
            PH.50,labour,1,5
            """
        );

    [Fact]
    public void A_path_that_is_not_there_is_refused()
    {
        using var terminal = PumpHouse.Open();
        Refusal.OfImport(terminal, ["tables/status.csv"]);
    }

    [Fact]
    public void A_folder_without_tables_is_refused()
    {
        using var terminal = PumpHouse.Open();
        terminal.Write(
            """
            [tables/readme.md]
            Tables to come.
            """
        );
        Refusal.OfImport(terminal, ["tables"]);
    }

    [Fact]
    public void A_kind_of_file_that_holds_no_tables_is_refused()
    {
        using var terminal = PumpHouse.Open();
        Refusal.OfImport(
            terminal,
            [terminal.Write("status.ods", [1, 2, 3], "another program's tables")]
        );
    }

    private static void Refused(
        string what,
        byte[] content,
        [System.Runtime.CompilerServices.CallerMemberName] string name = ""
    )
    {
        using var terminal = PumpHouse.Open();
        Refusal.OfImport(terminal, [terminal.Write("people.csv", content, what)], null, name);
    }
}
