using System.IO.Compression;
using System.Net;
using Plenum.Web.Projects;
using Plenum.Web.Tests.Support;
using Plenum.Workbench;

namespace Plenum.Web.Tests;

/// <summary>A project's tables on their way out.</summary>
public class ExportTests
{
    [Fact]
    public async Task The_archive_holds_the_files_that_the_command_writes()
    {
        await using var site = await Site.Open();
        var bytes = await site.Http.GetByteArrayAsync(
            "/projects/shed/export.zip",
            TestContext.Current.CancellationToken
        );
        await Desk.Do("export", site.Desk["shed.plenum"], site.Desk["out"]);
        await using var zip = new ZipArchive(new MemoryStream(bytes));
        Assert.Equal(
            Directory
                .GetFiles(site.Desk["out"])
                .Select(Path.GetFileName)
                .Order(StringComparer.Ordinal),
            zip.Entries.Select(entry => entry.FullName)
        );
        foreach (var entry in zip.Entries)
        {
            using var text = new StreamReader(
                await entry.OpenAsync(TestContext.Current.CancellationToken)
            );
            Assert.Equal(
                await File.ReadAllTextAsync(
                    Path.Combine(site.Desk["out"], entry.FullName),
                    TestContext.Current.CancellationToken
                ),
                await text.ReadToEndAsync(TestContext.Current.CancellationToken)
            );
        }
    }

    [Fact]
    public async Task The_workbook_brings_the_same_rows_back()
    {
        await using var site = await Site.Open();
        var answer = await site.Http.GetAsync(
            "/projects/shed/export.xlsx",
            TestContext.Current.CancellationToken
        );
        Assert.Equal("SHED.xlsx", answer.Content.Headers.ContentDisposition!.FileName);
        var back = site.Desk["back.xlsx"];
        await File.WriteAllBytesAsync(
            back,
            await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken),
            TestContext.Current.CancellationToken
        );
        var again = await Desk.Ask(
            "import",
            site.Desk["shed.plenum"],
            back,
            "--dry-run",
            "--replace"
        );
        Assert.Empty(again.GetProperty("changed").EnumerateObject());
    }

    [Fact]
    public async Task A_file_that_was_fetched_is_gone_here()
    {
        await using var site = await Site.Open();
        var job = site.Exports.Begin(site.Shelf.Find("shed")!, ExportFormat.Csv);
        await job.Done;
        var path = job.FilePath!;
        Assert.True(File.Exists(path));
        Assert.Equal("SHED.zip", Path.GetFileName(path));
        var address = ExportEndpoints.Address(job);
        await site.Http.GetByteArrayAsync(address, TestContext.Current.CancellationToken);
        for (var wait = 0; File.Exists(path) && wait < 100; wait++)
        {
            await Task.Delay(50, TestContext.Current.CancellationToken);
        }

        Assert.False(File.Exists(path));
        var again = await site.Http.GetAsync(address, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, again.StatusCode);
    }

    [Fact]
    public async Task An_export_that_is_stopped_leaves_nothing()
    {
        await using var site = await Site.Open();
        var job = site.Exports.Begin(site.Shelf.Find("shed")!, ExportFormat.Csv);
        job.Dispose();
        await job.Done;
        for (var wait = 0; Left(site) > 0 && wait < 100; wait++)
        {
            await Task.Delay(50, TestContext.Current.CancellationToken);
        }

        Assert.Equal(0, Left(site));
        Assert.Null(site.Exports.Find("shed", job.Id));
    }

    [Theory]
    [InlineData("/projects/shed/export.pdf")]
    [InlineData("/projects/none/export.zip")]
    [InlineData("/projects/shed/exports/0")]
    public async Task What_is_not_there_is_not_found(string address)
    {
        await using var site = await Site.Open();
        var answer = await site.Http.GetAsync(address, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task A_workbook_of_an_empty_project_is_refused_with_the_reason()
    {
        await using var site = await Site.Open();
        await Desk.Do("new", site.Desk["empty.plenum"]);
        site.Shelf.Add(site.Desk["empty.plenum"]);
        var answer = await site.Http.GetAsync(
            "/projects/empty/export.xlsx",
            TestContext.Current.CancellationToken
        );
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.StartsWith(
            "The project is empty",
            await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken),
            StringComparison.Ordinal
        );
    }

    private static int Left(Site site) =>
        Directory
            .GetDirectories(site.Passing)
            .Sum(run => Directory.GetFileSystemEntries(run).Length);
}
