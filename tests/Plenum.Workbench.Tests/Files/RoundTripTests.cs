using Plenum.Core;
using Plenum.Exchange;
using Plenum.Exchange.Export;
using Plenum.Exchange.Import;
using Plenum.Oracle.Tables;

namespace Plenum.Workbench.Tests.Files;

public class RoundTripTests
{
    private const int Seeds = 300;

    [Theory]
    [InlineData("csv")]
    [InlineData("xlsx")]
    public void Export_then_import_into_an_empty_project_gives_an_equal_project(string format) =>
        Parallel.For(
            0,
            format == "csv" ? Seeds : Seeds / 4,
            new ParallelOptions { MaxDegreeOfParallelism = 2 },
            seed =>
            {
                using var folder = new TemporaryFolder();
                var project = Import(Project.Empty, EveryTable.Project(seed), folder["in"]);
                Export(project, folder["out"], format);
                var again = Importer.Run(Project.Empty, [folder["out"]], replace: false);
                Assert.True(
                    !again.Errors.Any,
                    $"seed {seed}: " + string.Join('\n', again.Errors.Items)
                );
                Assert.Equal(ProjectContent.Of(project), ProjectContent.Of(again.Project));
            }
        );

    [Fact]
    public void Importing_the_same_files_twice_changes_nothing_the_second_time() =>
        ForSeeds(
            (text, folder) =>
            {
                var project = Import(Project.Empty, text, folder["in"]);
                foreach (var replace in new[] { false, true })
                {
                    var again = Importer.Run(project, [folder["in"]], replace);
                    Assert.False(again.Errors.Any, string.Join('\n', again.Errors.Items));
                    Assert.Empty(again.Changes);
                    Assert.Same(project, again.Project);
                }
            }
        );

    [Fact]
    public void The_order_of_files_and_of_rows_does_not_matter() =>
        ForSeeds(
            (text, folder) =>
            {
                var project = Import(Project.Empty, text, folder["in"]);
                var turned = new TextProject();
                foreach (var table in text.TableNames.Reverse())
                {
                    foreach (var row in text.Rows(table).Reverse())
                    {
                        turned.Add(
                            table,
                            [.. row.Columns.Reverse().Select(column => (column, row[column]))]
                        );
                    }
                }

                Assert.Equal(
                    ProjectContent.Of(project),
                    ProjectContent.Of(Import(Project.Empty, turned, folder["turned"]))
                );
            }
        );

    [Fact]
    public void Replacement_by_an_export_undoes_what_came_after_it() =>
        ForSeeds(
            (text, folder) =>
            {
                var project = Import(Project.Empty, text, folder["in"]);
                Export(project, folder["out"], "csv");
                folder.Write("people.csv", "person,name,x_note\nP-extra,Somebody,new\n");
                var more = Importer.Run(project, [folder["people.csv"]], replace: false);
                Assert.False(more.Errors.Any);
                Assert.NotEqual(ProjectContent.Of(project), ProjectContent.Of(more.Project));
                if (!File.Exists(Path.Combine(folder["out"], "people.csv")))
                {
                    return;
                }

                var back = Importer.Run(more.Project, [folder["out"]], replace: true);
                Assert.False(back.Errors.Any, string.Join('\n', back.Errors.Items));
                Assert.Equal(ProjectContent.Of(project), ProjectContent.Of(back.Project));
            }
        );

    private static void ForSeeds(Action<TextProject, TemporaryFolder> check) =>
        Parallel.For(
            0,
            Seeds / 4,
            new ParallelOptions { MaxDegreeOfParallelism = 2 },
            seed =>
            {
                using var folder = new TemporaryFolder();
                check(EveryTable.Project(seed), folder);
            }
        );

    private static Project Import(Project before, TextProject text, string folder)
    {
        CsvFolder.Write(text, folder);
        var result = Importer.Run(before, [folder], replace: false);
        Assert.True(!result.Errors.Any, string.Join('\n', result.Errors.Items.Take(20)));
        return result.Project;
    }

    private static void Export(Project project, string folder, string format)
    {
        Directory.CreateDirectory(folder);
        using TablesWriter writer =
            format == "csv"
                ? new CsvTablesWriter(folder)
                : new XlsxTablesWriter(Path.Combine(folder, "project.xlsx"));
        ProjectExporter.Write(project, writer);
    }
}
