using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Exchange.Books;

namespace Plenum.Workbench.Workbooks;

/// <summary>The sheets of the workbook in which a breakdown is edited, and their headings.</summary>
internal static class WorkbookLayout
{
    public const string Extension = ".xlsx";
    public const string Outline = "outline";
    public const string Dictionary = "dictionary";
    public const string Matrix = "matrix";

    /// <summary>The hidden column that names the row for good.</summary>
    public const string Id = "id";
    public const string Code = "code";
    public const string Level = "level";
    public const string Name = "name";
    public const string PartType = "part_type";

    /// <summary>What a cell of the matrix holds where the part's work set does not have the activity.</summary>
    public const string OutOfSet = "–";

    public static bool IsWorkbook(string path) =>
        Path.GetExtension(path).Equals(Extension, StringComparison.OrdinalIgnoreCase);

    public static readonly IReadOnlyList<string> Sheets = [Outline, Dictionary, Matrix];

    /// <summary>Columns of elements on the outline, beside key, level and name.</summary>
    public static readonly IReadOnlyList<ColumnDefinition> OutlineColumns =
    [
        ElementTable.Kind,
        ElementTable.Split,
        ElementTable.PartType,
        ElementTable.Activity,
        ElementTable.Unit,
        ElementTable.Person,
        ElementTable.Allotted,
        ElementTable.AllottedHours,
    ];

    /// <summary>Columns of elements on the sheet of the dictionary.</summary>
    public static readonly IReadOnlyList<ColumnDefinition> DictionaryColumns =
    [
        ElementTable.Description,
        ElementTable.Output,
        ElementTable.Included,
        ElementTable.Excluded,
        ElementTable.Acceptance,
        ElementTable.Assumptions,
        ElementTable.Quantity,
        ElementTable.QuantityUnit,
        ElementTable.Hazards,
    ];

    public static readonly IReadOnlyList<string> Notes =
    [
        "A part of a Plenum project, to be edited and read back: plenum workbook PROJECT FILE --read --dry-run says what would change, without --dry-run it is taken over. All of it is taken or nothing.",
        "Columns on a dark ground are not to be edited. The hidden column id and the code name each row for good: leave them as they are.",
        "outline: names, levels, split logic, part types, units, people and what is allotted may be changed. Another level, or another place in the order, moves a row with all below it.",
        "outline: a new row has an empty id. Its code may be given or left empty; then the project gives the next free one.",
        "outline: a row that is deleted here is not removed from the project. Remove elements in Plenum itself.",
        "dictionary: texts, quantities and hazards may be changed; a cell that is emptied is emptied in the project.",
        "matrix: an empty cell of a part is an activity that is neither planned nor ruled out. A reason typed there rules it out; a reason that is cleared no longer does. Cells on a dark ground are planned by the packages named there, or do not belong to the part's work set.",
        "Hazards name what to look out for. They authorise nothing: permits and local codes decide.",
    ];

    /// <summary>
    /// The activities of all work sets, in order, with the headings of their columns. Activities that differ in case
    /// only are told apart by a number.
    /// </summary>
    public static IReadOnlyList<(string Heading, string Activity)> Activities(Project project)
    {
        var sets = project[WorkSetTable.Definition];
        var orders = sets.Ints(WorkSetTable.Order).ToArray();
        var texts = sets.Texts(WorkSetTable.Activity).ToArray();
        HashSet<string> seen = new(StringComparer.Ordinal);
        HashSet<string> headings = new(StringComparer.Ordinal) { Id, Code, Name, PartType };
        List<(string, string)> activities = [];
        foreach (
            var row in Enumerable
                .Range(0, sets.Count)
                .OrderBy(row => orders[row] == Cell.NoInt ? int.MaxValue : orders[row])
        )
        {
            if (!seen.Add(texts[row]!))
            {
                continue;
            }

            var heading = texts[row]!;
            for (var number = 2; !headings.Add(BookReader.Plain(heading)); number++)
            {
                heading = $"{texts[row]} ({number})";
            }

            activities.Add((heading, texts[row]!));
        }

        return activities;
    }
}
