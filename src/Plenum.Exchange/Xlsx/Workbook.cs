using System.IO.Compression;
using System.Xml;
using Plenum.Core.Foundation;

namespace Plenum.Exchange.Xlsx;

/// <summary>A sheet that holds cells.</summary>
/// <param name="Name">As written on its tab.</param>
/// <param name="Index">Its place among all sheets of the workbook, from 0.</param>
/// <param name="Part">The name of the part in the package that holds its cells.</param>
/// <param name="Bytes">The unpacked size of that part.</param>
internal sealed record Sheet(string Name, int Index, string Part, long Bytes);

/// <summary>
/// The package around the sheets of an XLSX workbook (ISO/IEC 29500: a ZIP archive of XML parts): what sheets there are,
/// and whether it is safe to unpack.
/// </summary>
internal static class Workbook
{
    private const string Part = "xl/workbook.xml";
    private const string Relations = "xl/_rels/workbook.xml.rels";
    private const string Texts = "xl/sharedStrings.xml";
    private const long Gibibyte = 1L << 30;
    private const long LargestPart = 4 * Gibibyte;

    /// <summary>All texts of a workbook are held while one of its sheets is read.</summary>
    private const long LargestTexts = Gibibyte / 2;
    private const long LargestRatio = 1000;

    /// <summary>The sheets with cells in the order of their tabs; null after reporting why there are none.</summary>
    public static IReadOnlyList<Sheet>? Sheets(string path, string file, InputErrors errors)
    {
        try
        {
            using var stream = OpenFile(path);
            if (Complaint(stream) is var (expected, message))
            {
                errors.Add(file, expected, message);
                return null;
            }

            using var archive = new ZipArchive(stream, ZipArchiveMode.Read);
            var absurd = archive.Entries.FirstOrDefault(IsAbsurd);
            if (absurd is not null)
            {
                errors.Add(
                    file,
                    "a workbook of reasonable size",
                    $"\"{absurd.FullName}\" in the workbook would unpack to {absurd.Length >> 20} MiB: "
                        + "bring tables of that size as CSV"
                );
                return null;
            }

            return Sheets(archive);
        }
        catch (Exception e) when (IsDamage(e))
        {
            errors.Add(file, "a whole .xlsx workbook", Damaged(e));
            return null;
        }
    }

    /// <summary>
    /// Whether the exception says that the file cannot be read or is not what it should be. The readers of archives and
    /// workbooks throw all kinds on damaged files, so everything counts but the want of memory and a cancelled task.
    /// </summary>
    public static bool IsDamage(Exception exception) =>
        exception is not (OutOfMemoryException or OperationCanceledException);

    public static string Damaged(Exception exception) =>
        exception is UnauthorizedAccessException
        || (
            exception is IOException
            && exception is not (InvalidDataException or EndOfStreamException)
        )
            ? $"the workbook cannot be read: {exception.Message}"
            : "the workbook is damaged or only half there: copy it again, or open and save it as .xlsx";

    public static FileStream OpenFile(string path) =>
        new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);

    private static (string Expected, string Message)? Complaint(FileStream stream)
    {
        Span<byte> start = stackalloc byte[8];
        start = start[..stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false)];
        stream.Position = 0;
        const string Expected = "an .xlsx workbook";
        if (start.IsEmpty)
        {
            return (Expected, "the file is empty: copy or save it again");
        }

        if (start.StartsWith<byte>([0xD0, 0xCF, 0x11, 0xE0]))
        {
            return (
                Expected,
                "the workbook is protected by a password or of the old .xls kind: "
                    + "save it as .xlsx without a password"
            );
        }

        return start.StartsWith("PK"u8)
            ? null
            : (Expected, "this is not a workbook: save it as .xlsx, or give it its own ending");
    }

    private static bool IsAbsurd(ZipArchiveEntry entry) =>
        entry.Length > LargestPart
        || (
            entry.Length > Gibibyte
            && entry.Length / Math.Max(1, entry.CompressedLength) > LargestRatio
        )
        || (entry.Length > LargestTexts && IsPart(entry, Texts));

    private static List<Sheet> Sheets(ZipArchive archive)
    {
        var targets = Targets(archive);
        var sheets = new List<Sheet>();
        using var xml = Xml(Entry(archive, Part));
        var index = 0;
        while (xml.Read())
        {
            if (xml.NodeType != XmlNodeType.Element || xml.LocalName != "sheet")
            {
                continue;
            }

            var name =
                xml.GetAttribute("name") ?? throw new InvalidDataException("A sheet has no name.");
            var target = targets.GetValueOrDefault(Relation(xml));
            if (target is not null && !name.StartsWith('_'))
            {
                var entry = Entry(archive, target);
                if (HasCells(entry))
                {
                    sheets.Add(new Sheet(name, index, target, entry.Length));
                }
            }

            index++;
        }

        return sheets;
    }

    /// <summary>The part of each worksheet by the id of its relation; charts on sheets of their own are not there.</summary>
    private static Dictionary<string, string> Targets(ZipArchive archive)
    {
        var targets = new Dictionary<string, string>(StringComparer.Ordinal);
        using var xml = Xml(Entry(archive, Relations));
        while (xml.Read())
        {
            if (
                xml.NodeType == XmlNodeType.Element
                && xml.LocalName == "Relationship"
                && xml.GetAttribute("Type")?.EndsWith("/worksheet", StringComparison.Ordinal)
                    == true
                && xml.GetAttribute("Id") is { } id
                && xml.GetAttribute("Target") is { } target
            )
            {
                targets[id] = target.StartsWith('/') ? target[1..] : "xl/" + target;
            }
        }

        return targets;
    }

    private static string Relation(XmlReader sheet)
    {
        var relation = string.Empty;
        while (sheet.MoveToNextAttribute())
        {
            if (sheet.LocalName == "id" && sheet.NamespaceURI.Length > 0)
            {
                relation = sheet.Value;
            }
        }

        sheet.MoveToElement();
        return relation;
    }

    /// <summary>Whether any cell holds something; reads on only until the first that does.</summary>
    private static bool HasCells(ZipArchiveEntry entry)
    {
        using var xml = Xml(entry);
        while (xml.Read())
        {
            if (xml.NodeType == XmlNodeType.Element && xml.LocalName is "v" or "is" or "f")
            {
                return true;
            }
        }

        return false;
    }

    public static ZipArchiveEntry Entry(ZipArchive archive, string part) =>
        archive.Entries.FirstOrDefault(entry => IsPart(entry, part))
        ?? throw new InvalidDataException($"The part {part} is missing.");

    private static bool IsPart(ZipArchiveEntry entry, string part) =>
        entry.FullName.Replace('\\', '/').Equals(part, StringComparison.OrdinalIgnoreCase);

    public static XmlReader Xml(ZipArchiveEntry entry) =>
        XmlReader.Create(
            entry.Open(),
            new XmlReaderSettings
            {
                CloseInput = true,
                DtdProcessing = DtdProcessing.Prohibit,
                XmlResolver = null,
                IgnoreComments = true,
                IgnoreProcessingInstructions = true,
            }
        );
}
