using Plenum.Core.Foundation;
using Plenum.Exchange.Csv;
using Plenum.Exchange.Xlsx;

namespace Plenum.Exchange;

/// <summary>
/// A place where the rows of one table stand: a CSV file or a sheet of a workbook. Knows nothing of what the table means.
/// </summary>
public abstract class TableSource
{
    /// <param name="table">The table's name.</param>
    /// <param name="path">The file as it was named.</param>
    /// <param name="sheet">What follows the file's name where it holds more than one table.</param>
    private protected TableSource(string table, string path, string sheet = "")
    {
        Table = table;
        FilePath = path;
        File = Path.GetFileName(path) + sheet;
    }

    /// <summary>The file's name without folder and extension, or the sheet's name, as written.</summary>
    public string Table { get; }

    /// <summary>
    /// What errors call it: <c>status.csv</c>, or <c>plant.xlsx, sheet status</c>; with its folder where two files of
    /// that name are read together.
    /// </summary>
    public string File { get; private set; }

    /// <summary>The file as it was named.</summary>
    private protected string FilePath { get; }

    /// <summary>How many bytes reading it goes through, where that is known, for showing progress.</summary>
    public abstract long? Bytes { get; }

    /// <summary>
    /// Begins to read it, as often as wanted. Null after reporting why it cannot be read: no content, no header, not
    /// UTF-8, half a workbook. Costs the header only; for a sheet, a look through the sheets before it too.
    /// </summary>
    public abstract RowReader? Open(InputErrors errors);

    /// <summary>
    /// The tables in the named files and folders, in the order of the names. Of a folder: the CSV files (<c>.csv</c>,
    /// <c>.tsv</c>) and workbooks (<c>.xlsx</c>) that stand directly in it, in ordinal order of their names, without
    /// those whose name begins with <c>.</c> or <c>~$</c>. Of a workbook: its sheets, hidden ones too, without empty
    /// ones and those whose name begins with <c>_</c>. A path that is not there, another kind of file, and a folder
    /// without any table are errors. A file that is named twice is read once.
    /// </summary>
    public static IReadOnlyList<TableSource> Find(IEnumerable<string> paths, InputErrors errors)
    {
        var found = new List<TableSource>();
        foreach (var path in paths)
        {
            if (Directory.Exists(path))
            {
                AddFolder(path, found, errors);
            }
            else if (!System.IO.File.Exists(path))
            {
                errors.Add(
                    Path.GetFileName(path) is { Length: > 0 } name ? name : path,
                    "a file or folder",
                    $"\"{path}\" is not there: check the name"
                );
            }
            else if (!TryAdd(path, found, errors))
            {
                errors.Add(
                    Path.GetFileName(path),
                    "a file that ends in .csv, .tsv or .xlsx",
                    $"\"{Path.GetExtension(path)}\" files cannot be read: save it as CSV UTF-8 or as .xlsx"
                );
            }
        }

        TellApart(found);
        return found;
    }

    /// <summary>Sources that errors would call the same are called by their whole path.</summary>
    private static void TellApart(List<TableSource> found)
    {
        foreach (
            var same in found
                .GroupBy(source => source.File, StringComparer.OrdinalIgnoreCase)
                .Where(group => group.Count() > 1)
        )
        {
            foreach (var source in same)
            {
                source.File =
                    source.FilePath + source.File[Path.GetFileName(source.FilePath).Length..];
            }
        }
    }

    private static void AddFolder(string folder, List<TableSource> found, InputErrors errors)
    {
        IEnumerable<string> files;
        try
        {
            files = Directory
                .GetFiles(folder)
                .Where(file =>
                    !Path.GetFileName(file).StartsWith('.')
                    && !Path.GetFileName(file).StartsWith("~$", StringComparison.Ordinal)
                )
                .Order(StringComparer.Ordinal);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            errors.Add(
                folder,
                "a folder that may be read",
                $"the folder cannot be read: {e.Message}"
            );
            return;
        }

        var any = false;
        foreach (var file in files)
        {
            any |= TryAdd(file, found, errors);
        }

        if (!any)
        {
            errors.Add(
                folder,
                "files that end in .csv, .tsv or .xlsx",
                "the folder holds no table: name the folder in which the files stand"
            );
        }
    }

    /// <summary>False if the file is of no kind that holds tables.</summary>
    private static bool TryAdd(string path, List<TableSource> found, InputErrors errors)
    {
        var whole = Path.GetFullPath(path);
        if (found.Exists(source => Path.GetFullPath(source.FilePath) == whole))
        {
            return true;
        }

        switch (Path.GetExtension(path).ToUpperInvariant())
        {
            case ".CSV" or ".TSV":
                found.Add(new CsvSource(path));
                return true;
            case ".XLSX":
                found.AddRange(XlsxSource.Find(path, errors));
                return true;
            default:
                return false;
        }
    }
}
