using System.Globalization;
using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Exchange.Books;

namespace Plenum.Workbench.Workbooks;

/// <summary>Compares the sheet of the outline with the project: new rows, moves, order, names and other cells.</summary>
internal sealed class OutlineReading
{
    private readonly Project project;
    private readonly ElementTree tree;
    private readonly ReadBookSheet sheet;
    private readonly SheetDifference difference;
    private readonly List<Placed> placed = [];

    // by id, below 0 for new rows
    private readonly Dictionary<int, List<int>> families = [];
    private readonly HashSet<int> changedFamilies = [];

    public OutlineReading(Project project, ReadBookSheet sheet, SheetDifference difference)
    {
        this.project = project;
        tree = project.Tree;
        this.sheet = sheet;
        this.difference = difference;
    }

    public List<WorkbookRow> Rows { get; } = [];

    public List<WorkbookFamily> Families { get; } = [];

    /// <summary>Names that the sheet gives to elements, by id.</summary>
    public Dictionary<int, string> Names { get; } = [];

    /// <summary>Codes of elements that are not on the sheet.</summary>
    public List<string> Missing { get; } = [];

    public void Read()
    {
        var keys = new SheetKeys(project, sheet, difference.Errors);
        foreach (var row in sheet.Rows)
        {
            if (keys.Find(row, mayBeNew: true) is { } position && LevelOf(row) is { } level)
            {
                placed.Add(
                    new Placed(
                        row,
                        position,
                        position < 0 ? -1 - Rows.Count : tree.Elements.Ids[position],
                        level
                    )
                );
                Take(placed[^1]);
            }
        }

        if (placed.Count == 0 || difference.Errors.Any)
        {
            return;
        }

        if (placed[0].Position < 0 || placed[0].Level != tree.Level[placed[0].Position])
        {
            Complain(
                placed[0].Row,
                "the element that the workbook was written for, on its own level",
                "the first row is not the element that the workbook was written for: put it back to the top, on its own level"
            );
            return;
        }

        Place();
        NoteMissing();
        if (!difference.Errors.Any)
        {
            Compare();
        }
    }

    private int? LevelOf(ReadBookRow row)
    {
        var text = row[WorkbookLayout.Level].Trim();
        if (
            int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var level)
            && level > 0
        )
        {
            return level;
        }

        difference.Errors.Add(
            sheet.File,
            row.Row,
            WorkbookLayout.Level,
            text,
            "a whole number from 1"
        );
        return null;
    }

    private void Take(Placed at)
    {
        var name = at.Row[WorkbookLayout.Name].Trim();
        if (name.Length == 0)
        {
            difference.Errors.Add(
                sheet.File,
                at.Row.Row,
                WorkbookLayout.Name,
                "",
                "a name",
                "the name is empty: every row needs one. A row that is not wanted is removed in Plenum itself"
            );
        }

        if (at.Position >= 0)
        {
            difference.Compare(sheet, at.Row, at.Position, ElementTable.Name);
            foreach (var column in WorkbookLayout.OutlineColumns)
            {
                difference.Compare(sheet, at.Row, at.Position, column);
            }

            Names[at.Id] = name;
            return;
        }

        var code = at.Row[WorkbookLayout.Code].Trim();
        Rows.Add(
            new WorkbookRow(
                at.Id,
                name,
                code.Length == 0 ? null : code,
                [
                    .. WorkbookLayout
                        .OutlineColumns.Where(column => at.Row[column.Name].Length > 0)
                        .Select(column =>
                            KeyValuePair.Create(column.Name, at.Row[column.Name].Trim())
                        ),
                ],
                SheetDifference.Where(sheet, at.Row)
            )
        );
        difference.Note(sheet, at.Row, code, "new", null, name);
    }

    /// <summary>
    /// Finds each row's parent: the last row above it that is one level higher. A row whose parent is not on the sheet
    /// stays where it is as long as its level does.
    /// </summary>
    private void Place()
    {
        List<Placed> above = [];
        HashSet<int> present = [.. placed.Select(row => row.Id)];
        var top = placed[0].Level;
        foreach (var row in placed)
        {
            var depth = row.Level - top;
            var isFirst = above.Count == 0;
            if (!isFirst && depth < 1)
            {
                ComplainOfLevel(row, top + 1, top + above.Count);
                // as if it stood on the next level, so that one slip is one error
                above.RemoveRange(1, above.Count - 1);
                above.Add(row);
                continue;
            }

            var own = row.Position > 0 ? tree.Parent[row.Position] : -1;
            if (
                !isFirst
                && own >= 0
                && !present.Contains(tree.Elements.Ids[own])
                && row.Level == tree.Level[row.Position]
            )
            {
                // its parent's row was deleted on the sheet; nothing is removed, so nothing moves
                above = Ancestors(row, depth);
                Join(row, above[^1].Id);
                above.Add(row);
                continue;
            }

            if (depth > above.Count)
            {
                ComplainOfLevel(row, top + 1, top + above.Count);
                above.Add(row);
                continue;
            }

            above.RemoveRange(depth, above.Count - depth);
            if (!isFirst)
            {
                Join(row, above[^1].Id);
            }

            above.Add(row);
        }
    }

    private List<Placed> Ancestors(Placed row, int count)
    {
        List<Placed> ancestors = [];
        for (var at = tree.Parent[row.Position]; ancestors.Count < count; at = tree.Parent[at])
        {
            ancestors.Add(new Placed(row.Row, at, tree.Elements.Ids[at], tree.Level[at]));
        }

        ancestors.Reverse();
        return ancestors;
    }

    private void Join(Placed row, int parent)
    {
        if (!families.TryGetValue(parent, out var family))
        {
            families[parent] = family = [];
        }

        family.Add(row.Id);
        if (row.Position < 0)
        {
            changedFamilies.Add(parent);
            return;
        }

        var own = tree.Elements.Ids[tree.Parent[row.Position]];
        if (own != parent)
        {
            changedFamilies.Add(parent);
            difference.Note(
                sheet,
                row.Row,
                tree.Code(row.Position),
                "moved",
                tree.Code(tree.Parent[row.Position]),
                CodeOf(parent)
            );
        }
    }

    private void NoteMissing()
    {
        HashSet<int> present = [.. placed.Select(row => row.Id)];
        var top = placed[0].Position;
        for (var row = top; row < tree.SubtreeEnd[top]; row++)
        {
            if (!present.Contains(tree.Elements.Ids[row]))
            {
                Missing.Add(tree.Code(row));
            }
        }
    }

    /// <summary>Families with new or moved rows, or whose rows stand in another order, a parent before its children.</summary>
    private void Compare()
    {
        var rowOf = placed.ToDictionary(row => row.Id);
        var missing = families
            .Keys.Where(id => !rowOf.ContainsKey(id))
            .Select(id => new Placed(rowOf[families[id][0]].Row, tree.Elements.RowOf(id), id, 0));
        foreach (var parent in placed.Where(row => families.ContainsKey(row.Id)).Concat(missing))
        {
            var family = families[parent.Id];
            var last = -1;
            var isOrdered = true;
            foreach (var child in family)
            {
                var position = rowOf[child].Position;
                if (
                    position >= 0
                    && parent.Position >= 0
                    && tree.Parent[position] == parent.Position
                )
                {
                    isOrdered &= position > last;
                    last = position;
                }
            }

            if (!isOrdered)
            {
                changedFamilies.Add(parent.Id);
                difference.Note(
                    sheet,
                    parent.Row,
                    CodeOf(parent.Id),
                    "order",
                    null,
                    string.Join(", ", family.Select(CodeOf))
                );
            }

            if (changedFamilies.Contains(parent.Id))
            {
                Families.Add(new WorkbookFamily(parent.Id, family));
            }
        }
    }

    private string CodeOf(int id)
    {
        var row = id > 0 ? tree.Elements.RowOf(id) : -1;
        return row >= 0 ? tree.Code(row) : Rows[-1 - id].Code ?? Rows[-1 - id].Name;
    }

    private void ComplainOfLevel(Placed row, int least, int greatest)
    {
        var expected =
            greatest <= least
                ? string.Create(CultureInfo.InvariantCulture, $"{least}")
                : string.Create(CultureInfo.InvariantCulture, $"{least} to {greatest}");
        difference.Errors.Add(
            sheet.File,
            row.Row.Row,
            WorkbookLayout.Level,
            row.Row[WorkbookLayout.Level],
            expected,
            string.Create(
                CultureInfo.InvariantCulture,
                $"level {row.Level} does not follow the row above it: {expected} expected"
            )
        );
    }

    private void Complain(ReadBookRow row, string expected, string message) =>
        difference.Errors.Add(
            sheet.File,
            row.Row,
            WorkbookLayout.Level,
            row[WorkbookLayout.Level],
            expected,
            message
        );

    /// <summary>A row with the position of its element (−1 for a new one), its id and its level.</summary>
    private sealed record Placed(ReadBookRow Row, int Position, int Id, int Level);
}
