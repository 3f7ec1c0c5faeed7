using System.Globalization;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Exchange.Import;

namespace Plenum.Exchange.Lists;

/// <summary>
/// Reads a breakdown from a list as a person pastes it: a line for each element, its level shown by leading spaces or
/// tabs, by the first filled cell of a row, by a column headed <c>level</c>, or by its code. The first line may hold
/// headings, those of elements in any order. Nothing is guessed in silence: what does not fit is an error with its line.
/// </summary>
public static class ListReader
{
    private const int MostWarnings = 1_000;

    /// <param name="text">The list.</param>
    /// <param name="list">What errors call it.</param>
    public static ReadList Read(string text, string list = "list")
    {
        var errors = new InputErrors();
        List<ListWarning> warnings = [];
        var lines = ListLines.Of(text).Take(ListLimits.MostRows + 2).ToList();
        var headings = lines.Count > 0 && ListHeadings.IsHeading(lines[0]);
        if (lines.Count - (headings ? 1 : 0) > ListLimits.MostRows)
        {
            errors.Add(
                list,
                lines[^1].Line,
                null,
                [],
                "at most 100 000 rows",
                "the list has more than 100 000 rows: take it in parts, or import elements.csv"
            );
            return new ReadList(ListForm.Plain, [], [], errors, []);
        }

        IReadOnlyList<ColumnDefinition> columns = [];
        List<ListDraft> drafts;
        if (headings)
        {
            if (ListHeadings.Read(list, lines[0], errors) is not { } head)
            {
                return new ReadList(ListForm.Plain, [], [], errors, []);
            }

            columns = head.Columns;
            drafts = ListDrafts.WithHeadings(list, head, lines.Skip(1), errors);
        }
        else
        {
            drafts = ListDrafts.WithoutHeadings(list, lines, errors);
        }

        CheckTexts(list, drafts, columns, errors);
        var indents = new ListIndents(list, drafts, errors, warnings);
        var form = indents.Form();
        if (form == ListForm.Plain && ListTree.IsShown(drafts))
        {
            form = ListForm.Codes;
            drafts = ListTree.Join(list, drafts, errors);
        }
        else
        {
            indents.Measure(form);
        }

        CheckCodes(list, drafts, errors);
        CheckNames(list, drafts, errors);
        WarnOfCodes(drafts, warnings);
        return new ReadList(
            form,
            columns,
            drafts.ConvertAll(draft => new ListRow(
                draft.Line,
                draft.Depth + 1,
                draft.Parent,
                draft.Code,
                draft.Name,
                draft.Cells
            )),
            errors,
            warnings
        );
    }

    private static void CheckTexts(
        string list,
        List<ListDraft> drafts,
        IReadOnlyList<ColumnDefinition> columns,
        InputErrors errors
    )
    {
        foreach (var draft in drafts)
        {
            if (draft.Name.Length == 0)
            {
                errors.Add(
                    list,
                    draft.Line,
                    ElementTable.Name.Name,
                    "",
                    "a name",
                    draft.Code is null
                        ? "the name is empty: every row needs one"
                        : $"{draft.Code} has no name: every row needs one"
                );
            }

            if (draft.Code is { } code && !CellParser.IsCode(code))
            {
                errors.Add(
                    list,
                    draft.Line,
                    ElementTable.Code.Name,
                    code,
                    "a code without line breaks"
                );
            }

            CheckLength(draft, ElementTable.Name.Name, draft.Name);
            CheckLength(draft, ElementTable.Code.Name, draft.Code);
            for (var column = 0; column < draft.Cells.Count; column++)
            {
                CheckLength(draft, columns[column].Name, draft.Cells[column]);
            }
        }

        void CheckLength(ListDraft draft, string column, string? text)
        {
            if (text?.Length > ListLimits.LongestText)
            {
                errors.Add(
                    list,
                    draft.Line,
                    column,
                    text,
                    "at most 32 767 characters",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"the text has {text.Length} characters, at most 32 767 expected: shorten it"
                    )
                );
            }
        }
    }

    private static void CheckCodes(string list, List<ListDraft> drafts, InputErrors errors)
    {
        Dictionary<string, int> lineOf = new(StringComparer.Ordinal);
        foreach (var draft in drafts.OrderBy(draft => draft.Line))
        {
            if (draft.Code is { } code && !lineOf.TryAdd(code, draft.Line))
            {
                errors.Add(
                    list,
                    draft.Line,
                    ElementTable.Code.Name,
                    code,
                    "a code that no other row has",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"the code {code} stands in line {lineOf[code]} already: give this row another one"
                    )
                );
            }
        }
    }

    /// <summary>One name once under one parent; under different parents equal names are accepted.</summary>
    private static void CheckNames(string list, List<ListDraft> drafts, InputErrors errors)
    {
        Dictionary<(int, string), int> lineOf = [];
        foreach (var draft in drafts)
        {
            if (draft.Name.Length > 0 && !lineOf.TryAdd((draft.Parent, draft.Name), draft.Line))
            {
                errors.Add(
                    list,
                    draft.Line,
                    ElementTable.Name.Name,
                    draft.Name,
                    "a name that no sister has",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"\"{InputErrors.Shorten(draft.Name)}\" stands in line {lineOf[(draft.Parent, draft.Name)]} under the same parent already: name what makes them different"
                    )
                );
            }
        }
    }

    private static void WarnOfCodes(List<ListDraft> drafts, List<ListWarning> warnings)
    {
        foreach (var draft in drafts)
        {
            if (
                draft is { Code: { } code, Parent: >= 0 }
                && drafts[draft.Parent] is { Parent: >= 0, Code: { } above }
                && !code.StartsWith(above, StringComparison.Ordinal)
                && warnings.Count < MostWarnings
            )
            {
                warnings.Add(
                    new ListWarning(
                        draft.Line,
                        $"{code} stands under {above}, which its code does not show."
                    )
                );
            }
        }
    }
}
