using System.Globalization;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Scope;

namespace Plenum.Workbench.Commands.Scope;

/// <summary>
/// The scope statement while a command writes into it. Once a revision is signed, items change in a draft revision only,
/// and what they said before is kept. In the first revision, and where there is none, they are simply written.
/// </summary>
internal sealed class DraftStatement
{
    private readonly EditDraft draft;

    public DraftStatement(EditDraft draft)
    {
        this.draft = draft;
        int[] revisions =
        [
            .. Rows(ScopeRevisionTable.Definition)
                .OrderBy(id => draft.CodeOf(ScopeRevisionTable.Definition, id), NaturalOrder.Codes),
        ];
        Newest = revisions.LastOrDefault();
        IsDraft = Newest != 0 && draft.Text(ScopeRevisionTable.Signed, Newest) is null;
        IsMarked = IsDraft && revisions.Length > 1;
    }

    /// <summary>Id of the newest revision; 0 if there is none.</summary>
    public int Newest { get; }

    /// <summary>The newest revision is not signed.</summary>
    public bool IsDraft { get; }

    /// <summary>Changes are marked: a revision was signed before the draft.</summary>
    public bool IsMarked { get; }

    /// <summary>Ids of the rows of a table as they stand in the draft.</summary>
    public IEnumerable<int> Rows(TableDefinition table)
    {
        var edit = draft[table];
        return edit.Before.Ids.Where(edit.Has).Concat(edit.Added);
    }

    /// <exception cref="EditException">The newest revision is signed.</exception>
    public void NeedOpen()
    {
        if (Newest != 0 && !IsDraft)
        {
            var code = draft.CodeOf(ScopeRevisionTable.Definition, Newest);
            throw new EditException(
                $"Revision {code} of the scope statement is signed. Begin a revision to change it.",
                "a revision in draft"
            );
        }
    }

    /// <exception cref="EditException">The item is no longer there, or was withdrawn.</exception>
    public void NeedItem(int item, bool mayBeWithdrawn = false)
    {
        if (!draft.Has(ScopeTable.Definition, item))
        {
            throw new EditException(
                "This scope item is no longer there; somebody has removed it.",
                "an item that is there"
            );
        }

        if (!mayBeWithdrawn && draft.Reference(ScopeTable.Withdrawn, item) != 0)
        {
            throw new EditException(
                $"{draft.CodeOf(ScopeTable.Definition, item)} was withdrawn.",
                "an item that holds"
            );
        }
    }

    /// <summary>Adds an item; in a marked draft it carries the mark.</summary>
    public int Add(int parent, string number, string? kind, string? text, string? clause)
    {
        if (draft.IdOf(ScopeTable.Definition, number) != 0)
        {
            throw new EditException([
                new EditFault(
                    ScopeTable.Definition.Name,
                    number,
                    ScopeTable.Item.Name,
                    number,
                    "a number that no other item has",
                    $"There is an item {number} already."
                ),
            ]);
        }

        var id = draft.Add(
            ScopeTable.Definition,
            (ScopeTable.Item, number),
            (ScopeTable.Kind, kind),
            (ScopeTable.Text, text),
            (ScopeTable.Clause, clause)
        );
        if (parent != 0)
        {
            draft.SetReference(ScopeTable.Parent, id, parent);
        }

        if (IsMarked)
        {
            draft.SetReference(ScopeTable.Revision, id, Newest);
        }

        return id;
    }

    /// <summary>The next free number of a sub-item, or of an item of the first level.</summary>
    public string NextNumber(int parent)
    {
        var prefix = parent == 0 ? "" : draft.CodeOf(ScopeTable.Definition, parent) + ".";
        var last = 0;
        foreach (var id in Rows(ScopeTable.Definition))
        {
            var number = draft.CodeOf(ScopeTable.Definition, id);
            if (
                number.StartsWith(prefix, StringComparison.Ordinal)
                && int.TryParse(
                    number.AsSpan(prefix.Length),
                    NumberStyles.None,
                    CultureInfo.InvariantCulture,
                    out var place
                )
            )
            {
                last = Math.Max(last, place);
            }
        }

        return prefix + (last + 1).ToString(CultureInfo.InvariantCulture);
    }

    /// <summary>Keeps what the item said, once in a revision; called before it is changed.</summary>
    public void Keep(int item)
    {
        if (!IsMarked || draft.Reference(ScopeTable.Revision, item) == Newest)
        {
            return;
        }

        var wording = draft.Add(
            ScopeWordingTable.Definition,
            (ScopeWordingTable.Kind, draft.Text(ScopeTable.Kind, item)),
            (ScopeWordingTable.Text, draft.Text(ScopeTable.Text, item)),
            (ScopeWordingTable.Clause, draft.Text(ScopeTable.Clause, item))
        );
        draft.SetReference(ScopeWordingTable.Item, wording, item);
        draft.SetReference(ScopeWordingTable.Revision, wording, Newest);
        if (draft.Reference(ScopeTable.Revision, item) is var since and > 0)
        {
            draft.SetReference(ScopeWordingTable.Since, wording, since);
        }

        draft.SetReference(ScopeTable.Revision, item, Newest);
    }

    /// <summary>Takes the mark away where an item says again what it said before the draft.</summary>
    public void Forget(int item)
    {
        var wording = IsMarked ? KeptWording(item) : 0;
        if (
            wording == 0
            || draft.Text(ScopeWordingTable.Kind, wording) != draft.Text(ScopeTable.Kind, item)
            || draft.Text(ScopeWordingTable.Text, wording) != draft.Text(ScopeTable.Text, item)
            || draft.Text(ScopeWordingTable.Clause, wording) != draft.Text(ScopeTable.Clause, item)
        )
        {
            return;
        }

        var since = draft.Reference(ScopeWordingTable.Since, wording);
        if (since > 0)
        {
            draft.SetReference(ScopeTable.Revision, item, since);
        }
        else
        {
            draft.Set(ScopeTable.Revision, item, null);
        }

        draft.Remove(ScopeWordingTable.Definition, wording);
    }

    /// <summary>The item was added by the draft: no signed revision has it.</summary>
    public bool IsNew(int item) =>
        !IsMarked
        || (draft.Reference(ScopeTable.Revision, item) == Newest && KeptWording(item) == 0);

    /// <summary>The item and all below it.</summary>
    public List<int> WithParts(int item)
    {
        var parts = Rows(ScopeTable.Definition)
            .ToLookup(id => draft.Reference(ScopeTable.Parent, id));
        List<int> all = [item];
        for (var at = 0; at < all.Count; at++)
        {
            all.AddRange(parts[all[at]]);
        }

        return all;
    }

    /// <summary>Removes an item that no signed revision has, with all that is said of it.</summary>
    public void Remove(int item)
    {
        RemoveRows(TraceTable.Item, item);
        RemoveRows(ScopePhraseTable.Item, item);
        RemoveRows(ScopeWordingTable.Item, item);
        foreach (var query in RowsOf(QueryTable.Item, item))
        {
            draft.Set(QueryTable.Item, query, null);
        }

        draft.Remove(ScopeTable.Definition, item);
    }

    /// <summary>Ids of the rows whose column refers to a row.</summary>
    public List<int> RowsOf(ColumnDefinition column, int target) =>
        [.. Rows(column.Table).Where(id => draft.Reference(column, id) == target)];

    private int KeptWording(int item) =>
        RowsOf(ScopeWordingTable.Item, item)
            .Find(id => draft.Reference(ScopeWordingTable.Revision, id) == Newest);

    private void RemoveRows(ColumnDefinition column, int target)
    {
        foreach (var id in RowsOf(column, target))
        {
            draft.Remove(column.Table, id);
        }
    }
}
