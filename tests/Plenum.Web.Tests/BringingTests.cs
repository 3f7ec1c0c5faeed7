using System.Net;
using Plenum.Web.Host;
using Plenum.Web.Projects;
using Plenum.Web.Tests.Support;

namespace Plenum.Web.Tests;

/// <summary>Files on their way from a browser into a folder of this machine.</summary>
public class BringingTests(SharedSite shared) : IClassFixture<SharedSite>
{
    private const string People = "person,name\nc.roe,Cy Roe\n";

    [Fact]
    public async Task A_file_that_the_page_brings_is_there()
    {
        var site = shared.Site;
        var files = site.Imports.Begin("shed");
        var answer = await site.Put(
            files,
            "tables/people.csv",
            new StringContent(People),
            await site.Token()
        );
        Assert.Equal(HttpStatusCode.NoContent, answer.StatusCode);
        Assert.Equal(
            new BroughtFile("tables/people.csv", People.Length),
            Assert.Single(files.Files)
        );
        using var reading = files.BeginReading();
        var path = Assert.Single(reading.Paths);
        Assert.StartsWith(site.Passing, path, StringComparison.Ordinal);
        Assert.Equal(
            People,
            await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken)
        );
    }

    [Theory]
    [InlineData("")]
    [InlineData(".")]
    [InlineData("..")]
    [InlineData("../people.csv")]
    [InlineData("tables/../../people.csv")]
    [InlineData("tables/../people.csv")]
    [InlineData("..\\people.csv")]
    [InlineData("/etc/people.csv")]
    [InlineData("C:\\people.csv")]
    [InlineData("C:people.csv")]
    [InlineData("\\\\host\\share\\people.csv")]
    [InlineData("people.csv\0.txt")]
    [InlineData("people\n.csv")]
    [InlineData("people.csv:stream")]
    [InlineData("CON.csv")]
    [InlineData("nul")]
    [InlineData("lpt1.tsv")]
    [InlineData("aux/people.csv")]
    [InlineData("COM¹.csv")]
    [InlineData("people.csv.")]
    [InlineData("people.csv ")]
    [InlineData(".people.csv")]
    [InlineData("~$people.xlsx")]
    [InlineData("a/b/people.csv")]
    [InlineData("people.exe")]
    [InlineData("people")]
    public async Task A_name_that_is_not_plainly_a_file_of_tables_is_refused(string name)
    {
        var site = shared.Site;
        var files = site.Imports.Begin("shed");
        var answer = await site.Put(files, name, new StringContent(People), await site.Token());
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.NotEmpty(
            await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)
        );
        Assert.Empty(files.Files);
        Assert.Empty(Directory.GetFileSystemEntries(files.Folder));
    }

    [Fact]
    public void A_name_of_more_than_200_bytes_is_refused()
    {
        Assert.Null(FileNames.FaultOfTables(new string('a', 196) + ".csv"));
        Assert.NotNull(FileNames.FaultOfTables(new string('a', 197) + ".csv"));
        Assert.NotNull(FileNames.FaultOfTables(new string('é', 99) + ".csv"));
    }

    [Fact]
    public async Task Without_the_pages_token_nothing_is_taken()
    {
        var site = shared.Site;
        var files = site.Imports.Begin("shed");
        var without = await site.Put(files, "people.csv", new StringContent(People), null);
        Assert.Equal(HttpStatusCode.BadRequest, without.StatusCode);
        var wrong = await site.Put(files, "people.csv", new StringContent(People), "guess");
        Assert.Equal(HttpStatusCode.BadRequest, wrong.StatusCode);
        Assert.Empty(files.Files);
    }

    [Fact]
    public async Task Only_who_knows_the_number_of_an_import_can_bring_files_to_it()
    {
        var site = shared.Site;
        var files = site.Imports.Begin("other");
        Assert.Matches("^[0-9a-f]{32}$", files.Id);
        Assert.NotEqual(files.Id, site.Imports.Begin("other").Id);
        Assert.Null(site.Imports.Find("shed", files.Id));
        Assert.Null(site.Imports.Find("other", new string('0', 32)));
        Assert.Same(files, site.Imports.Find("other", files.Id));
    }

    [Fact]
    public async Task More_than_a_gigabyte_is_refused_before_it_comes()
    {
        await using var site = await Site.Open();
        // asks before it sends
        site.Http.DefaultRequestHeaders.ExpectContinue = true;
        var files = site.Imports.Begin("shed");
        using var content = new TooLong();
        using var answer = await site.Put(files, "actuals.csv", content, await site.Token());
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Empty(files.Files);
    }

    [Fact]
    public async Task Files_that_are_more_than_a_gigabyte_together_are_refused()
    {
        var site = shared.Site;
        var files = site.Imports.Begin("shed");
        await using var endless = new Endless(UploadLimits.MostBytes + 1);
        var refused = await Assert.ThrowsAsync<NotTakenException>(() =>
            files.Take("actuals.csv", 1, endless, TestContext.Current.CancellationToken)
        );
        Assert.Equal(413, refused.Status);
        Assert.Empty(Directory.GetFileSystemEntries(files.Folder));
        Assert.Equal(0, files.Received);
    }

    [Fact]
    public async Task At_most_200_files_come_in_one_import()
    {
        var site = shared.Site;
        var files = site.Imports.Begin("shed");
        for (var number = 0; number < UploadLimits.MostFiles; number++)
        {
            await Take(files, $"{number}/people.csv", 1);
        }

        var refused = await Assert.ThrowsAsync<NotTakenException>(() =>
            Take(files, "people.csv", 1)
        );
        Assert.Equal(413, refused.Status);
        // one that is there already may be brought again
        await Take(files, "7/people.csv", 2);
        Assert.Equal(UploadLimits.MostFiles, files.Files.Count);
    }

    [Fact]
    public async Task A_mended_file_takes_the_place_of_the_one_in_the_folder()
    {
        var site = shared.Site;
        var files = site.Imports.Begin("shed");
        await Take(files, "tables/people.csv", 1);
        await Take(files, "tables/units.csv", 1);
        await Take(files, "People.csv", 2);
        Assert.Equal(
            ["tables/people.csv", "tables/units.csv"],
            files.Files.Select(file => file.Name)
        );
    }

    [Fact]
    public async Task Files_of_one_name_in_two_folders_stay_two_files()
    {
        var site = shared.Site;
        var files = site.Imports.Begin("shed");
        await Take(files, "january/actuals.csv", 1);
        await Take(files, "february/actuals.csv", 1);
        await Take(files, "actuals.csv", 1);
        Assert.Equal(3, files.Files.Count);
    }

    [Fact]
    public async Task Files_do_not_change_while_they_are_read()
    {
        var site = shared.Site;
        var files = await site.Bring(("people.csv", People));
        using (files.BeginReading())
        {
            var refused = await Assert.ThrowsAsync<NotTakenException>(() =>
                Take(files, "people.csv", 2)
            );
            Assert.Equal(409, refused.Status);
            files.Clear();
            Assert.Single(files.Files);
        }

        files.Clear();
        Assert.Empty(files.Files);
        Assert.Empty(Directory.GetFileSystemEntries(files.Folder));
    }

    [Fact]
    public async Task A_file_that_is_broken_off_leaves_nothing()
    {
        var site = shared.Site;
        var files = site.Imports.Begin("shed");
        using var stop = new CancellationTokenSource();
        await using var endless = new Endless(long.MaxValue, () => stop.CancelAfter(50));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            files.Take("actuals.csv", 1, endless, stop.Token)
        );
        Assert.Empty(Directory.GetFileSystemEntries(files.Folder));
        Assert.Equal(0, files.Received);
    }

    [Fact]
    public async Task Leaving_removes_the_files_once_nobody_reads_them()
    {
        var site = shared.Site;
        var files = await site.Bring(("people.csv", People));
        var reading = files.BeginReading();
        files.Dispose();
        Assert.Null(site.Imports.Find("shed", files.Id));
        Assert.True(Directory.Exists(files.Folder));
        reading.Dispose();
        Assert.False(Directory.Exists(files.Folder));
        var answer = await site.Put(
            files,
            "people.csv",
            new StringContent(People),
            await site.Token()
        );
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task Leaving_breaks_off_what_is_still_coming()
    {
        var site = shared.Site;
        var files = site.Imports.Begin("shed");
        await using var endless = new Endless(long.MaxValue, files.Dispose);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            files.Take("actuals.csv", 1, endless, TestContext.Current.CancellationToken)
        );
        Assert.False(Directory.Exists(files.Folder));
    }

    [Fact]
    public async Task The_end_of_the_program_removes_all_that_was_passing_through()
    {
        using var desk = new Desk();
        Directory.CreateDirectory(desk["passing"]);
        var settings = new WebSettings([], desk.Folder, Temporary: desk["passing"]);
        using (var room = new TemporaryRoom(settings))
        {
            using var imports = new ImportDesk(room);
            var files = imports.Begin("shed");
            await Take(files, "people.csv", 1);
            Assert.NotEmpty(Directory.GetDirectories(desk["passing"]));
        }

        Assert.Empty(Directory.GetFileSystemEntries(desk["passing"]));
    }

    [Fact]
    public void What_a_broken_off_run_has_left_is_removed_at_the_next_start_and_nothing_of_a_living_one()
    {
        using var desk = new Desk();
        Directory.CreateDirectory(desk["passing"]);
        var settings = new WebSettings([], desk.Folder, Temporary: desk["passing"]);
        desk.Write("passing/plenum-run-dead/x/people.csv", People);
        desk.Write("passing/plenum-run-dead.lock", "");
        desk.Write("passing/plenum-run-half/x/people.csv", People);
        desk.Write("passing/mine/people.csv", People);
        using var living = new TemporaryRoom(settings);
        var folder = living.NewFolder();
        desk.Write("passing/plenum-run-dead/x/people.csv", People);
        desk.Write("passing/plenum-run-dead.lock", "");
        using var next = new TemporaryRoom(settings);
        Assert.True(Directory.Exists(folder));
        Assert.True(File.Exists(desk["passing/mine/people.csv"]));
        Assert.Equal(
            ["mine", Path.GetFileName(Path.GetDirectoryName(folder))],
            Directory
                .GetDirectories(desk["passing"])
                .Select(Path.GetFileName)
                .Order(StringComparer.Ordinal)
        );
        Assert.False(File.Exists(desk["passing/plenum-run-dead.lock"]));
    }

    [Fact]
    public void Only_the_person_can_look_into_the_folder()
    {
        Assert.SkipWhen(
            OperatingSystem.IsWindows(),
            "Windows keeps each person's temporary folder apart."
        );
        using var desk = new Desk();
        Directory.CreateDirectory(desk["passing"]);
        using var room = new TemporaryRoom(
            new WebSettings([], desk.Folder, Temporary: desk["passing"])
        );
        var own = Path.GetDirectoryName(room.NewFolder())!;
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(
                UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute,
                File.GetUnixFileMode(own)
            );
        }
    }

    private static Task Take(BroughtFiles files, string name, int batch) =>
        files.Take(name, batch, Desk.Bytes(People), TestContext.Current.CancellationToken);

    /// <summary>Says that it is longer than may come, and is never sent whole.</summary>
    private sealed class TooLong : HttpContent
    {
        protected override Task SerializeToStreamAsync(Stream stream, TransportContext? context) =>
            stream.WriteAsync(new byte[1024]).AsTask();

        protected override bool TryComputeLength(out long length)
        {
            length = UploadLimits.MostBytes + 1;
            return true;
        }
    }

    /// <summary>So many zeros; does something after the first of them.</summary>
    private sealed class Endless(long length, Action? afterFirst = null) : Stream
    {
        private long read;
        private bool acted;

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => length;

        public override long Position
        {
            get => read;
            set => throw new NotSupportedException();
        }

        public override ValueTask<int> ReadAsync(
            Memory<byte> buffer,
            CancellationToken cancellationToken = default
        )
        {
            cancellationToken.ThrowIfCancellationRequested();
            if (read > 0 && !acted)
            {
                acted = true;
                afterFirst?.Invoke();
            }

            var count = (int)Math.Min(buffer.Length, length - read);
            read += count;
            return ValueTask.FromResult(count);
        }

        public override int Read(byte[] buffer, int offset, int count) =>
            throw new NotSupportedException();

        public override void Flush() { }

        public override long Seek(long offset, SeekOrigin origin) =>
            throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) =>
            throw new NotSupportedException();
    }
}
