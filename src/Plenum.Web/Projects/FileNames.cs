using System.Text;

namespace Plenum.Web.Projects;

/// <summary>
/// Judges names that come from a browser before they become names of files here: the same names are refused on every
/// system, so that a file that was taken on one can be taken on all.
/// </summary>
public static class FileNames
{
    /// <summary>The longest name, bytes of UTF-8; more does not fit beside an ending on common file systems.</summary>
    public const int MostBytes = 200;

    private static readonly string[] Endings = [".csv", ".tsv", ".xlsx"];

    private static readonly string[] Devices =
    [
        "CON",
        "PRN",
        "AUX",
        "NUL",
        .. Enumerable.Range(0, 10).SelectMany(number => new[] { $"COM{number}", $"LPT{number}" }),
        "COM¹",
        "COM²",
        "COM³",
        "LPT¹",
        "LPT²",
        "LPT³",
    ];

    /// <summary>Why this cannot be a file's name; null if it can.</summary>
    public static string? Fault(string name) =>
        name.Length == 0 ? "A file has a name."
        : name is "." or ".." || name.AsSpan().IndexOfAny('/', '\\') >= 0
            ? $"\"{Shown(name)}\" leads to another folder; the name of a file is expected."
        : name.Any(sign => char.IsControl(sign) || "<>:\"|?*".Contains(sign))
            ? $"\"{Shown(name)}\" holds a sign that names of files cannot have on every system: letters, digits, spaces, hyphens and points are expected."
        : name[0] is '.' || name.StartsWith("~$", StringComparison.Ordinal)
            ? $"\"{Shown(name)}\" begins as names of hidden files do; choose another name."
        : name[^1] is '.' or ' ' || name[0] is ' '
            ? $"\"{Shown(name)}\" begins or ends with a space or a point; take it away."
        : IsDevice(name)
            ? $"\"{Shown(name)}\" is the name of a device on some systems; choose another name."
        : Encoding.UTF8.GetByteCount(name) > MostBytes
            ? $"\"{Shown(name)}\" is too long: at most {MostBytes} letters are expected."
        : null;

    /// <summary>Why this cannot be a file of tables, alone or in one folder; null if it can.</summary>
    /// <param name="path">Such as <c>elements.csv</c> or <c>tables/elements.csv</c>.</param>
    public static string? FaultOfTables(string path)
    {
        var parts = path.Split('/');
        if (parts.Length > 2)
        {
            return $"\"{Shown(path)}\" lies deeper than one folder; a folder stands for the files directly in it.";
        }

        return parts.Select(Fault).FirstOrDefault(fault => fault is not null)
            ?? (
                Endings.Any(ending => path.EndsWith(ending, StringComparison.OrdinalIgnoreCase))
                    ? null
                    : $"\"{Shown(path)}\" cannot be read: save it as CSV UTF-8 or as .xlsx."
            );
    }

    private static bool IsDevice(string name)
    {
        var point = name.IndexOf('.', StringComparison.Ordinal);
        var stem = (point < 0 ? name : name[..point]).TrimEnd(' ');
        return Devices.Contains(stem, StringComparer.OrdinalIgnoreCase);
    }

    private static string Shown(string name)
    {
        const int Longest = 80;
        var clean = new string([.. name.Select(sign => char.IsControl(sign) ? '�' : sign)]);
        return clean.Length <= Longest ? clean : clean[..Longest] + "…";
    }
}
