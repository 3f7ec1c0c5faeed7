using Plenum.Core;
using Plenum.Core.People;

namespace Plenum.Workbench.Words;

/// <summary>Names of people.</summary>
public static class PersonNames
{
    /// <summary>The name of a person; the code where no name is given.</summary>
    /// <param name="project">The project.</param>
    /// <param name="id">Id of a person who is known.</param>
    public static string Of(Project project, int id)
    {
        var people = project[PersonTable.Definition];
        var row = people.RowOf(id);
        return people.Texts(PersonTable.Name)[row] ?? people.Codes[row]!;
    }

    /// <summary>The first name's letter and the rest: "R. Velde"; a name of one word as it is.</summary>
    public static string Short(string name)
    {
        var space = name.IndexOf(' ', StringComparison.Ordinal);
        return space <= 0 || name[..space].EndsWith('.')
            ? name
            : string.Concat(name.AsSpan(0, 1), ".", name.AsSpan(space));
    }
}
