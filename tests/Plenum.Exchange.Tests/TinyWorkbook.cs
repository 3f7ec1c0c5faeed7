using System.Globalization;
using System.IO.Compression;
using System.Text;

namespace Plenum.Exchange.Tests;

/// <summary>
/// A workbook made by hand from the XML of its sheets, for what the writer of exports never makes. Cell style 1 is a
/// date, 2 a date with a time, 3 hours beyond a day, 4 text, 5 a colour and a percentage.
/// </summary>
public static class TinyWorkbook
{
    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Office =
        "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private const string Package = "http://schemas.openxmlformats.org/package/2006/relationships";

    private const string Styles = $"""
        <styleSheet xmlns="{Main}">
        <numFmts count="2"><numFmt numFmtId="170" formatCode="dd/mm/yyyy\ hh:mm"/><numFmt numFmtId="171" formatCode="[Red]0.0%"/></numFmts>
        <cellXfs count="6"><xf numFmtId="0"/><xf numFmtId="14" applyNumberFormat="1"/><xf numFmtId="170" applyNumberFormat="1"/>
        <xf numFmtId="46" applyNumberFormat="1"/><xf numFmtId="49" applyNumberFormat="1"/><xf numFmtId="171" applyNumberFormat="1"/></cellXfs>
        </styleSheet>
        """;

    /// <param name="sheets">Name, rows as XML, and further attributes of each sheet.</param>
    public static byte[] Of(params (string Name, string Rows, string Attributes)[] sheets) =>
        With(string.Empty, [], sheets);

    public static byte[] OfRows(string rows) => Of(("status", rows, ""));

    /// <param name="properties">XML that stands before the list of sheets.</param>
    /// <param name="texts">The texts that cells of type s name by their number.</param>
    /// <param name="sheets">Name, rows as XML, and further attributes of each sheet.</param>
    public static byte[] With(
        string properties,
        string[] texts,
        params (string Name, string Rows, string Attributes)[] sheets
    )
    {
        var list = new StringBuilder();
        var relations = new StringBuilder();
        var parts = new List<(string Name, string Text)>();
        foreach (var (name, rows, attributes) in sheets)
        {
            var number = parts.Count + 1;
            list.Append(
                CultureInfo.InvariantCulture,
                $"""<sheet name="{name}" sheetId="{number}" {attributes} r:id="r{number}"/>"""
            );
            relations.Append(
                CultureInfo.InvariantCulture,
                $"""<Relationship Id="r{number}" Type="{Office}/worksheet" Target="worksheets/sheet{number}.xml"/>"""
            );
            parts.Add(
                (
                    $"xl/worksheets/sheet{number}.xml",
                    $"""<worksheet xmlns="{Main}"><sheetData>{rows}</sheetData></worksheet>"""
                )
            );
        }

        if (texts.Length > 0)
        {
            relations.Append(
                $"""<Relationship Id="t" Type="{Office}/sharedStrings" Target="sharedStrings.xml"/>"""
            );
            var items = string.Concat(texts.Select(text => $"<si>{text}</si>"));
            parts.Add(("xl/sharedStrings.xml", $"""<sst xmlns="{Main}">{items}</sst>"""));
        }

        relations.Append($"""<Relationship Id="s" Type="{Office}/styles" Target="styles.xml"/>""");
        parts.Add(("xl/styles.xml", Styles));
        parts.Add(
            (
                "xl/workbook.xml",
                $"""<workbook xmlns="{Main}" xmlns:r="{Office}">{properties}<sheets>{list}</sheets></workbook>"""
            )
        );
        parts.Add(
            (
                "xl/_rels/workbook.xml.rels",
                $"""<Relationships xmlns="{Package}">{relations}</Relationships>"""
            )
        );
        return Zip(parts);
    }

    public static byte[] Zip(IEnumerable<(string Name, string Text)> parts)
    {
        var bytes = new MemoryStream();
        using (var archive = new ZipArchive(bytes, ZipArchiveMode.Create))
        {
            foreach (var (name, text) in parts)
            {
                using var part = new StreamWriter(archive.CreateEntry(name).Open());
                part.Write(text);
            }
        }

        return bytes.ToArray();
    }

    /// <summary>Rows of text cells without references, for headers.</summary>
    public static string Header(params string[] headings) =>
        $"<row r=\"1\">{string.Concat(headings.Select(heading => $"<c t=\"inlineStr\"><is><t>{heading}</t></is></c>"))}</row>";
}
