using System.Net;
using System.Net.Sockets;
using System.Text.RegularExpressions;
using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.Answers;

/// <summary>Projects in a browser on this machine, and the plant that <c>plenum</c> alone shows.</summary>
public partial class ServeTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    [Fact]
    public async Task Projects_are_served_until_it_is_stopped()
    {
        using var terminal = PumpHouse.Open();
        await using var serving = new Running(terminal, null, "serve", PumpHouse.File);
        var address = await serving.Address();
        Assert.Matches(@"^http://127\.0\.0\.1:\d+/$", address);
        Assert.Contains("Ctrl+C stops it.", serving.Out, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, await Status(address));
        Assert.Equal(HttpStatusCode.OK, await Status(address + "projects/pump-house/export.zip"));
        Assert.Equal(ExitCode.Done, await serving.Stop());
        await Assert.ThrowsAsync<HttpRequestException>(() => Status(address));
        Assert.Empty(serving.Error);
    }

    [Fact]
    public async Task It_can_be_served_without_a_project()
    {
        using var terminal = new Terminal();
        await using var serving = new Running(terminal, null, "serve", "--address", "localhost");
        Assert.Equal(HttpStatusCode.OK, await Status(await serving.Address()));
        Assert.Equal(ExitCode.Done, await serving.Stop());
    }

    [Theory]
    [InlineData("0.0.0.0")]
    [InlineData("192.168.0.1")]
    [InlineData("::")]
    [InlineData("plant.example")]
    public void An_address_that_others_can_reach_is_not_allowed(string address)
    {
        using var terminal = PumpHouse.Open();
        var reply = terminal.Run("serve", PumpHouse.File, "--address", address);
        Assert.Equal(ExitCode.NotAllowed, reply.Status);
        Assert.Equal(
            $"{address} is not served: until people can sign in, only this machine's own address 127.0.0.1 is. Leave --address out.\n",
            reply.Error
        );
        Assert.Empty(reply.Out);
    }

    [Fact]
    public void A_project_that_is_not_there_is_refused_before_anything_is_served()
    {
        using var terminal = PumpHouse.Open();
        var reply = terminal.Run("serve", PumpHouse.File, "nowhere.plenum");
        Assert.Equal(ExitCode.BadInput, reply.Status);
        Assert.Equal(
            "There is no file <folder>/nowhere.plenum. Check the name, or make a new project.\n",
            reply.Error.Replace('\\', '/')
        );
        Assert.Empty(reply.Out);
    }

    [Fact]
    public void A_file_that_is_no_project_is_refused_before_anything_is_served()
    {
        using var terminal = new Terminal();
        File.WriteAllText(terminal["text.plenum"], "not a project");
        var reply = terminal.Run("serve", "text.plenum");
        Assert.Equal(ExitCode.BadInput, reply.Status);
        Assert.Contains("is not a Plenum project", reply.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_port_that_is_in_use_is_refused_with_what_to_do()
    {
        using var terminal = new Terminal();
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();
        var port = ((IPEndPoint)other.LocalEndpoint).Port;
        var reply = terminal.Run("serve", "--port", $"{port}");
        Assert.Equal(ExitCode.BadInput, reply.Status);
        Assert.Equal(
            $"Port {port} is in use by another program. Name another with --port, or leave it out for a free one.\n",
            reply.Error
        );
        Assert.Empty(reply.Out);
    }

    [Theory]
    [InlineData("http")]
    [InlineData("65536")]
    [InlineData("-1")]
    public void A_port_that_is_no_port_is_wrong_usage(string port)
    {
        using var terminal = new Terminal();
        var reply = terminal.Run("serve", "--port", port);
        Assert.Equal(ExitCode.WrongUsage, reply.Status);
        Assert.StartsWith("--port takes a whole number", reply.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_command_alone_shows_the_invented_plant_and_keeps_it()
    {
        using var terminal = new Terminal();
        var kept = terminal["own/demo/kestrel-bay.plenum"];
        await using (var first = new Running(terminal, terminal["own"]))
        {
            var address = await first.Address();
            Assert.Contains("kept in " + kept, first.Out, StringComparison.Ordinal);
            Assert.Equal(
                HttpStatusCode.OK,
                await Status(address + "projects/kestrel-bay/export.zip")
            );
            Assert.Equal(ExitCode.Done, await first.Stop());
        }

        terminal.Do("new", terminal["own/projects/mine.plenum"]);
        terminal.Do("import", kept, terminal.Write("[units.csv]\nunit,name\nNEW,A new unit")[0]);
        await using var second = new Running(terminal, terminal["own"]);
        var again = await second.Address();
        Assert.Equal(ExitCode.Done, await Stopped(second, again));
        Assert.Contains(
            "\"revision\":2",
            terminal.Do("tree", kept, "--json").Out,
            StringComparison.Ordinal
        );

        static async Task<int> Stopped(Running serving, string address)
        {
            // what was made before is on the shelf too; it is empty, which an archive can say
            Assert.Equal(HttpStatusCode.OK, await Status(address + "projects/mine/export.zip"));
            return await serving.Stop();
        }
    }

    [Fact]
    public async Task A_second_run_shows_a_copy_that_goes_with_it()
    {
        using var terminal = new Terminal();
        await using var first = new Running(terminal, terminal["own"]);
        await first.Address();
        string tables;
        await using (var second = new Running(terminal, terminal["own"]))
        {
            var address = await second.Address();
            Assert.Contains(
                "a copy that goes when this stops",
                second.Out,
                StringComparison.Ordinal
            );
            tables = FromFolder().Match(second.Out).Groups["folder"].Value;
            Assert.True(Directory.Exists(tables), second.Out);
            Assert.False(tables.StartsWith(terminal["own"], StringComparison.Ordinal));
            Assert.Equal(
                HttpStatusCode.OK,
                await Status(address + "projects/kestrel-bay/export.zip")
            );
            Assert.Equal(ExitCode.Done, await second.Stop());
        }

        Assert.False(Directory.Exists(Path.GetDirectoryName(tables)));
        Assert.Equal(ExitCode.Done, await first.Stop());
    }

    [Fact]
    public async Task Where_the_own_folder_cannot_be_written_a_temporary_one_is_taken()
    {
        using var terminal = new Terminal();
        File.WriteAllText(terminal["own"], "a file, not a folder");
        await using var serving = new Running(terminal, terminal["own"]);
        await serving.Address();
        var tables = FromFolder().Match(serving.Out).Groups["folder"].Value;
        Assert.True(Directory.Exists(tables), serving.Out);
        Assert.Equal(ExitCode.Done, await serving.Stop());
        Directory.Delete(Path.GetDirectoryName(Path.GetDirectoryName(tables))!, recursive: true);
    }

    [Fact]
    public void Without_any_place_to_write_it_says_so()
    {
        Assert.SkipWhen(
            OperatingSystem.IsWindows(),
            "The temporary folder is moved by TMPDIR here."
        );
        using var terminal = new Terminal();
        File.WriteAllText(terminal["own"], "a file, not a folder");
        var before = Environment.GetEnvironmentVariable("TMPDIR");
        Environment.SetEnvironmentVariable("TMPDIR", terminal["own"]);
        try
        {
            var reply = terminal.RunAt(terminal["own"]);
            Assert.Equal(ExitCode.NotAllowed, reply.Status);
            Assert.StartsWith(
                "There is no place to keep the demo project",
                reply.Error,
                StringComparison.Ordinal
            );
            Assert.Empty(reply.Out);
        }
        finally
        {
            Environment.SetEnvironmentVariable("TMPDIR", before);
        }
    }

    private static async Task<HttpStatusCode> Status(string address)
    {
        using var http = new HttpClient();
        using var answer = await http.GetAsync(address, TestContext.Current.CancellationToken);
        return answer.StatusCode;
    }

    [GeneratedRegex(
        "made from are in (?<folder>.*): change",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex FromFolder();

    /// <summary>A command that goes on until it is stopped, as by Ctrl+C.</summary>
    private sealed class Running : IAsyncDisposable
    {
        private readonly CancellationTokenSource stop = new();
        private readonly StringWriter output = new() { NewLine = "\n" };
        private readonly StringWriter error = new() { NewLine = "\n" };
        private readonly Task<int> done;

        public Running(Terminal terminal, string? ownFolder, params string[] args)
        {
            Assert.NotNull(terminal);
            done = Program.RunAsync(
                args,
                new CliContext(
                    TextWriter.Synchronized(output),
                    TextWriter.Synchronized(error),
                    TimeProvider.System,
                    ownFolder
                ),
                stop.Token
            );
        }

        public string Out => output.ToString();

        public string Error => error.ToString();

        public async Task<string> Address()
        {
            using var late = new CancellationTokenSource(Patience);
            while (!Out.Contains("Ctrl+C", StringComparison.Ordinal) || !Out.EndsWith('\n'))
            {
                Assert.False(done.IsCompleted, Out + Error);
                await Task.Delay(20, late.Token);
            }

            return Out.Split('\n')[0]["Plenum is at ".Length..];
        }

        public async Task<int> Stop()
        {
            await stop.CancelAsync();
            return await done.WaitAsync(Patience);
        }

        public async ValueTask DisposeAsync()
        {
            await Stop();
            stop.Dispose();
            await output.DisposeAsync();
            await error.DisposeAsync();
        }
    }
}
