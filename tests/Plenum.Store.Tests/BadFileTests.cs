using Plenum.Core.Breakdown;
using Plenum.Store.Tests.Support;

namespace Plenum.Store.Tests;

public sealed class BadFileTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_file_that_is_missing_is_not_found_and_not_made()
    {
        AssertRefused(StoreProblem.NotFound, "There is no file");
        Assert.False(File.Exists(folder.File()));
    }

    [Fact]
    public void A_folder_is_not_a_project()
    {
        Directory.CreateDirectory(folder.File());
        AssertRefused(StoreProblem.NotAProject, "is a folder");
    }

    [Theory]
    [InlineData("")]
    [InlineData("x")]
    [InlineData("code,name\n1,Tank farm\n")]
    public void A_file_of_another_kind_is_not_a_project_and_stays_as_it_is(string content)
    {
        File.WriteAllText(folder.File(), content);
        AssertRefused(StoreProblem.NotAProject, "is not a Plenum project");
        Assert.Equal(content, File.ReadAllText(folder.File()));
    }

    [Fact]
    public void A_long_file_of_another_kind_is_not_a_project()
    {
        File.WriteAllText(folder.File(), string.Concat(Enumerable.Repeat("1,Tank farm\n", 5_000)));
        AssertRefused(StoreProblem.NotAProject, "is not a Plenum project");
    }

    [Fact]
    public void A_database_of_another_program_is_not_a_project_and_stays_as_it_is()
    {
        File.WriteAllBytes(folder.File(), []);
        Sql.Run(folder.File(), "CREATE TABLE elements (id INTEGER); PRAGMA application_id = 1");
        var before = File.ReadAllBytes(folder.File());
        AssertRefused(StoreProblem.NotAProject, "is not a Plenum project");
        Assert.Equal(before, File.ReadAllBytes(folder.File()));
    }

    [Fact]
    public void A_file_of_a_newer_version_is_refused_and_stays_as_it_is()
    {
        Projects.New(folder.File()).Dispose();
        Sql.Run(folder.File(), "PRAGMA user_version = 999");
        var before = File.ReadAllBytes(folder.File());
        AssertRefused(StoreProblem.NewerVersion, "newer version of Plenum");
        Assert.Equal(before, File.ReadAllBytes(folder.File()));
    }

    [Fact]
    public void A_file_that_does_not_say_its_revision_is_damaged()
    {
        Projects.New(folder.File()).Dispose();
        Sql.Run(folder.File(), "DELETE FROM plenum WHERE \"key\" = 'revision'");
        AssertRefused(StoreProblem.Damaged, "which project and revision");
    }

    [Fact]
    public void A_file_with_pages_of_rubbish_is_damaged()
    {
        Projects.With(folder.File(), GeneratedProject.Of(5)).Dispose();
        File.Delete(folder.File() + "-columns");
        var bytes = File.ReadAllBytes(folder.File());
        bytes.AsSpan(8_192, bytes.Length - 16_384).Fill(0xA5);
        File.WriteAllBytes(folder.File(), bytes);

        Assert.Equal(
            StoreProblem.Damaged,
            Assert
                .Throws<StoreException>(() =>
                {
                    using var file = ProjectFile.Open(folder.File());
                    file.Loaded();
                })
                .Problem
        );
    }

    [Theory]
    [InlineData("UPDATE elements SET kind = 'pump' WHERE id = 3", "column kind: \"pump\"")]
    [InlineData(
        "UPDATE periods SET \"end\" = '2026-02-30' WHERE id = 3",
        "column end: \"2026-02-30\""
    )]
    [InlineData("UPDATE elements SET quantity = '1,5' WHERE id = 3", "column quantity: \"1,5\"")]
    [InlineData(
        "UPDATE status SET percent_basis_points = 'half' WHERE id = 3",
        "column percent_basis_points: \"half\""
    )]
    [InlineData("UPDATE elements SET own_fields = 'x_zone: 3' WHERE id = 3", "column own_fields")]
    [InlineData(
        "UPDATE elements SET own_fields = '{\"x_zone\": [1]}' WHERE id = 3",
        "column own_fields"
    )]
    [InlineData(
        "UPDATE elements SET \"order\" = 9000000000 WHERE id = 3",
        "column order: \"9000000000\""
    )]
    [InlineData(
        "UPDATE budget SET package_id = 7000 WHERE id = 3",
        "table budget, row with id 3, column package: there is no row 7000 in elements"
    )]
    [InlineData("UPDATE elements SET parent_id = 3 WHERE id = 3", "in a ring")]
    public void A_cell_that_was_spoilt_by_SQL_is_named_with_its_table_row_and_column(
        string sql,
        string expected
    )
    {
        Projects.With(folder.File(), GeneratedProject.Of(6)).Dispose();
        Sql.Run(folder.File(), "PRAGMA foreign_keys = OFF; " + sql);

        using var file = ProjectFile.Open(folder.File());
        var error = Assert.Throws<StoreException>(() => file.Loaded());
        Assert.Equal(StoreProblem.Damaged, error.Problem);
        Assert.Contains(expected, error.Message, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void A_cell_that_was_set_right_by_SQL_is_read()
    {
        Projects.With(folder.File(), GeneratedProject.Of(6)).Dispose();
        Sql.Run(
            folder.File(),
            "UPDATE elements SET name = 'by hand', own_fields = '{\"x_zone\": 7}' WHERE id = 3"
        );

        using var file = ProjectFile.Open(folder.File());
        var elements = file.Loaded()[ElementTable.Definition];
        Assert.Equal("by hand", elements.Texts(ElementTable.Name)[elements.RowOf(3)]);
        Assert.Equal("7", elements.OwnFields["x_zone"].Values[elements.RowOf(3)]);
    }

    [Fact]
    public void A_project_is_not_made_over_a_file_or_folder_that_exists()
    {
        File.WriteAllText(folder.File(), "mine");
        AssertNotMade(StoreProblem.AlreadyExists, folder.File());
        Assert.Equal("mine", File.ReadAllText(folder.File()));
        AssertNotMade(StoreProblem.AlreadyExists, folder.Folder);
    }

    [Fact]
    public void A_project_is_not_made_in_a_folder_that_is_missing() =>
        AssertNotMade(StoreProblem.NotFound, Path.Combine(folder.Folder, "none", "x.plenum"));

    [Fact]
    public void Making_a_project_leaves_one_file_and_its_cache()
    {
        Projects.New(folder.File()).Dispose();
        Assert.Equal(
            ["x.plenum", "x.plenum-columns"],
            Directory
                .GetFiles(folder.Folder)
                .Select(Path.GetFileName)
                .Order(StringComparer.Ordinal),
            StringComparer.Ordinal
        );
    }

    private void AssertRefused(StoreProblem problem, string message)
    {
        var error = Assert.Throws<StoreException>(() => ProjectFile.Open(folder.File()).Dispose());
        Assert.Equal(problem, error.Problem);
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
    }

    private static void AssertNotMade(StoreProblem problem, string path) =>
        Assert.Equal(
            problem,
            Assert.Throws<StoreException>(() => Projects.New(path).Dispose()).Problem
        );
}
