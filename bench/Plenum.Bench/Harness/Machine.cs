using System.Diagnostics;
using System.Runtime.InteropServices;

namespace Plenum.Bench.Harness;

/// <summary>On what the figures were measured.</summary>
internal static class Machine
{
    public static void Describe(TextWriter to, Native.Limits? limits, ulong seed)
    {
        to.WriteLine($"- processor: {Processor()}, {Environment.ProcessorCount} cores");
        to.WriteLine($"- system: {RuntimeInformation.OSDescription}");
        to.WriteLine(
            $"- runtime: {RuntimeInformation.FrameworkDescription}, {RuntimeInformation.ProcessArchitecture}"
        );
        to.WriteLine($"- C++: {limits?.Compiler ?? "no g++ here, the limits are loops in C#"}");
        to.WriteLine($"- commit: {Commit()}");
        to.WriteLine($"- seed: {seed}");
        to.WriteLine($"- load when it began: {Load()}");
        to.WriteLine();
    }

    /// <summary>The first line that a program prints; null if it cannot be run or fails.</summary>
    public static string? FirstLineOf(string program, params string[] arguments)
    {
        try
        {
            using var process = Process.Start(
                new ProcessStartInfo(program, arguments)
                {
                    RedirectStandardOutput = true,
                    RedirectStandardError = true,
                    UseShellExecute = false,
                }
            )!;
            var text = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0 ? text.Split('\n')[0].Trim() : null;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }

    private static string Commit()
    {
        var commit = FirstLineOf("git", "rev-parse", "HEAD");
        if (commit is null)
        {
            return "not known";
        }

        return
            FirstLineOf("git", "status", "--porcelain", "--untracked-files=no") is { Length: > 0 }
            ? commit + ", with changes that are not committed"
            : commit;
    }

    private static string Processor() =>
        (
            File.Exists("/proc/cpuinfo")
                ? File.ReadLines("/proc/cpuinfo")
                    .FirstOrDefault(line => line.StartsWith("model name", StringComparison.Ordinal))
                : null
        )
            ?.Split(':')[1]
            .Trim()
        ?? "not known";

    private static string Load() =>
        File.Exists("/proc/loadavg")
            ? string.Join(' ', File.ReadAllText("/proc/loadavg").Split(' ').Take(3))
            : "not known";
}
