using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Exchange.Import;

namespace Plenum.Workbench.Commands;

/// <summary>
/// Makes the value of what a command has written: required cells, keys, references, converted amounts, closed periods,
/// the order of the elements, and all that must hold for the project as a whole.
/// </summary>
internal sealed class EditFinish
{
    private readonly EditDraft draft;
    private readonly EditFaults faults = new();
    private readonly Dictionary<TableDefinition, Table> tables = [];
    private readonly List<TableChange> changes = [];
    private bool isInOrder;

    private EditFinish(EditDraft draft) => this.draft = draft;

    /// <summary>The value and which rows have changed; null if nothing has.</summary>
    /// <exception cref="EditException">Something does not hold.</exception>
    public static (Project Next, IReadOnlyList<TableChange> Changes)? Of(EditDraft draft) =>
        new EditFinish(draft).Finish();

    private (Project, IReadOnlyList<TableChange>)? Finish()
    {
        foreach (var definition in ProjectLayout.Tables)
        {
            if (draft.Edits.TryGetValue(definition, out var edit))
            {
                var (table, change) = edit.Finish(
                    definition == ElementTable.Definition ? () => OrderOf(edit) : null
                );
                if (change.Count > 0)
                {
                    tables[definition] = table;
                    changes.Add(change);
                }
            }
        }

        if (changes.Count == 0)
        {
            return null;
        }

        CheckRows();
        faults.Throw();
        CheckReferences();
        faults.Throw();
        Complete();
        faults.Throw();
        var next = draft.Before.With(tables.Values);
        faults.Project = next;
        CheckSettings(next);
        faults.Throw();
        ProjectRules.Check(next, ProjectChange.Of(draft.Before, next, changes), faults);
        faults.Throw();
        return (next, changes);
    }

    private void CheckRows()
    {
        foreach (var change in changes)
        {
            var table = tables[change.Definition];
            foreach (var id in change.Added.Concat(change.Updated))
            {
                foreach (var column in change.Definition.Columns)
                {
                    if (column.IsRequired && table[column].IsMissing(table.RowOf(id)))
                    {
                        var expected = CellReading.Expected(column, draft.ProjectCurrency);
                        Complain(
                            change.Definition,
                            id,
                            column,
                            null,
                            expected,
                            $"{column.Name} is empty, {expected} expected"
                        );
                    }
                }
            }

            CheckKeys(change, table);
        }
    }

    /// <summary>No two rows have the same key.</summary>
    private void CheckKeys(TableChange change, Table table)
    {
        var keys = change.Definition.Keys;
        var before = draft.Before[change.Definition];
        List<int> rekeyed =
        [
            .. change.Added,
            .. change.Updated.Where(id =>
                keys.Any(key => !table[key].SameAt(table.RowOf(id), before[key], before.RowOf(id)))
            ),
        ];
        if (rekeyed.Count == 0)
        {
            return;
        }

        if (keys is [{ Storage: ColumnStorage.Text } code])
        {
            CheckCodes(rekeyed, table, before, code);
            return;
        }

        Column[] columns = [.. keys.Select(key => table[key])];
        var among = KeyIndex.Empty(columns);
        HashSet<int> set = [.. rekeyed];
        foreach (var id in rekeyed)
        {
            var row = table.RowOf(id);
            var same = among.AddOrFind(row);
            var taken = before.KeyIndex.Find(columns, row);
            if (
                same != row
                || (
                    taken >= 0
                    && before.Ids[taken] is var other
                    && !set.Contains(other)
                    && table.RowOf(other) >= 0
                )
            )
            {
                Complain(
                    change.Definition,
                    id,
                    keys[0],
                    draft.Text(keys[0], id),
                    $"a {string.Join(", ", keys.Select(key => key.Name))} that no other row has",
                    $"{draft.Key(change.Definition, id)} stands in {change.Definition.Name} already"
                );
            }
        }
    }

    private void CheckCodes(List<int> rekeyed, Table table, Table before, ColumnDefinition key)
    {
        HashSet<int> set = [.. rekeyed];
        HashSet<string> among = new(StringComparer.Ordinal);
        foreach (var id in rekeyed)
        {
            var code = table.Texts(key)[table.RowOf(id)]!;
            if (
                !among.Add(code)
                || (
                    before.RowOfCode(code) is var taken and >= 0
                    && before.Ids[taken] is var other
                    && !set.Contains(other)
                    && table.RowOf(other) >= 0
                )
            )
            {
                Complain(
                    table.Definition,
                    id,
                    key,
                    code,
                    $"a {key.Name} that no other row has",
                    $"{code} stands in {table.Definition.Name} already"
                );
            }
        }
    }

    /// <summary>Nothing refers to a row that is taken out.</summary>
    private void CheckReferences()
    {
        foreach (var change in changes)
        {
            foreach (var id in change.Added.Concat(change.Updated))
            {
                CheckTargets(change.Definition, id);
            }
        }

        foreach (var change in changes.Where(change => change.Removed.Count > 0))
        {
            HashSet<int> removed = [.. change.Removed];
            foreach (var definition in ProjectLayout.Tables)
            {
                foreach (var column in definition.Columns)
                {
                    var target = column.TargetOf(change.Definition);
                    if (target >= 0)
                    {
                        CheckUsers(change.Definition, removed, column, target);
                    }
                }
            }
        }
    }

    /// <summary>What a row refers to is there.</summary>
    private void CheckTargets(TableDefinition definition, int id)
    {
        var table = tables[definition];
        var row = table.RowOf(id);
        foreach (var column in definition.Columns)
        {
            if (column.Kind != CellKind.Reference || table.Ints(column)[row] < 0)
            {
                continue;
            }

            var (target, to) = column.DecodeReference(table.Ints(column)[row]);
            var targets = ProjectLayout.Target(column, target);
            if ((tables.GetValueOrDefault(targets) ?? draft.Before[targets]).RowOf(to) < 0)
            {
                Complain(
                    definition,
                    id,
                    column,
                    draft.CodeOf(targets, to),
                    $"the code of {column.Called}",
                    $"{column.Name} of {draft.Key(definition, id)} would be {draft.CodeOf(targets, to)}, which has been "
                        + "removed"
                );
            }
        }
    }

    private void CheckUsers(
        TableDefinition removedFrom,
        HashSet<int> removed,
        ColumnDefinition column,
        int target
    )
    {
        var table = tables.GetValueOrDefault(column.Table) ?? draft.Before[column.Table];
        if (References.RowsTo(table, column, target, removed) is not [var row, ..])
        {
            return;
        }

        var gone = draft.Before[removedFrom];
        var id = column.DecodeReference(table.Ints(column)[row]).Id;
        var code = gone.Codes[gone.RowOf(id)];
        var user = draft.Key(column.Table, table.Ids[row]);
        faults.Add(
            new EditFault(
                column.Table.Name,
                user,
                column.Name,
                code,
                "a row that nothing refers to",
                $"{code} cannot be taken out: {column.Table.Name} still refers to it ({user})"
            )
        );
    }

    /// <summary>Fills in what follows from the rows themselves.</summary>
    private void Complete()
    {
        var errors = new InputErrors();
        var closed = new ClosedPeriods(draft.Before);
        foreach (var change in changes)
        {
            var table = Conversions.Apply(
                tables[change.Definition],
                change,
                draft.ProjectCurrency,
                static _ => false,
                faults
            );
            closed.Check(draft.Before[change.Definition], table, change, faults, errors);
            if (change.Definition == ElementTable.Definition)
            {
                table = InOrder(table, change);
            }

            tables[change.Definition] = table;
        }

        faults.Add(errors);
    }

    private int[]? OrderOf(TableEdit elements)
    {
        var order = ElementOrder.Of(draft.Before.Tree, elements);
        isInOrder = order is not null;
        return order;
    }

    private Table InOrder(Table elements, TableChange change)
    {
        if (isInOrder)
        {
            return elements;
        }

        var before = draft.Before[ElementTable.Definition];
        if (
            change.Added.Count == 0
            && change.Removed.Count == 0
            && Same(ElementTable.Parent)
            && Same(ElementTable.Order)
            && Same(ElementTable.Code)
        )
        {
            return elements;
        }

        if (!BreakdownRules.CheckTree(elements, faults))
        {
            return elements;
        }

        var parents = ParentRules.ParentRows(elements, ElementTable.Parent);
        var order = DepthFirstOrder.Of(parents, elements.Ints(ElementTable.Order), elements.Codes);
        for (var place = 0; place < order.Length; place++)
        {
            if (order[place] != place)
            {
                return elements.InOrder(order);
            }
        }

        return elements;

        bool Same(ColumnDefinition column) => ReferenceEquals(elements[column], before[column]);
    }

    private void CheckSettings(Project next)
    {
        if (!tables.ContainsKey(ProjectTable.Definition))
        {
            return;
        }

        var settings = ProjectSettings.Read(
            next[ProjectTable.Definition],
            next[Core.Foundation.Time.CalendarTable.Definition],
            faults
        );
        if (
            !faults.Any
            && settings.Currency != draft.ProjectCurrency
            && draft.Before.Tables.Any(table =>
                table.Count > 0
                && table.Definition.Columns.Any(column =>
                    column.Kind == CellKind.Money
                    && table.Longs(column).ContainsAnyExcept(Cell.NoLong)
                )
            )
        )
        {
            faults.Add(
                new EditFault(
                    "project",
                    "currency",
                    "value",
                    settings.Currency.ToString(),
                    $"{draft.ProjectCurrency}, or a project without amounts",
                    $"the project's currency cannot change from {draft.ProjectCurrency} to {settings.Currency} "
                        + "while there are amounts"
                )
            );
        }
    }

    private void Complain(
        TableDefinition table,
        int id,
        ColumnDefinition column,
        string? value,
        string expected,
        string message
    ) =>
        faults.Add(
            new EditFault(table.Name, draft.Key(table, id), column.Name, value, expected, message)
        );
}
