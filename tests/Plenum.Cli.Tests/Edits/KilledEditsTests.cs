using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Plenum.Cli.Tests.Support;
using Plenum.Core.Breakdown;
using Plenum.Workbench;

namespace Plenum.Cli.Tests.Edits;

/// <summary>
/// The program is killed while somebody types. For a long run set PLENUM_KILLS to the number of kills.
/// </summary>
public sealed class KilledEditsTests
{
    private static readonly int Kills = int.Parse(
        Environment.GetEnvironmentVariable("PLENUM_KILLS") ?? "12",
        CultureInfo.InvariantCulture
    );

    [Fact]
    public async Task Edits_that_were_acknowledged_are_there_after_a_kill()
    {
        using var terminal = new Terminal();
        terminal.Do("new", "p.plenum");
        var random = new Random(20_261_128);
        HashSet<string> acknowledged = new(StringComparer.Ordinal);
        var amid = 0;
        for (var kill = 0; kill < Kills; kill++)
        {
            amid += await TypeAndKill(terminal["p.plenum"], kill, random, acknowledged) ? 1 : 0;
            using var project = OpenProject.Open(
                terminal["p.plenum"],
                TimeProvider.System,
                ct: TestContext.Current.CancellationToken
            );
            HashSet<string> there =
            [
                .. project
                    .Current[ElementTable.Definition]
                    .Texts(ElementTable.Name)
                    .ToArray()
                    .OfType<string>(),
            ];
            Assert.Empty(acknowledged.Except(there));
            // one edit may be written whose answer did not come through
            Assert.InRange(there.Count, acknowledged.Count, acknowledged.Count + kill + 1);
        }

        TestContext.Current.TestOutputHelper?.WriteLine(
            $"{Kills} kills, {amid} of them amid an edit, {acknowledged.Count} acknowledged edits, none lost"
        );
    }

    /// <returns>True if an edit was under way.</returns>
    private static async Task<bool> TypeAndKill(
        string file,
        int round,
        Random random,
        HashSet<string> acknowledged
    )
    {
        var ct = TestContext.Current.CancellationToken;
        using var program = Process.Start(
            new ProcessStartInfo(
                Environment.ProcessPath is { } host
                && Path.GetFileNameWithoutExtension(host) == "dotnet"
                    ? host
                    : "dotnet",
                [typeof(Program).Assembly.Location, "edit", file, "--as", "ann", "--json"]
            )
            {
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
                UseShellExecute = false,
            }
        )!;
        var last = random.Next(1, 12);
        var sent = 0;
        await Send(
            round == 0
                ? "{\"command\":\"add_element\",\"parent\":0,\"after\":0,\"name\":\"Plant\",\"code\":\"0\"}"
                : Part(round, sent)
        );
        while (await program.StandardOutput.ReadLineAsync(ct) is { } told)
        {
            using var answer = JsonDocument.Parse(told);
            Assert.False(answer.RootElement.TryGetProperty("errors", out _), told);
            acknowledged.Add(
                answer
                    .RootElement.GetProperty("done")
                    .GetString()!
                    .Split(" to ")[0]
                    .Replace("add ", "", StringComparison.Ordinal)
                    .Replace("name the project ", "", StringComparison.Ordinal)
            );
            if (sent == last)
            {
                // the next is on its way when the program dies
                await Send(Part(round, sent));
                await Task.Delay(TimeSpan.FromMicroseconds(random.Next(0, 6_000)), ct);
                program.Kill();
                break;
            }

            await Send(Part(round, sent));
        }

        await program.WaitForExitAsync(ct);
        var rest = await program.StandardOutput.ReadToEndAsync(ct);
        if (rest.EndsWith('\n'))
        {
            using var answer = JsonDocument.Parse(rest);
            acknowledged.Add(
                answer
                    .RootElement.GetProperty("done")
                    .GetString()!
                    .Split(" to ")[0]
                    .Replace("add ", "", StringComparison.Ordinal)
            );
            return false;
        }

        return true;

        async Task Send(string command)
        {
            sent++;
            await program.StandardInput.WriteLineAsync(command.AsMemory(), ct);
            await program.StandardInput.FlushAsync(ct);
        }
    }

    private static string Part(int round, int number) =>
        $$"""{"command":"add_element","parent":"0","after":0,"name":"Part {{round}}.{{number}}"}""";
}
