using CsCheck;
using Plenum.Store.Tests.Support;

namespace Plenum.Store.Tests;

public sealed class RoundTripTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_new_project_has_no_rows_and_revision_zero()
    {
        using (Projects.New(folder.File())) { }

        using var file = ProjectFile.Open(folder.File());
        var loaded = file.Loaded();
        Assert.Equal(0, loaded.Revision);
        Assert.All(loaded.Tables, table => Assert.Equal(0, table.Count));
    }

    [Fact]
    public void Every_kind_of_cell_in_every_table_comes_back_as_it_was_committed() =>
        Gen.Int[0, 100_000]
            .Sample(
                seed =>
                {
                    using var own = new TemporaryFolder();
                    var project = GeneratedProject.Of(seed);
                    Projects.With(own.File(), project).Dispose();
                    File.Delete(own.File() + "-columns");

                    using var file = ProjectFile.Open(own.File());
                    SameProject.Assert(project, file.Loaded());
                    Assert.False(file.LoadedFromCache);
                },
                iter: 12
            );
}
