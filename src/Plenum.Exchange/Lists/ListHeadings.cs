using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Exchange.Lists;

/// <summary>The first line of a list, if it names columns: those of elements, in any order, and <c>level</c>.</summary>
internal sealed class ListHeadings
{
    public const string LevelHeading = "level";

    /// <summary>Columns of elements that a list may give; the place of a row comes from the list itself.</summary>
    public static readonly IReadOnlyList<ColumnDefinition> Known =
    [
        .. ElementTable.Definition.Columns.Where(column =>
            column != ElementTable.Parent && column != ElementTable.Order
        ),
    ];

    private ListHeadings() { }

    /// <summary>The cell of the code; −1 for none.</summary>
    public int Code { get; private set; } = -1;

    /// <summary>The cell of the level; −1 for none.</summary>
    public int Level { get; private set; } = -1;

    /// <summary>The first cell of the name.</summary>
    public int Name { get; private set; } = -1;

    /// <summary>Over how many cells the names are spread, one for each level: headings after it that are empty.</summary>
    public int NameCells { get; private set; } = 1;

    /// <summary>The same in a row: names in the last column may be spread as far as the row goes.</summary>
    public int NameCellsIn(ListLine line) =>
        Name + NameCells == Count ? Math.Max(NameCells, line.Cells.Count - Name) : NameCells;

    /// <summary>The further columns.</summary>
    public IReadOnlyList<ColumnDefinition> Columns { get; private set; } = [];

    /// <summary>The cell of each further column.</summary>
    public IReadOnlyList<int> Places { get; private set; } = [];

    /// <summary>How many cells have a heading.</summary>
    public int Count { get; private set; }

    /// <summary>Whether a line names columns: one of its cells is <c>name</c>, or it holds several known headings only.</summary>
    public static bool IsHeading(ListLine line)
    {
        var cells = line.Cells.Where(cell => cell.Length > 0).ToList();
        return line is { First: 0 }
            && line.Indents[0] == 0
            && (
                cells.Exists(cell => Is(cell, ElementTable.Name.Name))
                || (cells.Count > 1 && cells.TrueForAll(IsKnown))
            );
    }

    /// <summary>Null after reporting what is wrong.</summary>
    public static ListHeadings? Read(string list, ListLine line, InputErrors errors)
    {
        var headings = new ListHeadings { Count = line.Cells.Count };
        List<ColumnDefinition> columns = [];
        List<int> places = [];
        var found = errors.Count;
        HashSet<string> seen = new(StringComparer.OrdinalIgnoreCase);
        for (var cell = 0; cell < line.Cells.Count; cell++)
        {
            var heading = line.Cells[cell];
            if (
                heading.Length == 0
                && headings.Name >= 0
                && cell == headings.Name + headings.NameCells
            )
            {
                headings.NameCells++;
            }
            else if (heading.Length == 0)
            {
                errors.Add(
                    list,
                    line.Line,
                    Headings.Letters(cell),
                    "",
                    "a heading",
                    $"column {Headings.Letters(cell)} has no heading: name it, or remove the column"
                );
            }
            else if (!seen.Add(Plain(heading)))
            {
                errors.Add(list, line.Line, heading, heading, "every heading once");
            }
            else if (Is(heading, LevelHeading))
            {
                headings.Level = cell;
            }
            else if (Find(heading) is not { } column)
            {
                ReportUnknown(list, line.Line, heading, errors);
            }
            else if (column == ElementTable.Code)
            {
                headings.Code = cell;
            }
            else if (column == ElementTable.Name)
            {
                headings.Name = cell;
            }
            else
            {
                columns.Add(column);
                places.Add(cell);
            }
        }

        if (headings.Name < 0)
        {
            errors.Add(
                list,
                line.Line,
                null,
                [],
                "a column name",
                "the column name is missing: head the column with the names \"name\""
            );
        }

        headings.Columns = columns;
        headings.Places = places;
        return errors.Count == found ? headings : null;
    }

    private static void ReportUnknown(string list, int line, string heading, InputErrors errors)
    {
        if (Is(heading, ElementTable.Parent.Name) || Is(heading, ElementTable.Order.Name))
        {
            errors.Add(
                list,
                line,
                heading,
                heading,
                "no such column",
                $"the place of a row comes from the list itself: remove the column {heading}"
            );
            return;
        }

        var names = Known.Select(column => column.Name).Append(LevelHeading).ToList();
        var nearest = NearestWord.Of(heading, names);
        errors.Add(
            list,
            line,
            heading,
            heading,
            nearest ?? "one of " + string.Join(", ", names),
            $"no column of a list is called \"{InputErrors.Shorten(heading)}\"; "
                + (
                    nearest is null
                        ? "known are " + string.Join(", ", names)
                        : $"did you mean {nearest}?"
                )
        );
    }

    private static bool IsKnown(string heading) =>
        Is(heading, LevelHeading)
        || Is(heading, ElementTable.Parent.Name)
        || Is(heading, ElementTable.Order.Name)
        || Find(heading) is not null;

    private static ColumnDefinition? Find(string heading) =>
        Known.FirstOrDefault(column => Is(heading, column.Name));

    private static bool Is(string heading, string name) =>
        Plain(heading).Equals(name, StringComparison.OrdinalIgnoreCase);

    /// <summary>"Part type" and "part_type" are one heading.</summary>
    private static string Plain(string heading) => heading.Replace(' ', '_');
}
