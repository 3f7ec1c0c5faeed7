using Plenum.Core;
using Plenum.Exchange.Import;
using Plenum.Oracle.Tables;
using Plenum.Samples;

namespace Plenum.Workbench.Tests;

/// <summary>The demo project as a user imports it, and its tables as text. Made once.</summary>
internal static class DemoFiles
{
    private static readonly Lazy<(Project Project, TextProject Text)> Made = new(Make);

    public static Project Project => Made.Value.Project;

    public static TextProject Text => Made.Value.Text;

    private static (Project, TextProject) Make()
    {
        using var folder = new TemporaryFolder();
        DemoProject.Write(folder.Path);
        var result = Importer.Run(Core.Project.Empty, [folder.Path], replace: false);
        Assert.False(result.Errors.Any);
        var text = new TextProject();
        foreach (
            var table in new[]
            {
                "packages",
                "milestones",
                "milestone_status",
                "items",
                "item_steps",
                "credit_steps",
                "status",
                "elements",
                "budget",
            }
        )
        {
            Read(text, table, folder[table + ".csv"]);
        }

        return (result.Project, text);
    }

    private static void Read(TextProject text, string table, string path)
    {
        var lines = File.ReadAllLines(path);
        var headings = Cells(lines[0]);
        foreach (var line in lines.Skip(1))
        {
            var cells = Cells(line);
            text.Add(table, [.. headings.Select((heading, i) => (heading, cells[i]))]);
        }
    }

    private static List<string> Cells(string line)
    {
        List<string> cells = [""];
        var quoted = false;
        foreach (var letter in line)
        {
            quoted ^= letter == '"';
            if (letter == ',' && !quoted)
            {
                cells.Add("");
            }
            else if (letter != '"')
            {
                cells[^1] += letter;
            }
        }

        return cells;
    }
}
