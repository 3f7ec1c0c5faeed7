using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Plenum.Cli.Tests.Support;

/// <summary>
/// The small project of these tests, an invented pump house at the end of its third of six periods: its tables are in
/// the folder PumpHouse. Every test begins with a copy of the same file.
/// </summary>
internal static class PumpHouse
{
    public const string File = "pump-house.plenum";

    private static readonly Lazy<byte[]> Template = new(Make);

    public static string Tables { get; } = Path.Combine(Repository.Tests, "PumpHouse");

    /// <summary>A terminal in whose folder the project lies.</summary>
    public static Terminal Open()
    {
        var file = Template.Value;
        var terminal = new Terminal();
        System.IO.File.WriteAllBytes(terminal[File], file);
        return terminal;
    }

    /// <summary>A terminal in whose folder an empty project lies, with settings if any are given.</summary>
    public static Terminal Empty(params (string Key, string Value)[] settings)
    {
        var terminal = new Terminal();
        terminal.Do("new", File);
        if (settings.Length > 0)
        {
            var rows = settings.Select(setting => $"{setting.Key},{setting.Value}\n");
            System.IO.File.WriteAllText(
                terminal["project.csv"],
                "key,value\n" + string.Concat(rows)
            );
            terminal.Do("import", File, "project.csv");
        }

        return terminal;
    }

    /// <summary>Revision and all tables of the project as text.</summary>
    public static string ContentOf(Terminal terminal)
    {
        var folder = Path.Combine(Path.GetTempPath(), "plenum-" + Guid.NewGuid().ToString("N"));
        try
        {
            terminal.Do("export", File, folder);
            var text = new StringBuilder();
            using var tree = JsonDocument.Parse(terminal.Do("tree", File, "--json").Out);
            text.Append(
                CultureInfo.InvariantCulture,
                $"revision {tree.RootElement.GetProperty("revision").GetInt64()}\n"
            );
            foreach (var file in Directory.GetFiles(folder).Order(StringComparer.Ordinal))
            {
                text.Append(Path.GetFileName(file))
                    .Append('\n')
                    .Append(System.IO.File.ReadAllText(file));
            }

            return text.ToString();
        }
        finally
        {
            if (Directory.Exists(folder))
            {
                Directory.Delete(folder, recursive: true);
            }
        }
    }

    private static byte[] Make()
    {
        using var terminal = new Terminal();
        terminal.Do("new", File);
        terminal.Do("import", File, Tables);
        return System.IO.File.ReadAllBytes(terminal[File]);
    }
}
