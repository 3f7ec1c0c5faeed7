using Plenum.Samples.Tests.Reading;
using Plenum.Samples.Tests.Rules;

namespace Plenum.Samples.Tests;

/// <summary>Writes projects into temporary folders that are removed afterwards.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("plenum-samples-").FullName;

    public void Dispose() => Directory.Delete(Path, recursive: true);
}

/// <summary>The demo project of the default seed, written and read once for all tests.</summary>
internal static class Demo
{
    private static readonly Lazy<ProjectFiles> _files = new(() => Read(DemoProject.DefaultSeed));

    public static ProjectFiles Files => _files.Value;

    public static ProjectFiles Read(ulong seed)
    {
        using var folder = new TemporaryFolder();
        DemoProject.Write(folder.Path, seed);
        return new ProjectFiles(folder.Path);
    }
}

internal static class Check
{
    /// <summary>Everything that is wrong with the project by the rules of its tables.</summary>
    public static List<string> AllRules(ProjectFiles files)
    {
        var breaches = new Breaches();
        ReferenceRules.Check(files, breaches);
        if (breaches.All.Count == 0)
        {
            PlanRules.Check(files, breaches);
            StatusRules.Check(files, breaches);
        }
        return breaches.All;
    }
}
