using System.Globalization;
using Plenum.Core.Breakdown;
using Plenum.Store.Sqlite;
using Plenum.Store.Tests.Support;

namespace Plenum.Store.Tests;

/// <summary>Full disks, files that cannot be written, and files between two layouts.</summary>
public sealed class DiskTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose()
    {
        if (File.Exists(folder.File()))
        {
            File.SetAttributes(folder.File(), FileAttributes.Normal);
        }

        folder.Dispose();
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(40)]
    public void A_commit_that_does_not_fit_leaves_the_old_revision_and_succeeds_once_there_is_room(
        int spare
    )
    {
        var before = GeneratedProject.Of(7, 12);
        using var file = Projects.With(folder.File(), before);
        var larger = GeneratedProject.Of(8, 400);
        var after = new Core.Project(larger.Tables, 2);
        Limit(file, file.Connection.Number("PRAGMA page_count") + spare);

        var error = Assert.Throws<StoreException>(() => Replace());
        Assert.Equal(StoreProblem.DiskFull, error.Problem);
        Assert.Contains("as it was before", error.Message, StringComparison.Ordinal);
        Assert.Equal(["ok"], Sql.Texts(folder.File(), "PRAGMA integrity_check"));
        using (var other = ProjectFile.Open(folder.File()))
        {
            SameProject.Assert(before, other.Loaded());
        }

        Limit(file, 1_000_000);
        Replace();
        using var reopened = ProjectFile.Open(folder.File());
        SameProject.Assert(after, reopened.Loaded());

        void Replace() =>
            file.Commit(
                before,
                after,
                [
                    .. after
                        .Tables.Zip(before.Tables)
                        .Select(pair => new Core.Foundation.Tables.TableChange(
                            pair.First.Definition,
                            [.. pair.First.Ids.Except(pair.Second.Ids)],
                            [.. pair.First.Ids.Intersect(pair.Second.Ids)],
                            []
                        )),
                ],
                Projects.Entry
            );
    }

    [Fact]
    public void A_file_that_is_marked_read_only_can_be_read_but_not_changed()
    {
        var project = GeneratedProject.Of(9, 12);
        Projects.With(folder.File(), project).Dispose();
        File.SetAttributes(folder.File(), FileAttributes.ReadOnly);

        using var file = ProjectFile.Open(folder.File());
        Assert.True(file.IsReadOnly);
        SameProject.Assert(project, file.Loaded());
        var error = Assert.Throws<StoreException>(() =>
            file.SetText(project, ElementTable.Name, 1, "x")
        );
        Assert.Equal(StoreProblem.ReadOnly, error.Problem);
    }

    [Fact]
    public void A_file_of_an_older_layout_is_brought_up_to_date_on_opening()
    {
        WriteOlder();
        using var file = ProjectFile.Open(folder.File());
        Assert.Equal(Migration.All.Count, file.Connection.Number("PRAGMA user_version"));
        Assert.Equal(0, file.Loaded().Revision);
    }

    [Fact]
    public void A_file_of_an_older_layout_that_is_read_only_is_refused()
    {
        WriteOlder();
        File.SetAttributes(folder.File(), FileAttributes.ReadOnly);
        Assert.Equal(
            StoreProblem.ReadOnly,
            Assert.Throws<StoreException>(() => ProjectFile.Open(folder.File()).Dispose()).Problem
        );
    }

    [Fact]
    public void A_step_of_the_layout_that_fails_is_undone_whole_and_those_before_it_stay()
    {
        using var database = Database.Create(folder.File(), folder.File());
        Migration[] steps =
        [
            new(1, "CREATE TABLE a (x)"),
            new(2, "CREATE TABLE b (x); CREATE TABLE a (x)"),
            new(3, "CREATE TABLE c (x)"),
        ];
        Assert.Throws<StoreException>(() => Migration.Apply(database, steps));
        Assert.Equal(1, database.Number("PRAGMA user_version"));
        Assert.Equal("a", database.Text("SELECT group_concat(name) FROM sqlite_schema"));

        steps[1] = new(2, "CREATE TABLE b (x)");
        Migration.Apply(database, steps);
        Assert.Equal(3, database.Number("PRAGMA user_version"));
        Assert.Equal("a,b,c", database.Text("SELECT group_concat(name) FROM sqlite_schema"));
    }

    private static void Limit(ProjectFile file, long pages) =>
        file.Connection.Execute(
            string.Create(CultureInfo.InvariantCulture, $"PRAGMA max_page_count = {pages}")
        );

    private void WriteOlder()
    {
        using var database = Database.Create(folder.File(), folder.File());
        Migration.Apply(database, [Migration.All[0]]);
        FileFacts.Write(database, Guid.NewGuid(), 0, Guid.NewGuid(), Core.Project.Empty.Settings);
    }
}
