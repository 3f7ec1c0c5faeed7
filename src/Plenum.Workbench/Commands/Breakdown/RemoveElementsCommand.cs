using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Commands.Breakdown;

/// <summary>
/// Removes elements with all below them and what is planned for them. Work that was reported, charged or ordered stays:
/// then nothing is removed.
/// </summary>
public sealed record RemoveElementsCommand(IReadOnlyList<int> Ids) : EditCommand
{
    public override string Tell(Project before) => $"remove {Elements.Say(before, Ids)}";

    protected internal override void Apply(EditDraft draft)
    {
        HashSet<int> gone = [];
        foreach (var id in Ids)
        {
            if (gone.Contains(id))
            {
                continue;
            }

            Elements.Need(draft, id);
            MoveElementCommand.NeedNoRoot(draft, id);
            int[] subtree = [.. draft.Breakdown.Subtree(id)];
            draft.Breakdown.Forget(id);
            gone.UnionWith(subtree);
        }

        Remove(draft, ElementTable.Definition, gone);
    }

    /// <summary>Removes rows and those that are nothing without them; cells that may be empty are emptied.</summary>
    private static void Remove(EditDraft draft, TableDefinition table, IReadOnlySet<int> ids)
    {
        Dictionary<TableDefinition, HashSet<int>> along = [];
        foreach (var (column, id, target) in PackageWork.Users(draft, table, ids, _ => true))
        {
            if (column.Table == table && ids.Contains(id))
            {
                continue;
            }

            if (PackageWork.IsRecord(column.Table))
            {
                var what = draft.CodeOf(table, target);
                throw new EditException([
                    new EditFault(
                        column.Table.Name,
                        draft.Key(column.Table, id),
                        column.Name,
                        what,
                        "work that nothing was reported, charged or ordered for",
                        $"{what} cannot be removed: {column.Table.Name} has rows of it. What has happened stays; "
                            + "close the package instead."
                    ),
                ]);
            }

            if (column.IsRequired || column.IsKey)
            {
                if (!along.TryGetValue(column.Table, out var rows))
                {
                    along[column.Table] = rows = [];
                }

                rows.Add(id);
            }
            else
            {
                draft.Set(column, id, null);
            }
        }

        foreach (var (other, rows) in along)
        {
            rows.RemoveWhere(id => !draft.Has(other, id));
            Remove(draft, other, rows);
        }

        foreach (var id in ids)
        {
            if (draft.Has(table, id))
            {
                draft.Remove(table, id);
            }
        }
    }
}
