namespace Plenum.Workbench.Tests;

/// <summary>A folder of its own for a test, gone afterwards.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("plenum-").FullName;

    public string this[string name] => System.IO.Path.Combine(Path, name);

    public string Write(string name, string text)
    {
        File.WriteAllText(this[name], text);
        return this[name];
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
