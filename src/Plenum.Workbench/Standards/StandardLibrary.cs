using Plenum.Core;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Store;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Standards;

/// <summary>Standard breakdowns by name: those that come with the program, and those in project files.</summary>
public static class StandardLibrary
{
    /// <summary>
    /// The standard breakdown that comes with the program under a name, or that of a project file: of any project what
    /// can be used again is taken, see <see cref="ProjectStandard"/>.
    /// </summary>
    /// <exception cref="QuestionException">There is none of that name, or the project has no parts.</exception>
    /// <exception cref="StoreException">The file cannot be read.</exception>
    public static StandardContent Find(string name, TimeProvider clock)
    {
        if (ShippedStandards.Find(name) is { } shipped)
        {
            return StandardContent.Of(shipped, name);
        }

        if (!File.Exists(name))
        {
            var nearest = NearestWord.Of(name, ShippedStandards.Keys);
            throw new QuestionException(
                $"There is no standard breakdown \"{name}\", and no such file. "
                    + (nearest is null ? "" : $"Did you mean {nearest}? ")
                    + $"Known are {string.Join(", ", ShippedStandards.Keys)}."
            );
        }

        using var project = OpenProject.Open(name, clock);
        return Of(project.Current, Path.GetFileNameWithoutExtension(name));
    }

    /// <summary>What can be used again of a project.</summary>
    /// <exception cref="QuestionException">The project has no parts.</exception>
    public static StandardContent Of(Project project, string name) =>
        StandardContent.Of(Extract(project, null, name), name);

    /// <summary>Writes what can be used again of a project, or of an element and all below it, as a new project file.</summary>
    /// <param name="project">The project.</param>
    /// <param name="under">Code of the element; null for the whole.</param>
    /// <param name="path">The file; it must not be there yet.</param>
    /// <param name="person">Who does it.</param>
    /// <param name="clock">The time.</param>
    /// <returns>The standard breakdown.</returns>
    /// <exception cref="QuestionException">There is no such element, or it has no parts.</exception>
    /// <exception cref="StoreException">The file is there already, or cannot be written.</exception>
    public static Project Save(
        Project project,
        string? under,
        string path,
        string person,
        TimeProvider clock
    )
    {
        var standard = Extract(project, under, null);
        using var file = ProjectFile.Create(path, new AuditEntry(person, "new", null, null), clock);
        var empty = file.Load();
        var tables = standard.Tables.Where(table => table.Count > 0).ToList();
        var next = empty.With(tables);
        file.Commit(
            empty,
            next,
            [.. tables.Select(table => new TableChange(table.Definition, table.Ids, [], []))],
            new AuditEntry(person, "save standard breakdown", null, null)
        );
        return next;
    }

    private static Project Extract(Project project, string? under, string? name)
    {
        if (project.Tree.Count == 0)
        {
            throw new QuestionException(
                $"Nothing is broken down {(name is null ? "" : $"in {name} ")}yet, so there is no standard in it."
            );
        }

        var root = under is null ? 0 : ElementPosition.Of(project, under);
        return project.Tree.HasChildren(root)
            ? ProjectStandard.Of(project, root)
            : throw new QuestionException(
                $"{project.Tree.Code(root)} {project.Tree.Name(root)} has no parts; a standard breakdown needs some."
            );
    }
}
