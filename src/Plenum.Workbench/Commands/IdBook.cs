using Plenum.Core;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Commands;

/// <summary>
/// The ids that tables have given out since the project was opened: an id that was once given is not given again, so
/// that a row which is put back is the same row.
/// </summary>
internal sealed class IdBook
{
    private readonly Dictionary<TableDefinition, int> next = [];
    private Project? counted;

    /// <summary>The book of a value that nothing came before.</summary>
    public static IdBook Of(Project project)
    {
        var book = new IdBook();
        book.Follow(project);
        return book;
    }

    /// <summary>Notes the ids of a value.</summary>
    public void Follow(Project project)
    {
        foreach (var table in project.Tables)
        {
            if (counted is null || !ReferenceEquals(counted[table.Definition].Ids, table.Ids))
            {
                next[table.Definition] = Math.Max(
                    next.GetValueOrDefault(table.Definition, 1),
                    table.Count == 0 ? 1 : table.RowOfId.Length
                );
            }
        }

        counted = project;
    }

    /// <summary>The id that the next row of a table gets.</summary>
    public int Next(TableDefinition table) => next[table];
}
