using Plenum.Core.Foundation;
using Plenum.Store;
using Plenum.Web.Projects;
using Plenum.Web.Tests.Support;

namespace Plenum.Web.Tests;

/// <summary>Files are looked at, and then taken over: the same as the command line does with them.</summary>
public class ImportTests
{
    private const string People = "person,name\na.ode,Ada Odell\nc.roe,Cy Roe\n";

    private const string BadElements =
        "code,name,parent,split,person\nS,Store shed,,part,a.ode\nS.3,Roof,S,,nobody\nS.4,Door,T,,\nS.4,Door,S,,\n";

    [Fact]
    public async Task What_would_change_is_what_a_dry_run_of_the_command_says()
    {
        await using var site = await Site.Open();
        var files = await site.Bring(("people.csv", People));
        await using var session = site.Session(files);
        await session.Look(replace: false);
        var said = await CommandLine(site, ("people.csv", People));
        Assert.Equal(
            said.GetProperty("changed")
                .EnumerateObject()
                .Select(table => (table.Name, table.Value.GetInt32())),
            session.Preview!.Tables.Select(table =>
                (table.Table, table.Added + table.Updated + table.Removed)
            )
        );
        Assert.Equal(said.GetProperty("revision").GetInt64(), session.Preview.Revision);
        Assert.Equal(
            new TablePreview("people", 1, 1, 0, []),
            Assert.Single(session.Preview.Tables) with
            {
                RemovedKeys = [],
            }
        );
        Assert.Equal(
            "1 table would bring 1 row and change 1 row; nothing is removed.",
            session.Preview.Sentence
        );
        Assert.Equal("Take 2 rows", session.Preview.Deed);
        Assert.Equal(1, site.Shelf.Find("shed")!.Current!.Revision);
    }

    [Fact]
    public async Task Files_that_the_project_has_already_would_change_nothing()
    {
        await using var site = await Site.Open();
        await using var session = site.Session(await site.Bring(Desk.Shed));
        await session.Look(replace: false);
        Assert.Equal(
            "Nothing would change: the project has all of this already.",
            session.Preview!.Sentence
        );
        Assert.False(session.Preview.CanBeTaken);
    }

    [Fact]
    public async Task Under_replacement_the_rows_that_would_be_removed_are_named()
    {
        await using var site = await Site.Open();
        const string Elements =
            "code,name,parent,split,person\nS,Store shed,,part,a.ode\nS.1,Slab,S,,a.ode\n";
        await using var session = site.Session(await site.Bring(("elements.csv", Elements)));
        await session.Look(replace: true);
        var table = Assert.Single(session.Preview!.Tables);
        Assert.Equal("elements", table.Table);
        Assert.Equal((0, 0, 1), (table.Added, table.Updated, table.Removed));
        Assert.Equal(["S.2"], table.RemovedKeys);
        Assert.Equal(
            "1 row would be removed from 1 table; nothing is added.",
            session.Preview.Sentence
        );
        Assert.Equal("Remove 1 row", session.Preview.Deed);
        Assert.Equal(Accepted.Taken, await session.Accept(null));
        Assert.Equal(2, site.Shelf.Find("shed")!.Current!.Tree.Count);
    }

    [Fact]
    public async Task Errors_are_those_of_the_command_in_its_order()
    {
        await using var site = await Site.Open();
        await using var session = site.Session(
            await site.Bring(("elements.csv", BadElements), ("peple.csv", People))
        );
        await session.Look(replace: false);
        var said = await CommandLine(site, ("elements.csv", BadElements), ("peple.csv", People));
        Assert.Equal(
            said.GetProperty("errors")
                .EnumerateArray()
                .Select(error => new InputError(
                    error.GetProperty("file").GetString()!,
                    error.GetProperty("row").ValueKind == System.Text.Json.JsonValueKind.Null
                        ? null
                        : error.GetProperty("row").GetInt32(),
                    error.GetProperty("column").GetString(),
                    error.GetProperty("value").GetString(),
                    error.GetProperty("expected").GetString()!,
                    error.GetProperty("message").GetString()!
                )),
            session.Preview!.Errors
        );
        Assert.Equal(said.GetProperty("error_count").GetInt64(), session.Preview.ErrorCount);
        Assert.Contains(session.Preview.Errors, error => error.Row == 3 && error.Value == "nobody");
        Assert.False(session.Preview.CanBeTaken);
        Assert.EndsWith("Nothing has changed.", session.Preview.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_many_errors_the_first_thousand_are_listed_and_all_are_counted()
    {
        await using var site = await Site.Open();
        var text = "person,name\n" + string.Concat(Enumerable.Repeat(" x,Name\n", 2_500));
        await using var session = site.Session(await site.Bring(("people.csv", text)));
        await session.Look(replace: false);
        Assert.Equal(1_000, session.Preview!.Errors.Count);
        Assert.Equal(2_500, session.Preview.ErrorCount);
    }

    [Fact]
    public async Task Errors_name_files_as_the_person_has_them()
    {
        await using var site = await Site.Open();
        var files = await site.Bring(
            ("january/people.csv", "person,name\n x,Xe\n"),
            ("february/people.csv", "person,name\n y,Ye\n")
        );
        await using var session = site.Session(files);
        await session.Look(replace: false);
        Assert.Equal(
            ["february/people.csv", "january/people.csv"],
            session.Preview!.Errors.Select(error => error.File.Replace('\\', '/')).Distinct()
        );
        Assert.DoesNotContain(
            session.Preview.Errors,
            error => error.ToString().Contains(site.Passing, StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task The_list_of_errors_can_be_fetched_as_a_table_without_formulas()
    {
        await using var site = await Site.Open();
        var files = await site.Bring(
            ("people.csv", "person,name,unit\n\"=1+1, \",\"X \"\"Y\"\"\",none\n")
        );
        await using var session = site.Session(files);
        var address = ImportEndpoints.ErrorsAddress("shed", files.Id);
        var before = await site.Http.GetAsync(address, TestContext.Current.CancellationToken);
        Assert.Equal(System.Net.HttpStatusCode.NotFound, before.StatusCode);
        await session.Look(replace: false);
        var answer = await site.Http.GetAsync(address, TestContext.Current.CancellationToken);
        var bytes = await answer.Content.ReadAsByteArrayAsync(
            TestContext.Current.CancellationToken
        );
        Assert.Equal([0xEF, 0xBB, 0xBF], bytes[..3]);
        Assert.Equal("shed-errors.csv", answer.Content.Headers.ContentDisposition!.FileName);
        var text = System.Text.Encoding.UTF8.GetString(bytes[3..]);
        Assert.StartsWith(
            "file,row,column,value,expected,message\r\n",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains("people.csv,2,person,\"'=1+1, \",", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Taking_over_writes_who_did_it_and_why_and_tells_everybody()
    {
        await using var site = await Site.Open();
        var shelved = site.Shelf.Find("shed")!;
        await using var session = site.Session(await site.Bring(("people.csv", People)));
        await session.Look(replace: false);
        var told = 0;
        shelved.Changed += () => told++;
        Assert.Equal(Accepted.Taken, await session.Accept("  new colleague "));
        Assert.Equal(1, told);
        Assert.Equal(2, shelved.Current!.Revision);
        using var file = ProjectFile.Open(shelved.Path);
        var record = file.Audit(1)[0];
        Assert.Equal(new AuditEntry("b.lund", "import", "new colleague", null), record.Entry);
        Assert.Equal(2, record.Revision);
    }

    [Fact]
    public async Task A_project_that_has_changed_since_is_looked_at_anew_and_not_written()
    {
        await using var site = await Site.Open();
        var shelved = site.Shelf.Find("shed")!;
        await using var mine = site.Session(await site.Bring(("people.csv", People)));
        await mine.Look(replace: false);
        await using var other = site.Session(
            await site.Bring(("people.csv", "person,name\nc.roe,Cy Roe\n"))
        );
        await other.Look(replace: false);
        Assert.Equal(Accepted.Taken, await other.Accept(null));
        Assert.Equal(Accepted.LookedAnew, await mine.Accept("mine"));
        Assert.Equal(2, shelved.Current!.Revision);
        Assert.Contains("it was at revision 1, it is at 2", mine.Anew, StringComparison.Ordinal);
        Assert.Equal("1 table would change 1 row; nothing is removed.", mine.Preview!.Sentence);
        Assert.Equal(Accepted.Taken, await mine.Accept("mine"));
        Assert.Equal(3, shelved.Current.Revision);
    }

    [Fact]
    public async Task A_project_file_that_another_program_has_written_is_read_anew()
    {
        await using var site = await Site.Open();
        var shelved = site.Shelf.Find("shed")!;
        await using var session = site.Session(await site.Bring(("people.csv", People)));
        await session.Look(replace: false);
        await Desk.Do(
            "import",
            shelved.Path,
            site.Desk.Write("people.csv", "person,name\nc.roe,Cy Roe\n")
        );
        Assert.Equal(Accepted.LookedAnew, await session.Accept(null));
        Assert.Equal(2, shelved.Current!.Revision);
        Assert.Equal(Accepted.Taken, await session.Accept(null));
        Assert.Equal(3, shelved.Current.Revision);
    }

    [Fact]
    public async Task Only_files_that_were_looked_at_are_taken()
    {
        await using var site = await Site.Open();
        var files = await site.Bring(("people.csv", People));
        await using var session = site.Session(files);
        await session.Look(replace: false);
        await files.Take(
            "people.csv",
            2,
            Desk.Bytes("person,name\nd.vey,Di Vey\n"),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(Accepted.LookedAnew, await session.Accept(null));
        Assert.Equal(1, site.Shelf.Find("shed")!.Current!.Revision);
        Assert.StartsWith("The files are no longer", session.Anew, StringComparison.Ordinal);
        Assert.Equal(1, session.Preview!.Added);
    }

    [Fact]
    public async Task Leaving_stops_and_removes_the_files()
    {
        await using var site = await Site.Open();
        var files = await site.Bring(("people.csv", People));
        var session = site.Session(files);
        var looking = session.Look(replace: false);
        await session.DisposeAsync();
        await looking;
        Assert.False(Directory.Exists(files.Folder));
        Assert.Equal(1, site.Shelf.Find("shed")!.Current!.Revision);
    }

    [Fact]
    public async Task A_project_that_cannot_be_written_says_so_and_stays_as_it_was()
    {
        await using var site = await Site.Open();
        var shelved = site.Shelf.Find("shed")!;
        await using var session = site.Session(await site.Bring(("people.csv", People)));
        await session.Look(replace: false);
        await using (
            var other = new Microsoft.Data.Sqlite.SqliteConnection(
                $"Data Source={shelved.Path};Pooling=False"
            )
        )
        {
            await other.OpenAsync(TestContext.Current.CancellationToken);
            await using var hold = other.CreateCommand();
            hold.CommandText = "BEGIN IMMEDIATE";
            await hold.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
            Assert.Equal(Accepted.NotTaken, await session.Accept(null));
        }

        Assert.NotNull(session.Trouble);
        Assert.Equal(1, shelved.Current!.Revision);
        Assert.True(session.Preview!.CanBeTaken);
        Assert.Equal(Accepted.Taken, await session.Accept(null));
    }

    /// <summary>What the command line says to the same files and a copy of the project.</summary>
    private static Task<System.Text.Json.JsonElement> CommandLine(
        Site site,
        params (string Name, string Text)[] files
    ) =>
        Desk.Ask([
            "import",
            site.Desk["shed.plenum"],
            .. files.Select(file => site.Desk.Write("same/" + file.Name, file.Text)),
            "--dry-run",
        ]);
}
