using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;

namespace Plenum.Exchange.Lists;

/// <summary>A row of a list while it is being understood.</summary>
internal sealed class ListDraft
{
    public required int Line { get; init; }

    /// <summary>Empty cells before its text.</summary>
    public required int EmptyCells { get; init; }

    /// <summary>Spaces before its text.</summary>
    public required int Spaces { get; init; }

    /// <summary>Spaces stand in a cell of their own before its text.</summary>
    public bool HasBlankIndent { get; init; }

    public string? Code { get; set; }

    public string Name { get; set; } = "";

    public string? LevelText { get; init; }

    public IReadOnlyList<string?> Cells { get; init; } = [];

    /// <summary>Level from 0, before it is checked against the row above.</summary>
    public int Depth { get; set; }

    public int Parent { get; set; } = -1;
}

/// <summary>Makes rows of the lines of a list: with headings by their columns, without by what stands in them.</summary>
internal static class ListDrafts
{
    private const string Bullets = "-*•–·▪◦‣";

    public static List<ListDraft> WithHeadings(
        string list,
        ListHeadings headings,
        IEnumerable<ListLine> lines,
        InputErrors errors
    )
    {
        List<ListDraft> drafts = [];
        foreach (var line in lines)
        {
            var nameCells = headings.NameCellsIn(line);
            if (line.Cells.Count > headings.Count && nameCells == headings.NameCells)
            {
                Headings.ReportCount(list, line.Line, line.Cells.Count, headings.Count, errors);
                continue;
            }

            var filled = Enumerable
                .Range(headings.Name, nameCells)
                .Where(cell => At(line, cell) is not null)
                .ToList();
            if (filled.Count > 1)
            {
                errors.Add(
                    list,
                    line.Line,
                    ElementTable.Name.Name,
                    line.Cells[filled[1]],
                    "one name in a row",
                    $"two names stand in one row, \"{line.Cells[filled[0]]}\" and \"{line.Cells[filled[1]]}\": put each into a row of its own"
                );
                continue;
            }

            var name = filled.Count == 0 ? headings.Name : filled[0];
            drafts.Add(
                new ListDraft
                {
                    Line = line.Line,
                    EmptyCells = name - headings.Name,
                    Spaces = Math.Max(Indent(line, name), Indent(line, headings.Code)),
                    Code = At(line, headings.Code),
                    Name = At(line, name) ?? "",
                    LevelText = At(line, headings.Level),
                    Cells = [.. headings.Places.Select(cell => At(line, cell))],
                }
            );
        }

        return drafts;
    }

    public static List<ListDraft> WithoutHeadings(
        string list,
        IEnumerable<ListLine> lines,
        InputErrors errors
    )
    {
        List<ListDraft> drafts = [];
        List<ListLine> kept = [];
        foreach (var line in lines)
        {
            var texts = line.Cells.Skip(line.First).ToList();
            if (texts.Count > 2 || (texts.Count == 2 && texts[1].Length == 0))
            {
                errors.Add(
                    list,
                    line.Line,
                    Headings.Letters(line.First + texts.Count - 1),
                    texts[^1],
                    "a name, or a code and a name",
                    $"{texts.Count} cells stand in this row: put headings into the first line (code, name, split, part_type …) so that it is known what they are"
                );
                continue;
            }

            kept.Add(line);
            drafts.Add(
                new ListDraft
                {
                    Line = line.Line,
                    EmptyCells = line.First,
                    Spaces = line.Indents[line.First],
                    HasBlankIndent = line.HasBlankIndent,
                    Code = texts.Count == 2 ? texts[0] : null,
                    Name = texts[^1],
                }
            );
        }

        if (drafts.TrueForAll(draft => draft.Code is null))
        {
            TakeOffBullets(drafts);
            TakeOutCodes(drafts);
        }
        else
        {
            ReportRowsWithoutCode(list, drafts, errors);
        }

        return drafts;
    }

    /// <summary>Whether names without headings would be taken for codes with names, or for lines with bullets.</summary>
    public static bool MayBeMisread(IReadOnlyList<string> names) =>
        ListCodes.AreCodes(names) || names.All(HasBullet);

    private static void ReportRowsWithoutCode(
        string list,
        List<ListDraft> drafts,
        InputErrors errors
    )
    {
        foreach (var draft in drafts.Where(draft => draft.Code is null))
        {
            errors.Add(
                list,
                draft.Line,
                null,
                draft.Name,
                "a code and a name",
                $"\"{InputErrors.Shorten(draft.Name)}\" stands alone, while other rows have a code and a name: give it a code, or put headings into the first line"
            );
        }
    }

    private static void TakeOffBullets(List<ListDraft> drafts)
    {
        if (drafts.TrueForAll(draft => HasBullet(draft.Name)))
        {
            drafts.ForEach(draft => draft.Name = draft.Name[1..].Trim());
        }
    }

    private static bool HasBullet(string text) =>
        text.Length > 2 && Bullets.Contains(text[0]) && char.IsWhiteSpace(text[1]);

    private static void TakeOutCodes(List<ListDraft> drafts)
    {
        if (!ListCodes.AreCodes([.. drafts.Select(draft => draft.Name)]))
        {
            return;
        }

        foreach (var draft in drafts)
        {
            if (ListCodes.Split(draft.Name) is var (code, name))
            {
                (draft.Code, draft.Name) = (code, name);
            }
            else if (
                ListCodes.Split(draft.Name + " -") is var (alone, _)
                && ListCodes.Parts(alone) > 1
            )
            {
                (draft.Code, draft.Name) = (alone, "");
            }
        }
    }

    private static string? At(ListLine line, int cell) =>
        cell >= 0 && cell < line.Cells.Count && line.Cells[cell].Length > 0
            ? line.Cells[cell]
            : null;

    private static int Indent(ListLine line, int cell) =>
        cell >= 0 && cell < line.Indents.Count ? line.Indents[cell] : 0;
}
