namespace Plenum.Store.Tests.Support;

/// <summary>A folder of its own for a test, removed afterwards.</summary>
public sealed class TemporaryFolder : IDisposable
{
    public TemporaryFolder() => Folder = Directory.CreateTempSubdirectory("plenum-").FullName;

    public string Folder { get; }

    public string File(string name = "x.plenum") => Path.Combine(Folder, name);

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
