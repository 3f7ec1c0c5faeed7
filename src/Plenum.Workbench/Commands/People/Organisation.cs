using Plenum.Core;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;
using Plenum.Workbench.Commands.Breakdown;

namespace Plenum.Workbench.Commands.People;

/// <summary>What commands on units, people and accounts share.</summary>
internal static class Organisation
{
    public static string Code(Project project, TableDefinition table, int id) =>
        project[table].RowOf(id) is var row and >= 0 ? project[table].Codes[row]! : "that is new";

    /// <summary>The name of a unit or person, or the code of one without.</summary>
    public static string Say(Project project, TableDefinition table, int id)
    {
        var row = project[table].RowOf(id);
        var name = table == UnitTable.Definition ? UnitTable.Name : PersonTable.Name;
        return row < 0
            ? "a new one"
            : project[table].Texts(name)[row] ?? project[table].Codes[row]!;
    }

    /// <summary>A code that is free, made from a name: initial and last word for people, capitals for units.</summary>
    public static string CodeFrom(EditDraft draft, TableDefinition table, string name)
    {
        string[] words =
        [
            .. name.Split(' ', StringSplitOptions.RemoveEmptyEntries)
                .Select(word => string.Concat(word.Where(char.IsLetterOrDigit)))
                .Where(word => word.Length > 0),
        ];
        var stem = words switch
        {
            [] => table == UnitTable.Definition ? "U" : "p",
            [var only] when table == UnitTable.Definition => only[..Math.Min(3, only.Length)]
                .ToUpperInvariant(),
            _ when table == UnitTable.Definition => string.Concat(words.Select(word => word[0]))
                .ToUpperInvariant(),
            [var only] => only.ToLowerInvariant(),
            _ => $"{words[0][0]}.{words[^1]}".ToLowerInvariant(),
        };
        var code = stem;
        for (var twin = 2; draft.IdOf(table, code) != 0; twin++)
        {
            code = $"{stem}{twin}";
        }

        return code;
    }

    /// <exception cref="EditException">Other rows refer to it; they are named.</exception>
    public static void NeedFree(EditDraft draft, TableDefinition table, int id)
    {
        var users = PackageWork
            .Users(draft, table, id)
            .GroupBy(user => user.Column)
            .Select(group =>
                $"{group.Key.Name.Replace('_', ' ')} of {group.Count()} in {group.Key.Table.Name} ("
                + string.Join(
                    ", ",
                    group.Take(3).Select(user => draft.Key(user.Column.Table, user.Id))
                )
                + (group.Count() > 3 ? ", …)" : ")")
            )
            .ToList();
        if (users.Count > 0)
        {
            var code = draft.CodeOf(table, id);
            throw new EditException([
                new EditFault(
                    table.Name,
                    code,
                    null,
                    code,
                    "a row that nothing refers to",
                    $"{Say(draft.Before, table, id)} cannot be removed, being {string.Join("; ", users)}. Hand these over first."
                ),
            ]);
        }
    }
}
