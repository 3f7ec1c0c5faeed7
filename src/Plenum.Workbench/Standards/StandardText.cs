using System.Reflection;

namespace Plenum.Workbench.Standards;

/// <summary>
/// The text of a standard breakdown that comes with the program: what it is called and where it is from, then a list,
/// its cells between bars. A part with a type gets a package for each activity of the type's work set.
/// </summary>
/// <param name="Key">Its name on the command line.</param>
/// <param name="Code">Code of its root.</param>
/// <param name="Name">Its name.</param>
/// <param name="Source">Where it is from.</param>
/// <param name="About">What it is for.</param>
/// <param name="List">The list, with tabs between its cells.</param>
internal sealed record StandardText(
    string Key,
    string Code,
    string Name,
    string Source,
    string About,
    string List
)
{
    private const string Folder = "standards.";

    private static readonly string[] Keys =
    [
        "water-treatment-plant",
        "substation",
        "pumping-station",
        "aircraft-system",
    ];

    public static IReadOnlyList<StandardText> All { get; } = [.. Keys.Select(Read)];

    /// <summary>The lines of a text that comes with the program, without comments.</summary>
    public static IEnumerable<string> Lines(string name)
    {
        using var stream = Assembly
            .GetExecutingAssembly()
            .GetManifestResourceStream(Folder + name + ".txt")!;
        using var reader = new StreamReader(stream);
        while (reader.ReadLine() is { } line)
        {
            if (!line.StartsWith('#'))
            {
                yield return line;
            }
        }
    }

    private static StandardText Read(string name)
    {
        string[] lines = [.. Lines(name)];
        var empty = Array.IndexOf(lines, "");
        var heads = lines
            .Take(empty)
            .Select(line => line.Split(": ", 2))
            .ToDictionary(pair => pair[0], pair => pair[1], StringComparer.Ordinal);
        return new StandardText(
            heads["key"],
            heads["code"],
            heads["name"],
            heads["source"],
            heads["about"],
            string.Join(
                '\n',
                lines
                    .Skip(empty + 1)
                    .Select(line => line.Replace(" |", "\t", StringComparison.Ordinal))
            )
        );
    }
}
