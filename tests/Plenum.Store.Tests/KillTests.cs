using System.Globalization;
using Plenum.Store.KillTarget;
using Plenum.Store.Tests.Support;

namespace Plenum.Store.Tests;

/// <summary>
/// Another process writes and is killed at random moments. For a long run set PLENUM_KILLS to the number of kills.
/// </summary>
public sealed class KillTests : IDisposable
{
    private static readonly int Kills = int.Parse(
        Environment.GetEnvironmentVariable("PLENUM_KILLS") ?? "40",
        CultureInfo.InvariantCulture
    );

    private readonly TemporaryFolder folder = new();
    private readonly Random random = new(20_260_331);

    public void Dispose() => folder.Dispose();

    [Fact]
    public void What_was_acknowledged_survives_a_kill_and_nothing_half_done_is_seen()
    {
        Projects.New(folder.File()).Dispose();
        var acknowledged = 0L;
        var amid = 0;
        for (var kill = 0; kill < Kills; kill++)
        {
            // With few pages of cache a transaction reaches the file long before it is committed.
            var said = RunAndKill("commit", folder.File(), kill % 2 == 0 ? "10" : "1000");
            acknowledged = Math.Max(acknowledged, said);
            amid += File.Exists(folder.File() + "-journal") ? 1 : 0;

            using var file = ProjectFile.Open(folder.File());
            var found = file.Loaded();
            Assert.InRange(found.Revision, acknowledged, acknowledged + 1);
            SameProject.Assert(NumberedRevisions.At(found.Revision), found);
            Assert.Equal(found.Revision, file.Audit(1)[0].Revision);
            Assert.Equal(["ok"], Sql.Texts(folder.File(), "PRAGMA integrity_check"));
            Assert.Empty(Sql.Texts(folder.File(), "PRAGMA foreign_key_check"));
            acknowledged = found.Revision;
        }

        Assert.True(amid > 0, "No kill fell into a transaction; this run has shown nothing");
        TestContext.Current.TestOutputHelper?.WriteLine(
            $"{Kills} kills, {amid} of them amid a transaction, {acknowledged} revisions"
        );
    }

    [Fact]
    public void A_kill_while_a_project_is_made_leaves_it_whole_or_not_at_all()
    {
        for (var kill = 0; kill < Math.Max(5, Kills / 8); kill++)
        {
            var made = Directory.CreateDirectory(Path.Combine(folder.Folder, $"{kill}"));
            var last = RunAndKill("create", made.FullName);
            for (var number = 0L; number <= last; number++)
            {
                Assert.True(File.Exists(Path.Combine(made.FullName, $"{number}.plenum")));
            }

            foreach (var path in Directory.GetFiles(made.FullName, "*.plenum"))
            {
                using var file = ProjectFile.Open(path);
                Assert.Equal(0, file.Loaded().Revision);
                Assert.Single(file.Audit());
            }
        }
    }

    /// <summary>Kills the process some time after its first word; the last number that it said.</summary>
    private long RunAndKill(params string[] arguments)
    {
        using var process = Targets.Start(arguments);
        var last = -1L;
        while (last < 0 && process.StandardOutput.ReadLine() is { } line)
        {
            last = long.Parse(line, CultureInfo.InvariantCulture);
        }

        Assert.True(last >= 0, "The process ended before it could be killed");
        Thread.Sleep(TimeSpan.FromMilliseconds(random.NextDouble() * 150));
        process.Kill();
        // What it had said before is still in the pipe; the last line may have been cut off.
        var rest = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        foreach (
            var line in rest[..(rest.LastIndexOf('\n') + 1)]
                .Split('\n', StringSplitOptions.RemoveEmptyEntries)
        )
        {
            last = long.Parse(line, CultureInfo.InvariantCulture);
        }

        return last;
    }
}
