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
