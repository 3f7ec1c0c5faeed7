using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Plenum.Core.Tests.House;

/// <summary>Arrows go one way: between projects, and between the chapters inside the core.</summary>
public partial class ArrowTests
{
    private static readonly string[] Chapters =
    [
        "Foundation",
        "Scope",
        "Breakdown",
        "People",
        "Estimate",
        "Network",
        "Baseline",
        "Status",
        "Accounts",
        "Forecast",
        "Changes",
        "Experience",
    ];

    private static readonly Dictionary<string, string[]> Allowed = new(StringComparer.Ordinal)
    {
        ["Plenum.Core"] = [],
        ["Plenum.Samples"] = [],
        ["Plenum.Exchange"] = ["Plenum.Core"],
        ["Plenum.Store"] = ["Plenum.Core"],
        ["Plenum.Workbench"] = ["Plenum.Core", "Plenum.Exchange", "Plenum.Store"],
        ["Plenum.Web"] = ["Plenum.Core", "Plenum.Workbench"],
        ["Plenum.Cli"] = ["Plenum.Core", "Plenum.Workbench", "Plenum.Samples", "Plenum.Web"],
    };

    public static TheoryData<string> ChapterNames => [.. Chapters];

    [Theory]
    [MemberData(nameof(ChapterNames))]
    public void A_chapter_uses_only_chapters_before_it_in_the_job(string chapter)
    {
        var folder = Path.Combine(Repository.Root, "src", "Plenum.Core", chapter);
        var earlier = Chapters[..(Array.IndexOf(Chapters, chapter) + 1)];
        var files = Directory.Exists(folder)
            ? Directory.GetFiles(folder, "*.cs", SearchOption.AllDirectories)
            : [];
        foreach (var file in files)
        {
            var text = File.ReadAllText(file);
            foreach (Match match in ChapterNamed().Matches(text))
            {
                Assert.True(
                    earlier.Contains(match.Groups[1].Value, StringComparer.Ordinal),
                    $"{Path.GetFileName(file)} of {chapter} uses {match.Value}"
                );
            }

            // what stands at the root of the core knows all chapters, so no chapter may know it
            Assert.DoesNotMatch(RootTypes(), text);
        }
    }

    [Fact]
    public void Projects_refer_only_to_projects_further_in()
    {
        foreach (
            var file in Directory.GetFiles(
                Path.Combine(Repository.Root, "src"),
                "*.csproj",
                SearchOption.AllDirectories
            )
        )
        {
            var name = Path.GetFileNameWithoutExtension(file);
            Assert.True(Allowed.ContainsKey(name), $"{name} has no place among the rooms");
            var references = XDocument
                .Load(file)
                .Descendants("ProjectReference")
                .Select(reference =>
                    Path.GetFileNameWithoutExtension(
                        reference.Attribute("Include")!.Value.Replace('\\', '/')
                    )
                );
            foreach (var reference in references)
            {
                Assert.Contains(reference, Allowed[name]);
            }
        }
    }

    [Fact]
    public void The_core_refers_to_nothing_but_the_base_library()
    {
        var references = typeof(Project)
            .Assembly.GetReferencedAssemblies()
            .Select(assembly => assembly.Name!);
        Assert.All(references, name => Assert.StartsWith("System", name, StringComparison.Ordinal));
    }

    [GeneratedRegex(
        @"Plenum\.Core\.(Foundation|Scope|Breakdown|People|Estimate|Network|Baseline|Status|Accounts|Forecast|Changes|Experience)\b"
    )]
    private static partial Regex ChapterNamed();

    [GeneratedRegex(
        @"\b(ProjectLayout|ProjectSettings|ProjectText|ProjectRules|ProjectAudit|ProjectTable)\b"
    )]
    private static partial Regex RootTypes();
}
