using Plenum.Core.Breakdown;
using Plenum.Store.Tests.Support;

namespace Plenum.Store.Tests;

public sealed class ConcurrencyTests : IDisposable
{
    private static readonly TimeSpan Short = TimeSpan.FromMilliseconds(60);
    private readonly TemporaryFolder folder = new();

    public ConcurrencyTests() => Projects.With(folder.File(), GeneratedProject.Of(1, 12)).Dispose();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Of_two_who_loaded_the_same_revision_only_the_first_can_commit()
    {
        using var first = ProjectFile.Open(folder.File());
        using var second = ProjectFile.Open(folder.File());
        var seen = second.Loaded();
        first.SetText(first.Loaded(), ElementTable.Name, 1, "first");

        AssertProblem(
            StoreProblem.Conflict,
            () => second.SetText(seen, ElementTable.Name, 1, "second")
        );
        Assert.Equal("first", second.Loaded()[ElementTable.Definition].Texts(ElementTable.Name)[0]);
        second.SetText(second.Loaded(), ElementTable.Name, 1, "second");
    }

    [Fact]
    public void A_commit_on_top_of_an_edit_by_SQL_that_was_not_loaded_is_refused()
    {
        using var file = ProjectFile.Open(folder.File());
        var seen = file.Loaded();
        Sql.Run(folder.File(), "UPDATE elements SET name = 'by hand' WHERE id = 2");

        AssertProblem(StoreProblem.Conflict, () => file.SetText(seen, ElementTable.Name, 1, "x"));
        Assert.Equal(
            ["by hand"],
            Sql.Texts(folder.File(), "SELECT name FROM elements WHERE id = 2")
        );
    }

    [Fact]
    public void A_commit_on_top_of_an_older_value_is_refused()
    {
        using var file = ProjectFile.Open(folder.File());
        var old = file.Loaded();
        file.SetText(old, ElementTable.Name, 1, "newer");
        AssertProblem(StoreProblem.Conflict, () => file.SetText(old, ElementTable.Name, 1, "x"));
    }

    [Fact]
    public void Many_commits_of_one_file_follow_one_another_without_loading()
    {
        using var file = ProjectFile.Open(folder.File());
        var project = file.Loaded();
        for (var number = 0; number < 25; number++)
        {
            project = file.SetText(project, ElementTable.Name, 1, $"name {number}");
        }

        using var other = ProjectFile.Open(folder.File());
        SameProject.Assert(project, other.Loaded());
    }

    [Fact]
    public void While_another_program_writes_a_commit_says_busy_and_succeeds_later()
    {
        using var file = ProjectFile.Open(folder.File(), Short);
        var seen = file.Loaded();
        using (var other = Sql.Open(folder.File()))
        {
            Sql.Run(other, "BEGIN IMMEDIATE");
            AssertProblem(StoreProblem.Busy, () => file.SetText(seen, ElementTable.Name, 1, "x"));
        }

        file.SetText(seen, ElementTable.Name, 1, "x");
    }

    [Fact]
    public void While_another_process_writes_a_commit_says_busy_and_opening_and_reading_go_on()
    {
        using var file = ProjectFile.Open(folder.File(), Short);
        var seen = file.Loaded();
        using var process = Targets.Start("hold", folder.File());
        Assert.Equal("0", process.StandardOutput.ReadLine());

        AssertProblem(StoreProblem.Busy, () => file.SetText(seen, ElementTable.Name, 1, "x"));
        SameProject.Assert(seen, file.Loaded());
        using (var reader = ProjectFile.Open(folder.File(), Short))
        {
            SameProject.Assert(seen, reader.Loaded());
        }

        process.StandardInput.Close();
        process.WaitForExit();
        file.SetText(seen, ElementTable.Name, 1, "x");
    }

    [Fact]
    public void A_commit_waits_for_those_who_read_and_changes_nothing_when_they_take_too_long()
    {
        using var file = ProjectFile.Open(folder.File(), Short);
        var seen = file.Loaded();
        using (var reader = Sql.Open(folder.File()))
        {
            Sql.Run(reader, "BEGIN");
            using var command = reader.CreateCommand();
            command.CommandText = "SELECT count(*) FROM elements";
            command.ExecuteScalar();
            AssertProblem(StoreProblem.Busy, () => file.SetText(seen, ElementTable.Name, 1, "x"));
        }

        SameProject.Assert(seen, file.Loaded());
        file.SetText(seen, ElementTable.Name, 1, "x");
    }

    [Fact]
    public void A_file_that_is_locked_for_writing_cannot_be_opened_until_it_is_free()
    {
        using (var other = Sql.Open(folder.File()))
        {
            Sql.Run(other, "BEGIN EXCLUSIVE");
            AssertProblem(
                StoreProblem.Busy,
                () => ProjectFile.Open(folder.File(), Short).Dispose()
            );
        }

        ProjectFile.Open(folder.File(), Short).Dispose();
    }

    private static void AssertProblem(StoreProblem expected, Action action) =>
        Assert.Equal(expected, Assert.Throws<StoreException>(action).Problem);
}
