using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Time;
using Plenum.Store.Tests.Support;

namespace Plenum.Store.Tests;

/// <summary>The column cache beside the file is used when it is right, and never when it is not.</summary>
public sealed class ColumnCacheTests : IDisposable
{
    private readonly TemporaryFolder folder = new();
    private readonly Project project = GeneratedProject.Of(11);

    public ColumnCacheTests() => Projects.With(folder.File(), project).Dispose();

    private string Cache => folder.File() + "-columns";

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Closing_writes_the_cache_and_opening_uses_it()
    {
        AssertLoads(project, fromCache: true);
        AssertLoads(project, fromCache: true);
    }

    [Theory]
    [InlineData(21)]
    [InlineData(22)]
    [InlineData(23)]
    [InlineData(24)]
    public void Every_kind_of_cell_comes_back_from_the_cache(int seed)
    {
        var other = GeneratedProject.Of(seed, 60);
        Projects.With(folder.File("other.plenum"), other).Dispose();
        using var file = ProjectFile.Open(folder.File("other.plenum"));
        SameProject.Assert(other, file.Loaded());
        Assert.True(file.LoadedFromCache);
    }

    [Fact]
    public void Without_cache_the_tables_are_read_and_the_cache_is_written_again()
    {
        File.Delete(Cache);
        AssertLoads(project, fromCache: false);
        AssertLoads(project, fromCache: true);
    }

    [Fact]
    public void A_cache_that_was_saved_while_the_file_stays_open_is_used_by_the_next()
    {
        using var file = ProjectFile.Open(folder.File());
        var after = file.SetText(file.Loaded(), ElementTable.Name, 1, "renamed");
        AssertLoads(after, fromCache: false, close: false);
        file.SaveColumnCache();
        AssertLoads(after, fromCache: true);
    }

    [Fact]
    public void A_project_from_the_cache_can_be_changed_committed_and_loaded()
    {
        Project after;
        using (var file = ProjectFile.Open(folder.File()))
        {
            after = file.SetText(file.Loaded(), ElementTable.Name, 1, "renamed");
            Assert.True(file.LoadedFromCache);
        }

        AssertLoads(after, fromCache: true);
        File.Delete(Cache);
        AssertLoads(after, fromCache: false);
    }

    [Fact]
    public void Rows_that_stand_in_another_order_in_memory_come_back_in_the_order_of_the_file()
    {
        Project reversed;
        using (var file = ProjectFile.Open(folder.File()))
        {
            var before = file.Loaded();
            reversed = before.With(
                before.Tables.Select(table =>
                    table.InOrder([.. Enumerable.Range(0, table.Count).Reverse()])
                )
            );
            file.Commit(
                before,
                reversed,
                [],
                Projects.Entry,
                null,
                TestContext.Current.CancellationToken
            );
        }

        AssertLoads(new Project(project.Tables, 2), fromCache: true);
    }

    [Fact]
    public void An_edit_by_SQL_makes_the_cache_invalid_even_if_the_file_keeps_its_length()
    {
        var length = new FileInfo(folder.File()).Length;
        Sql.Run(folder.File(), "UPDATE periods SET \"end\" = '2001-02-03' WHERE id = 1");
        Assert.Equal(length, new FileInfo(folder.File()).Length);

        using var file = ProjectFile.Open(folder.File());
        var ends = file.Loaded()[PeriodTable.Definition].Ints(PeriodTable.End);
        Assert.False(file.LoadedFromCache);
        Assert.Equal(new DateOnly(2001, 2, 3).DayNumber, ends[0]);
    }

    [Fact]
    public void An_edit_by_SQL_in_write_ahead_mode_makes_the_cache_invalid()
    {
        using (var other = Sql.Open(folder.File()))
        {
            Sql.Run(other, "PRAGMA journal_mode = WAL");
            Sql.Run(other, "UPDATE elements SET name = 'by hand' WHERE id = 1");
        }

        using var file = ProjectFile.Open(folder.File());
        var elements = file.Loaded()[ElementTable.Definition];
        Assert.False(file.LoadedFromCache);
        Assert.Equal("by hand", elements.Texts(ElementTable.Name)[elements.RowOf(1)]);
    }

    [Fact]
    public void The_cache_of_another_project_is_not_used()
    {
        var other = GeneratedProject.Of(12);
        Projects.With(folder.File("other.plenum"), other).Dispose();
        File.Copy(folder.File("other.plenum-columns"), Cache, overwrite: true);
        AssertLoads(project, fromCache: false);
    }

    [Fact]
    public void An_older_revision_that_was_put_back_does_not_use_the_newer_cache()
    {
        var backup = File.ReadAllBytes(folder.File());
        using (var file = ProjectFile.Open(folder.File()))
        {
            file.SetText(file.Loaded(), ElementTable.Name, 1, "newer");
        }

        File.WriteAllBytes(folder.File(), backup);
        AssertLoads(project, fromCache: false);
    }

    [Fact]
    public void Two_histories_with_the_same_revision_do_not_share_a_cache()
    {
        var backup = File.ReadAllBytes(folder.File());
        using (var file = ProjectFile.Open(folder.File()))
        {
            file.SetText(file.Loaded(), ElementTable.Name, 1, "one way");
        }

        var cache = File.ReadAllBytes(Cache);
        File.WriteAllBytes(folder.File(), backup);
        Project after;
        using (var file = ProjectFile.Open(folder.File()))
        {
            after = file.SetText(file.Loaded(), ElementTable.Name, 1, "or other");
        }

        File.WriteAllBytes(Cache, cache);
        AssertLoads(after, fromCache: false);
    }

    [Fact]
    public void A_cache_that_was_cut_short_anywhere_is_not_used()
    {
        var whole = File.ReadAllBytes(Cache);
        foreach (
            var length in Enumerable
                .Range(0, 24)
                .Select(part => (int)(part * (long)whole.Length / 24))
                .Append(whole.Length - 1)
        )
        {
            File.WriteAllBytes(Cache, whole[..length]);
            AssertLoads(project, fromCache: false, close: false);
        }
    }

    [Fact]
    public void A_cache_with_one_byte_altered_is_not_used()
    {
        var whole = File.ReadAllBytes(Cache);
        var random = new Random(3);
        var tail = Enumerable.Range(1, 24).Select(back => whole.Length - back);
        foreach (
            var place in Enumerable
                .Range(0, 60)
                .Select(_ => random.Next(8, whole.Length))
                .Concat(tail)
        )
        {
            var altered = (byte[])whole.Clone();
            altered[place] ^= (byte)(1 << random.Next(8));
            File.WriteAllBytes(Cache, altered);
            AssertLoads(project, fromCache: false, close: false);
        }
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_cache_that_is_altered_while_in_use_is_noticed(bool cutShort)
    {
        using var file = ProjectFile.Open(folder.File());
        var loaded = file.Loaded();
        Assert.True(file.LoadedFromCache);
        var bytes = new byte[cutShort ? 8 : new FileInfo(Cache).Length];
        File.WriteAllBytes(Cache, bytes);

        var error = Assert.Throws<StoreException>(() =>
            loaded[ElementTable.Definition].ColumnAt(ElementTable.Name.Index)
        );
        Assert.Equal(StoreProblem.Damaged, error.Problem);
        Assert.Contains(
            "the project itself is safe",
            error.Message,
            StringComparison.OrdinalIgnoreCase
        );
        SameProject.Assert(project, file.Loaded());
    }

    [Fact]
    public void A_cache_that_cannot_be_written_is_no_error()
    {
        File.Delete(Cache);
        Directory.CreateDirectory(Cache);
        AssertLoads(project, fromCache: false);
        Directory.Delete(Cache);
        Directory.CreateDirectory(Cache + "-new");
        AssertLoads(project, fromCache: false);
        AssertLoads(project, fromCache: false);
    }

    [Fact]
    public void Columns_can_be_fetched_after_the_file_was_closed_and_from_several_threads()
    {
        Project loaded;
        using (var file = ProjectFile.Open(folder.File()))
        {
            loaded = file.Loaded();
            Assert.True(file.LoadedFromCache);
        }

        Parallel.For(
            0,
            200,
            index =>
            {
                var table = loaded.Tables[index % loaded.Tables.Count];
                foreach (var column in table.Definition.Columns)
                {
                    Assert.Equal(table.Count, table[column].Count);
                }
            }
        );
        SameProject.Assert(project, loaded);
    }

    private void AssertLoads(Project expected, bool fromCache, bool close = true)
    {
        var file = ProjectFile.Open(folder.File());
        SameProject.Assert(expected, file.Loaded());
        Assert.Equal(fromCache, file.LoadedFromCache);
        if (close)
        {
            file.Dispose();
        }
        else
        {
            file.CloseWithoutCache();
        }
    }
}
