using System.Collections.Concurrent;
using System.Security.Cryptography;
using Plenum.Web.Host;

namespace Plenum.Web.Projects;

/// <summary>All imports that are being looked at.</summary>
public sealed class ImportDesk(TemporaryRoom room) : IDisposable
{
    private const int BytesOfAnId = 16;
    private readonly ConcurrentDictionary<string, BroughtFiles> open = new(StringComparer.Ordinal);

    /// <summary>Makes room for the files of one import.</summary>
    /// <exception cref="IOException">There is no room.</exception>
    /// <exception cref="UnauthorizedAccessException">Nothing may be written there.</exception>
    public BroughtFiles Begin(string projectKey)
    {
        var id = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(BytesOfAnId));
        var files = new BroughtFiles(
            id,
            projectKey,
            room.NewFolder(),
            gone => open.TryRemove(gone.Id, out _)
        );
        open[id] = files;
        return files;
    }

    /// <summary>The files of an import of a project, or null.</summary>
    public BroughtFiles? Find(string projectKey, string id) =>
        open.TryGetValue(id, out var files) && files.ProjectKey == projectKey ? files : null;

    public void Dispose()
    {
        foreach (var files in open.Values)
        {
            files.Dispose();
        }
    }
}
