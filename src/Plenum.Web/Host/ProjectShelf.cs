using System.Text;

namespace Plenum.Web.Host;

/// <summary>The projects that this program serves, by their key in the address. Several readers, one writer each.</summary>
public sealed class ProjectShelf(TimeProvider clock) : IDisposable
{
    private readonly Lock access = new();
    private readonly List<ShelvedProject> projects = [];

    /// <summary>Something stands on the shelf that did not, or no longer.</summary>
    public event Action? Changed;

    /// <summary>All projects in the order in which they came.</summary>
    public IReadOnlyList<ShelvedProject> Projects
    {
        get
        {
            lock (access)
            {
                return [.. projects];
            }
        }
    }

    /// <summary>Puts a project file on the shelf; it is opened when it is first looked at.</summary>
    public ShelvedProject Add(string path)
    {
        var full = Path.GetFullPath(path);
        ShelvedProject added;
        lock (access)
        {
            if (projects.Find(known => known.Path == full) is { } there)
            {
                return there;
            }

            added = new ShelvedProject(KeyFor(full), full, clock);
            projects.Add(added);
        }

        Changed?.Invoke();
        return added;
    }

    /// <summary>Opens a project file, and puts it on the shelf if that went well.</summary>
    /// <param name="path">The file.</param>
    /// <param name="reading">Is given the project while it is being read, for its progress.</param>
    /// <returns>The project on the shelf, or why it could not be opened.</returns>
    public async Task<(ShelvedProject? Project, string? Refusal)> OpenAndAdd(
        string path,
        Action<ShelvedProject>? reading = null
    )
    {
        var full = Path.GetFullPath(path);
        lock (access)
        {
            if (projects.Find(known => known.Path == full) is { } there)
            {
                return (there, null);
            }
        }

        var opened = new ShelvedProject("", full, clock);
        reading?.Invoke(opened);
        if (await opened.Open() is null)
        {
            var refusal = opened.Refusal;
            opened.Dispose();
            return (null, refusal);
        }

        lock (access)
        {
            if (projects.Find(known => known.Path == full) is { } faster)
            {
                opened.Dispose();
                return (faster, null);
            }

            opened.Key = KeyFor(full);
            projects.Add(opened);
        }

        Changed?.Invoke();
        return (opened, null);
    }

    public ShelvedProject? Find(string? key)
    {
        lock (access)
        {
            return projects.Find(project => project.Key == key);
        }
    }

    public void Dispose()
    {
        foreach (var project in Projects)
        {
            project.Dispose();
        }
    }

    /// <summary>The file's name in small letters, digits and hyphens; with a number where it is taken.</summary>
    private string KeyFor(string path)
    {
        var key = new StringBuilder();
        foreach (var sign in Path.GetFileNameWithoutExtension(path).ToLowerInvariant())
        {
            key.Append(char.IsAsciiLetterOrDigit(sign) ? sign : '-');
        }

        var name = key.ToString().Trim('-');
        name = name.Length == 0 ? "project" : name;
        var free = name;
        for (var number = 2; projects.Exists(project => project.Key == free); number++)
        {
            free = FormattableString.Invariant($"{name}-{number}");
        }

        return free;
    }
}
