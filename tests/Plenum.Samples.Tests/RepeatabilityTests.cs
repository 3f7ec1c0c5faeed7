namespace Plenum.Samples.Tests;

public sealed class RepeatabilityTests
{
    [Fact]
    public void The_same_seed_gives_the_same_demo_byte_for_byte()
    {
        using var first = new TemporaryFolder();
        using var second = new TemporaryFolder();
        DemoProject.Write(first.Path, 42);
        DemoProject.Write(second.Path, 42);
        Assert.Equal(Bytes(first.Path), Bytes(second.Path));
    }

    [Fact]
    public void Another_seed_gives_other_figures_but_the_same_elements()
    {
        var other = Demo.Read(42);
        Assert.Equal(Demo.Files.Elements.Keys, other.Elements.Keys);
        Assert.NotEqual(Demo.Files.Budgets["03.2.04.4"], other.Budgets["03.2.04.4"]);
    }

    [Fact]
    public void The_same_number_and_seed_give_the_same_synthetic_project_byte_for_byte()
    {
        using var first = new TemporaryFolder();
        using var second = new TemporaryFolder();
        using var third = new TemporaryFolder();
        Write(first, 5);
        Write(second, 5);
        Write(third, 6);
        Assert.Equal(Bytes(first.Path), Bytes(second.Path));
        Assert.NotEqual(Bytes(first.Path)["budget.csv"], Bytes(third.Path)["budget.csv"]);
    }

    [Fact]
    public void The_committed_demo_is_what_the_generator_writes()
    {
        using var folder = new TemporaryFolder();
        DemoProject.Write(folder.Path);
        var written = Bytes(folder.Path);
        var committed = Bytes(CommittedFolder());
        Assert.Equal(written.Keys.Order(), committed.Keys.Order());
        Assert.All(
            written,
            file => Assert.True(file.Value == committed[file.Key], $"{file.Key} differs")
        );
    }

    [Fact]
    public void Files_are_utf8_without_a_mark_and_end_their_lines_with_a_line_feed()
    {
        using var folder = new TemporaryFolder();
        DemoProject.Write(folder.Path);
        foreach (var path in Directory.GetFiles(folder.Path))
        {
            var bytes = File.ReadAllBytes(path);
            Assert.NotEqual(0xEF, bytes[0]);
            Assert.DoesNotContain((byte)'\r', bytes);
            Assert.Equal((byte)'\n', bytes[^1]);
        }
    }

    [Fact]
    public void Writing_again_replaces_the_tables_and_leaves_other_files_alone()
    {
        using var folder = new TemporaryFolder();
        var note = Path.Combine(folder.Path, "note.txt");
        File.WriteAllText(note, "mine");
        File.WriteAllText(Path.Combine(folder.Path, "budget.csv"), "old");
        DemoProject.Write(folder.Path);
        DemoProject.Write(folder.Path);
        Assert.Equal("mine", File.ReadAllText(note));
        Assert.StartsWith(
            "package,",
            File.ReadAllText(Path.Combine(folder.Path, "budget.csv")),
            StringComparison.Ordinal
        );
        Assert.Empty(Directory.GetFiles(folder.Path, "*.part"));
    }

    private static void Write(TemporaryFolder folder, ulong seed) =>
        SyntheticProject.Write(folder.Path, 1234, seed, ct: TestContext.Current.CancellationToken);

    private static Dictionary<string, string> Bytes(string folder) =>
        Directory
            .GetFiles(folder, "*.csv")
            .ToDictionary(
                path => Path.GetFileName(path),
                path => Convert.ToHexString(File.ReadAllBytes(path))
            );

    private static string CommittedFolder()
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(at.FullName, "Plenum.slnx")))
        {
            at =
                at.Parent
                ?? throw new DirectoryNotFoundException(
                    "The repository was not found above the tests"
                );
        }
        return Path.Combine(at.FullName, "samples", "kestrel-bay");
    }
}
