using System.IO.Compression;
using System.Xml;

namespace Plenum.Exchange.Xlsx;

/// <summary>
/// The cells of a sheet that hold no data although they show something, in the order of the rows: formulas, and values
/// that are errors. The value beside a formula in the file is the last one that some program worked out, if any did, so
/// it may be stale and is not taken. The library that reads the values tells neither.
/// </summary>
internal sealed class CellFaults : IDisposable
{
    private readonly ZipArchive archive;
    private readonly XmlReader xml;
    private bool holdsError;

    private CellFaults(ZipArchive archive, XmlReader xml)
    {
        this.archive = archive;
        this.xml = xml;
    }

    /// <summary>The row of the cell at hand, from 1; <see cref="int.MaxValue"/> behind the last.</summary>
    public int Row { get; private set; }

    /// <summary>The column of the cell at hand, from 0.</summary>
    public int Column { get; private set; } = -1;

    /// <summary>The error that the cell shows, such as #N/A; null for a formula.</summary>
    public string? Error { get; private set; }

    /// <summary>Opens the sheet and goes to its first such cell.</summary>
    public static CellFaults Open(string path, Sheet sheet)
    {
        var package = new ZipArchive(Workbook.OpenFile(path), ZipArchiveMode.Read);
        try
        {
            var faults = new CellFaults(package, Workbook.Xml(Workbook.Entry(package, sheet.Part)));
            faults.Next();
            return faults;
        }
        catch
        {
            package.Dispose();
            throw;
        }
    }

    /// <summary>Goes to the next such cell.</summary>
    public void Next()
    {
        Error = null;
        while (xml.Read())
        {
            if (xml.NodeType != XmlNodeType.Element)
            {
                continue;
            }

            switch (xml.LocalName)
            {
                case "row":
                    Row = xml.GetAttribute("r") is { } row ? XmlConvert.ToInt32(row) : Row + 1;
                    Column = -1;
                    break;
                case "c":
                    Column = xml.GetAttribute("r") is { } cell ? ColumnOf(cell) : Column + 1;
                    holdsError = xml.GetAttribute("t") == "e";
                    break;
                case "f" when Column >= 0:
                    holdsError = false;
                    return;
                case "v" when holdsError:
                    holdsError = false;
                    Error = xml.IsEmptyElement || !xml.Read() ? string.Empty : xml.Value;
                    return;
            }
        }

        Row = int.MaxValue;
    }

    public void Dispose()
    {
        xml.Dispose();
        archive.Dispose();
    }

    /// <summary>The column of a reference such as AB12, from 0.</summary>
    private static int ColumnOf(string reference)
    {
        var column = 0;
        foreach (var letter in reference)
        {
            if (!char.IsAsciiLetter(letter))
            {
                break;
            }

            column = (column * 26) + (char.ToUpperInvariant(letter) - 'A' + 1);
        }

        return column - 1;
    }
}
