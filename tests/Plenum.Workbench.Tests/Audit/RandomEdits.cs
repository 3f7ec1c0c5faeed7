using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Oracle.Generator;

namespace Plenum.Workbench.Tests.Audit;

/// <summary>
/// Edits of a project drawn from a seed: cells of any table, rows that come and go with all that refers to them, elements
/// that move, and settings. An edit that the rules of a project refuse is not made.
/// </summary>
internal sealed class RandomEdits(Dice dice)
{
    private static readonly string[] Names =
    [
        "Other works",
        "Miscellaneous",
        "Install pumps",
        "Meetings",
        "Control software",
        "Project management",
        "North section",
        "Commissioning",
        "Pump hall",
        "Train A",
        "Train B",
        "Design of tanks",
        "Civil works",
        "March 2027",
        "Ann Dorn",
        "Rework",
        "Valves",
        " ",
    ];

    private static readonly (string Key, string[] Values)[] Settings =
    [
        ("audit_levels_least", ["1", "2", "4", "9"]),
        ("audit_levels_most", ["1", "3", "6"]),
        ("audit_loe_share", ["0", "5", "60"]),
        ("audit_silent_periods", ["0", "1", "5"]),
        ("audit_package_periods", ["1", "3"]),
        ("audit_package_share", ["1", "20", "50"]),
        ("audit_package_hours", ["1", "40", "1000"]),
        ("audit_account_packages", ["1", "5"]),
        ("audit_account_share", ["5", "50"]),
        ("audit_sisters_share", ["50", "100"]),
        ("audit_sisters_hours", ["2", "5"]),
        ("audit_late_days", ["0", "5"]),
        ("audit_late_followers", ["0", "10"]),
        ("audit_index_lead", ["0", "20"]),
        ("audit_estimate_share", ["10", "100"]),
        ("assessor_error", ["0", "25"]),
        ("variance_threshold", ["1", "5", "30"]),
        ("code_mask", ["00.0", "AAA.0.0"]),
        ("language", ["en", "none"]),
        ("name", ["Harbour pumping plant", "Another project"]),
        ("accruals", ["reversed", "as_booked"]),
        ("progress", ["logic_holds", "progress_rules"]),
    ];

    private readonly Dictionary<TableDefinition, TableDraft> drafts = [];
    private Project project = Project.Empty;

    /// <summary>The project after an edit, with what it changed; null if there was nothing to edit or the rules refuse it.</summary>
    public (Project Next, IReadOnlyList<TableChange> Changes)? Edit(Project before)
    {
        project = before;
        drafts.Clear();
        switch (dice.Between(1, 20))
        {
            case <= 4:
                Rename();
                break;
            case <= 6:
                Move();
                break;
            case 7:
                Reorder();
                break;
            case 8:
                AddElement();
                break;
            case 9:
                RemoveRow();
                break;
            case 10:
                SetKey();
                break;
            case <= 12:
                AddRow();
                break;
            default:
                ChangeCell();
                break;
        }

        return drafts.Count == 0 ? null : Finish();
    }

    private TableDraft Draft(TableDefinition table)
    {
        if (!drafts.TryGetValue(table, out var draft))
        {
            drafts[table] = draft = new TableDraft(project[table]);
        }

        return draft;
    }

    private int Row(TableDefinition table) => dice.Between(0, project[table].Count - 1);

    private void Rename()
    {
        var row = Row(ElementTable.Definition);
        Draft(ElementTable.Definition)
            .Set(
                ElementTable.Name,
                row,
                dice.Chance(40) ? project.Tree.Name(Row(ElementTable.Definition)) : dice.Pick(Names)
            );
    }

    private void Move()
    {
        var tree = project.Tree;
        var row = Row(ElementTable.Definition);
        var parent = Row(ElementTable.Definition);
        var isBelow = row <= parent && parent < tree.SubtreeEnd[row];
        if (row > 0 && !isBelow && (tree.PackageOfRow[parent] < 0 || dice.Chance(20)))
        {
            Draft(ElementTable.Definition).Set(ElementTable.Parent, row, tree.Elements.Ids[parent]);
        }
    }

    private void Reorder() =>
        Draft(ElementTable.Definition)
            .Set(ElementTable.Order, Row(ElementTable.Definition), dice.Between(1, 9));

    private void AddElement()
    {
        var elements = Draft(ElementTable.Definition);
        var like = Row(ElementTable.Definition);
        var parent = Row(ElementTable.Definition);
        var row = elements.Add(like);
        elements.Set(
            ElementTable.Code,
            row,
            FreeCode(ElementTable.Definition, ElementTable.Code, like)
        );
        elements.Set(ElementTable.Parent, row, project.Tree.Elements.Ids[parent]);
        elements.Set(ElementTable.Name, row, dice.Pick(Names));
        elements.Set(
            ElementTable.Kind,
            row,
            dice.Between(ElementTable.Branch, ElementTable.PlanningPackage)
        );
    }

    private void RemoveRow()
    {
        var tables = ProjectLayout.Tables.Where(table => project[table].Count > 1).ToList();
        var table = dice.Pick(tables);
        var row = Row(table);
        if (table == ElementTable.Definition && (row == 0 || project.Tree.HasChildren(row)))
        {
            return;
        }

        Remove(table, row);
    }

    /// <summary>Takes a row out with all rows that cannot be without it; other references to it become empty.</summary>
    private void Remove(TableDefinition table, int row)
    {
        var id = project[table].Ids[row];
        Draft(table).Remove(row);
        foreach (var other in ProjectLayout.Tables)
        {
            foreach (
                var column in other.Columns.Where(column => column.Targets.Contains(table.Name))
            )
            {
                var target = column.Targets.ToList().IndexOf(table.Name);
                for (var at = 0; at < project[other].Count; at++)
                {
                    var cell = project[other].Ints(column)[at];
                    if (
                        cell == Cell.NoInt
                        || cell < 0
                        || column.DecodeReference(cell) != (target, id)
                    )
                    {
                        continue;
                    }

                    if (column.IsKey || column.IsRequired)
                    {
                        Remove(other, at);
                    }
                    else
                    {
                        Draft(other).Set(column, at, Cell.NoInt);
                    }
                }
            }
        }
    }

    private void SetKey()
    {
        var (key, values) = dice.Pick(Settings);
        var settings = Draft(ProjectTable.Definition);
        var row = project[ProjectTable.Definition].RowOfCode(key);
        if (row >= 0 && dice.Chance(30))
        {
            settings.Remove(row);
            return;
        }

        row = row >= 0 ? row : settings.Add(-1);
        settings.Set(ProjectTable.Key, row, key);
        settings.Set(ProjectTable.Value, row, dice.Pick(values));
    }

    private void AddRow()
    {
        var tables = ProjectLayout
            .Tables.Where(table => table != ElementTable.Definition && project[table].Count > 0)
            .ToList();
        var table = dice.Pick(tables);
        var like = Row(table);
        var draft = Draft(table);
        var row = draft.Add(like);
        foreach (var column in table.Columns.Where(column => column.IsKey))
        {
            if (column.Storage == ColumnStorage.Text && column.Kind != CellKind.Word)
            {
                draft.Set(column, row, FreeCode(table, column, like));
            }
            else
            {
                draft.Copy(column, row, Row(table));
            }
        }
    }

    private string FreeCode(TableDefinition table, ColumnDefinition column, int like)
    {
        var texts = project[table].Texts(column);
        var code = texts[like]!;
        do
        {
            code +=
                "."
                + dice.Between(1, 99).ToString(System.Globalization.CultureInfo.InvariantCulture);
        } while (texts.Contains(code));

        return code;
    }

    /// <summary>A cell gets what stands in another row, a number near to it, a name, or nothing.</summary>
    private void ChangeCell()
    {
        var table = dice.Pick(
            ProjectLayout.Tables.Where(table => project[table].Count > 0).ToList()
        );
        var columns = table.Columns.Where(column => !column.IsKey).ToList();
        if (table == ProjectTable.Definition || columns.Count == 0)
        {
            return;
        }

        var column = dice.Pick(columns);
        var row = Row(table);
        var draft = Draft(table);
        if (dice.Chance(50))
        {
            draft.Copy(column, row, Row(table));
        }
        else if (column.Storage == ColumnStorage.Long)
        {
            draft.Set(column, row, dice.Between(0L, 2_000_000L));
        }
        else if (column.Storage == ColumnStorage.Decimal)
        {
            draft.Set(column, row, (decimal)dice.Between(1, 40));
        }
        else if (column.Kind == CellKind.Text)
        {
            draft.Set(column, row, dice.Pick(Names));
        }
        else if (
            column.Kind == CellKind.Date
            && project[table].Ints(column)[row] is var day
            && Cell.IsGiven(day)
        )
        {
            draft.Set(column, row, day + dice.Between(-40, 40));
        }
        else if (!column.IsRequired && column.Storage == ColumnStorage.Int)
        {
            draft.Set(column, row, Cell.NoInt);
        }
        else if (
            column.Storage == ColumnStorage.Int
            && column.Kind is CellKind.Whole or CellKind.Percent
        )
        {
            draft.Set(column, row, dice.Between(0, 100));
        }
        else
        {
            draft.Copy(column, row, Row(table));
        }

        // the converted amount goes with the amount
        if (
            table.Conversion is { } conversion
            && (column == conversion.Amount || column == conversion.Converted)
        )
        {
            var amount = dice.Between(0L, 2_000_000L);
            draft.Set(conversion.Amount, row, amount);
            draft.Set(conversion.Converted, row, amount);
        }
    }

    private (Project, IReadOnlyList<TableChange>)? Finish()
    {
        List<Table> tables = [];
        List<TableChange> changes = [];
        foreach (var draft in drafts.Values)
        {
            var (table, change) = draft.Build();
            tables.Add(table);
            changes.Add(change);
        }

        var elements = tables.FindIndex(table => table.Definition == ElementTable.Definition);
        if (elements >= 0)
        {
            var faults = new Faults();
            if (!BreakdownRules.CheckTree(tables[elements], faults))
            {
                return null;
            }

            tables[elements] = InOrder(tables[elements]);
        }

        return IsValid(project.With(tables)) ? (project.With(tables), changes) : null;
    }

    private static Table InOrder(Table elements)
    {
        var order = DepthFirstOrder.Of(
            ParentRules.ParentRows(elements, ElementTable.Parent),
            elements.Ints(ElementTable.Order),
            elements.Codes
        );
        return order.AsSpan().SequenceEqual(Enumerable.Range(0, order.Length).ToArray())
            ? elements
            : elements.InOrder(order);
    }

    private static bool IsValid(Project next)
    {
        if (next.Tables.Any(table => HasRepeatedKeys(table)))
        {
            return false;
        }

        var faults = new Faults();
        _ = ProjectSettings.Read(next[ProjectTable.Definition], null, faults);
        if (!faults.Any)
        {
            ProjectRules.Check(next, _ => true, faults);
        }

        return !faults.Any;
    }

    private static bool HasRepeatedKeys(Table table)
    {
        Column[] keys = [.. table.Definition.Keys.Select(key => table[key])];
        var index = KeyIndex.Empty(keys);
        return keys.Length > 0
            && Enumerable.Range(0, table.Count).Any(row => index.AddOrFind(row) != row);
    }

    private sealed class Faults : IRowFaults
    {
        public bool Any { get; private set; }

        public void Add(
            Table table,
            int row,
            ColumnDefinition? column,
            string expected,
            string message
        ) => Any = true;
    }
}
