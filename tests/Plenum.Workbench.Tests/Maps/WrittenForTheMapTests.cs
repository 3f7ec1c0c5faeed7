using System.Text.Encodings.Web;
using System.Text.Json;
using Plenum.Core;
using Plenum.Exchange.Import;
using Plenum.Workbench.Maps;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Tests.Maps;

/// <summary>
/// The files by which the map's own tests see that they read what is written here: documents of a small pump house,
/// and what they say as text. They are kept in the repository; here it is proved that they are still what is written.
/// Where one differs, what was written is put beside it, and only a person makes it the kept one.
/// </summary>
public class WrittenForTheMapTests
{
    private static readonly JsonSerializerOptions Readable = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private static readonly string Root = FindRoot();
    private static readonly string Kept = Path.Combine(
        Root,
        "src",
        "Plenum.Web",
        "map-tests",
        "written"
    );

    private static readonly Lazy<Project> PumpHouse = new(() =>
    {
        var folder = Path.Combine(Root, "tests", "Plenum.Cli.Tests", "PumpHouse");
        var result = Importer.Run(Project.Empty, [folder], replace: false);
        Assert.False(result.Errors.Any);
        return result.Project;
    });

    public static TheoryData<string> Lenses => [.. LensQuestion.Words];

    [Fact]
    public void The_kept_project_document_is_what_is_written() =>
        AssertKept("pump-house.plmp", Documents.Bytes(PumpHouse.Value));

    [Theory]
    [MemberData(nameof(Lenses))]
    public void The_kept_lens_document_is_what_is_written(string word) =>
        AssertKept(word + ".plln", Documents.Bytes(LensOf(word)));

    [Fact]
    public void The_kept_text_says_what_the_answers_say() =>
        AssertKept(
            "pump-house.json",
            [.. JsonSerializer.SerializeToUtf8Bytes(Said(PumpHouse.Value), Readable), (byte)'\n']
        );

    private static Lens LensOf(string word) =>
        new LensQuestion(word, null, word == LensQuestion.People ? "ann" : null).Ask(
            PumpHouse.Value
        );

    /// <summary>What the documents say, from the answers for people rather than from the documents.</summary>
    private static object Said(Project project)
    {
        var rows = new TreeQuestion().Ask(project).Rows;
        var marked = MapFindings.Of(project);
        return new
        {
            project.Revision,
            Currency = project.Settings.Currency.Code,
            MinorDigits = project.Settings.Currency.Digits,
            LevelNames = (string[])["Project", "Level 2", "Work package"],
            Accounts = project.Placement.Accounts.Codes.ToArray(),
            Elements = rows.Select(
                (row, i) =>
                    new
                    {
                        row.Code,
                        row.Name,
                        row.Level,
                        Kind = KindOf(row, i + 1 < rows.Count && rows[i + 1].Level > row.Level),
                        Budget = row.Budget * 100,
                        row.Hours,
                        Gap = row.Gap * 100 ?? (row.Kind == "branch" ? null : 0),
                        HasFinding = marked.At(i),
                    }
            ),
            Lenses = LensQuestion.Words.ToDictionary(
                word => word,
                word =>
                {
                    var lens = LensOf(word);
                    return new
                    {
                        lens.IsMix,
                        Classes = lens.Legend.Classes.Count,
                        ClassOf = lens.ClassOf.ToArray().Select(one => (int)one),
                    };
                }
            ),
        };
    }

    private static string KindOf(TreeRow row, bool hasParts) =>
        row.Kind switch
        {
            "planning_package" => "planning package",
            "work_package" => "work package",
            _ => hasParts ? "split" : "not split",
        };

    private static void AssertKept(string name, byte[] written)
    {
        var kept = Path.Combine(Kept, name);
        var beside = kept + ".received.txt";
        if (File.Exists(kept) && File.ReadAllBytes(kept).AsSpan().SequenceEqual(written))
        {
            File.Delete(beside);
            return;
        }

        Directory.CreateDirectory(Kept);
        File.WriteAllBytes(beside, written);
        Assert.Fail(
            $"{kept} is not what is written now; that is {beside}. Rename it if it is right."
        );
    }

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Plenum.slnx")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName
            ?? throw new InvalidOperationException("The tests run outside the repository.");
    }
}
