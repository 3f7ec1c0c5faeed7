using System.IO.Compression;
using System.Text;

namespace Plenum.Cli.Tests.Support;

/// <summary>Makes the smallest XLSX workbooks (ISO/IEC 29500) that have given sheets, whatever is in their cells.</summary>
internal static class Workbooks
{
    private const string Spreadsheet = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Document =
        "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private const string Package = "http://schemas.openxmlformats.org/package/2006";

    /// <summary>A row of cells of text.</summary>
    public static string Row(params string[] texts) =>
        "<row>"
        + string.Concat(texts.Select(text => $"<c t=\"inlineStr\"><is><t>{text}</t></is></c>"))
        + "</row>";

    /// <param name="sheets">Names, and the rows as they stand in the sheet's XML.</param>
    public static byte[] Of(params (string Name, string Rows)[] sheets)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create))
        {
            var numbers = Enumerable.Range(1, sheets.Length).ToArray();
            Add(
                zip,
                "[Content_Types].xml",
                $"<Types xmlns=\"{Package}/content-types\">"
                    + "<Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
                    + "<Default Extension=\"xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml\"/>"
                    + "<Override PartName=\"/xl/workbook.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml\"/></Types>"
            );
            Add(
                zip,
                "_rels/.rels",
                $"<Relationships xmlns=\"{Package}/relationships\"><Relationship Id=\"r1\" Type=\"{Document}/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>"
            );
            Add(
                zip,
                "xl/workbook.xml",
                $"<workbook xmlns=\"{Spreadsheet}\" xmlns:r=\"{Document}\"><sheets>"
                    + string.Concat(
                        numbers.Select(number =>
                            $"<sheet name=\"{sheets[number - 1].Name}\" sheetId=\"{number}\" r:id=\"s{number}\"/>"
                        )
                    )
                    + "</sheets></workbook>"
            );
            Add(
                zip,
                "xl/_rels/workbook.xml.rels",
                $"<Relationships xmlns=\"{Package}/relationships\">"
                    + string.Concat(
                        numbers.Select(number =>
                            $"<Relationship Id=\"s{number}\" Type=\"{Document}/worksheet\" Target=\"worksheets/sheet{number}.xml\"/>"
                        )
                    )
                    + "</Relationships>"
            );
            foreach (var number in numbers)
            {
                Add(
                    zip,
                    $"xl/worksheets/sheet{number}.xml",
                    $"<worksheet xmlns=\"{Spreadsheet}\"><sheetData>{sheets[number - 1].Rows}</sheetData></worksheet>"
                );
            }
        }

        return stream.ToArray();
    }

    private static void Add(ZipArchive zip, string name, string xml)
    {
        using var part = zip.CreateEntry(name).Open();
        part.Write(Encoding.UTF8.GetBytes("<?xml version=\"1.0\" encoding=\"UTF-8\"?>" + xml));
    }
}
