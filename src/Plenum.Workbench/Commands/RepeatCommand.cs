using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Commands;

/// <summary>
/// Takes a step back, or does it again: every row of it must be as it was left. What somebody else has written since
/// stays, and then nothing is done. Places among sisters alone give way: whoever numbered them last is right.
/// </summary>
internal sealed record RepeatCommand(EditStep Step, bool IsBack) : EditCommand
{
    public override string Tell(Project before) => Step.Words;

    protected internal override void Apply(EditDraft draft)
    {
        List<EditFault> faults = [];
        foreach (var table in Step.Tables)
        {
            var (from, to) = IsBack ? (table.After, table.Before) : (table.Before, table.After);
            TakeOut(draft, from, to, faults);
            PutBack(draft, from, to, faults);
            Change(draft, from, to, faults);
        }

        if (faults.Count > 0)
        {
            throw new EditException(faults);
        }
    }

    /// <summary>Rows that the step added are taken out, if nobody has touched them.</summary>
    private void TakeOut(EditDraft draft, StepRows from, StepRows to, List<EditFault> faults)
    {
        var table = from.Table;
        for (var row = 0; row < table.Count; row++)
        {
            var id = table.Ids[row];
            if (to.RowOf(id) >= 0 || !draft.Has(table.Definition, id))
            {
                continue;
            }

            if (FirstDifference(draft, table, row) is { } column)
            {
                faults.Add(Since(draft, column, id));
                continue;
            }

            draft.Remove(table.Definition, id);
        }
    }

    private static void PutBack(EditDraft draft, StepRows from, StepRows to, List<EditFault> faults)
    {
        var table = to.Table;
        for (var row = 0; row < table.Count; row++)
        {
            var id = table.Ids[row];
            if (from.RowOf(id) >= 0)
            {
                continue;
            }

            if (draft.Has(table.Definition, id))
            {
                faults.Add(
                    new EditFault(
                        table.Definition.Name,
                        draft.Key(table.Definition, id),
                        null,
                        null,
                        "a row that is not there",
                        $"{draft.Key(table.Definition, id)} is there again already"
                    )
                );
                continue;
            }

            var edit = draft[table.Definition];
            edit.Add(id);
            foreach (var column in table.Definition.Columns)
            {
                edit.Set(column, id, table[column], row);
            }

            foreach (var (heading, field) in table.OwnFields)
            {
                edit.SetOwnField(heading, id, field.Values[row]);
            }
        }
    }

    private void Change(EditDraft draft, StepRows from, StepRows to, List<EditFault> faults)
    {
        var table = from.Table;
        for (var row = 0; row < table.Count; row++)
        {
            var id = table.Ids[row];
            if (to.RowOf(id) is not (>= 0 and var target))
            {
                continue;
            }

            if (!draft.Has(table.Definition, id))
            {
                faults.Add(
                    new EditFault(
                        table.Definition.Name,
                        null,
                        null,
                        null,
                        "a row that is there",
                        $"\"{Step.Words}\" cannot be {(IsBack ? "taken back" : "done again")}: a row of {table.Definition.Name} "
                            + "that it changed has been removed since"
                    )
                );
                continue;
            }

            List<ColumnDefinition> changed =
            [
                .. table.Definition.Columns.Where(column =>
                    !table[column].SameAt(row, to.Table[column], target)
                ),
            ];
            var edit = draft[table.Definition];
            var later = changed.FindAll(column => !edit.SameAt(column, id, table[column], row));
            if (changed is [var only] && only == ElementTable.Order && later.Count > 0)
            {
                continue;
            }

            if (later.Find(column => column != ElementTable.Order) is { } written)
            {
                faults.Add(Since(draft, written, id));
                continue;
            }

            changed.ForEach(column => edit.Set(column, id, to.Table[column], target));
            ChangeOwnFields(edit, id, to.Table, target);
        }
    }

    private static void ChangeOwnFields(TableEdit edit, int id, Table to, int target)
    {
        foreach (
            var heading in edit.Before.OwnFields.Keys.Union(
                to.OwnFields.Keys,
                StringComparer.Ordinal
            )
        )
        {
            var value = to.OwnFields.TryGetValue(heading, out var field)
                ? field.Values[target]
                : null;
            if (edit.OwnField(heading, id) != value)
            {
                edit.SetOwnField(heading, id, value);
            }
        }
    }

    private static ColumnDefinition? FirstDifference(EditDraft draft, Table table, int row) =>
        table.Definition.Columns.FirstOrDefault(column =>
            column != ElementTable.Order
            && !draft[table.Definition].SameAt(column, table.Ids[row], table[column], row)
        );

    private EditFault Since(EditDraft draft, ColumnDefinition column, int id)
    {
        var row = draft.Key(column.Table, id);
        var now = draft.Text(column, id);
        var writer = draft.LastWriter(column, id)?.Person ?? "Somebody else";
        return new EditFault(
            column.Table.Name,
            row,
            column.Name,
            now,
            "a value that nobody has changed since",
            $"\"{Step.Words}\" cannot be {(IsBack ? "taken back" : "done again")}: {writer} has since changed "
                + $"{column.Name} of {row}{(now is null ? "" : $" to \"{now}\"")}"
        );
    }
}
