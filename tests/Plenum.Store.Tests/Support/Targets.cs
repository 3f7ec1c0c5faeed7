using System.Diagnostics;

namespace Plenum.Store.Tests.Support;

/// <summary>Starts the other process of a test.</summary>
internal static class Targets
{
    public static Process Start(params string[] arguments)
    {
        var start = new ProcessStartInfo(
            Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet"
        )
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        start.ArgumentList.Add("exec");
        start.ArgumentList.Add(
            Path.Combine(AppContext.BaseDirectory, "Plenum.Store.KillTarget.dll")
        );
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        return Process.Start(start)!;
    }
}
