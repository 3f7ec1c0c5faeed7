using System.Globalization;
using Plenum.Core.Foundation;

namespace Plenum.Exchange.Lists;

/// <summary>Levels of the rows of a list by what stands before them, or by a column of levels.</summary>
internal sealed class ListIndents(
    string list,
    List<ListDraft> drafts,
    InputErrors errors,
    List<ListWarning> warnings
)
{
    /// <summary>Whether anything stands before some row and not before another.</summary>
    public ListForm Form() =>
        drafts.Exists(draft => draft.LevelText is not null) ? ListForm.Levels
        : Varies(draft => draft.EmptyCells) ? ListForm.Cells
        : Varies(draft => draft.Spaces) ? ListForm.Spaces
        : ListForm.Plain;

    public void Measure(ListForm form)
    {
        var mixed = false;
        switch (form)
        {
            case ListForm.Levels:
                ByColumn();
                break;
            case ListForm.Cells:
                mixed = Varies(draft => draft.Spaces);
                ByCells(mixed);
                break;
            case ListForm.Spaces:
                BySpaces();
                break;
        }

        ReportBlankIndents();
        Join(form, mixed);
    }

    private bool Varies(Func<ListDraft, int> indent) =>
        drafts.Count > 0 && drafts.Exists(draft => indent(draft) != indent(drafts[0]));

    private void ByColumn()
    {
        foreach (var draft in drafts)
        {
            if (
                int.TryParse(
                    draft.LevelText,
                    NumberStyles.None,
                    CultureInfo.InvariantCulture,
                    out var level
                )
                && level > 0
            )
            {
                draft.Depth = level;
            }
            else
            {
                draft.Depth = drafts[0].Depth;
                errors.Add(
                    list,
                    draft.Line,
                    ListHeadings.LevelHeading,
                    draft.LevelText,
                    "a whole number from 1"
                );
            }
        }
    }

    private void BySpaces()
    {
        var least = drafts.Min(draft => draft.Spaces);
        var step = drafts.Where(draft => draft.Spaces > least).Min(draft => draft.Spaces - least);
        foreach (var draft in drafts)
        {
            (draft.Depth, var rest) = Math.DivRem(draft.Spaces - least, step);
            if (rest != 0)
            {
                ReportUnsteady(draft, least, step);
            }
        }
    }

    private void ReportUnsteady(ListDraft draft, int least, int step)
    {
        var under = least + (draft.Depth * step);
        errors.Add(
            list,
            draft.Line,
            null,
            Spaces(draft.Spaces),
            string.Create(CultureInfo.InvariantCulture, $"{under} or {under + step} spaces"),
            string.Create(
                CultureInfo.InvariantCulture,
                $"{Spaces(draft.Spaces)} stand before \"{InputErrors.Shorten(draft.Name)}\", but a level of this list is {Spaces(step)} wide: {under} or {under + step} spaces expected"
            )
        );
    }

    /// <summary>Empty cells before the text; where some rows have spaces as well, a tab counts like one step of them.</summary>
    private void ByCells(bool mixed)
    {
        var step = mixed
            ? drafts.Where(draft => draft.Spaces > 0).Min(draft => draft.Spaces)
            : int.MaxValue;
        foreach (var draft in drafts)
        {
            draft.Depth = draft.EmptyCells + (mixed ? draft.Spaces / step : 0);
            if (mixed && draft.Spaces % step != 0)
            {
                ReportMixture(draft, Spaces(draft.Spaces));
            }
        }

        if (mixed)
        {
            warnings.Add(
                new ListWarning(
                    drafts.Find(draft => draft.Spaces > 0)!.Line,
                    $"Some lines begin with tabs and others with spaces; a tab is taken for {Spaces(step)}."
                )
            );
        }
    }

    private void ReportBlankIndents()
    {
        foreach (var draft in drafts.Where(draft => draft.HasBlankIndent))
        {
            ReportMixture(draft, "spaces and tabs");
        }
    }

    private void ReportMixture(ListDraft draft, string found) =>
        errors.Add(
            list,
            draft.Line,
            null,
            found,
            "tabs, or spaces in equal steps",
            $"tabs and spaces are mixed, so that the level of \"{InputErrors.Shorten(draft.Name)}\" cannot be told: begin every line with one of the two"
        );

    /// <summary>Finds each row's parent: the last row above it that is one level higher.</summary>
    private void Join(ListForm form, bool mixed)
    {
        if (drafts.Count == 0)
        {
            return;
        }

        var top = drafts.Min(draft => draft.Depth);
        List<int> above = [];
        for (var row = 0; row < drafts.Count; row++)
        {
            var draft = drafts[row];
            var depth = draft.Depth - top;
            if (depth > above.Count)
            {
                if (mixed)
                {
                    ReportMixture(draft, "tabs and spaces");
                }
                else
                {
                    ReportJump(form, row, depth, above.Count);
                }

                depth = above.Count;
            }

            above.RemoveRange(depth, above.Count - depth);
            draft.Depth = depth;
            draft.Parent = depth == 0 ? -1 : above[^1];
            above.Add(row);
        }
    }

    private void ReportJump(ListForm form, int row, int depth, int greatest)
    {
        var draft = drafts[row];
        var levels = string.Create(CultureInfo.InvariantCulture, $"level {depth + 1}");
        var expected =
            greatest == 0
                ? "level 1"
                : string.Create(CultureInfo.InvariantCulture, $"level 1 to {greatest + 1}");
        var name = InputErrors.Shorten(draft.Name);
        errors.Add(
            list,
            draft.Line,
            form == ListForm.Levels ? ListHeadings.LevelHeading : null,
            levels,
            expected,
            row == 0
                ? $"the first row, \"{name}\", stands deeper than a later one: begin with the highest level"
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $"\"{name}\" stands {depth - drafts[row - 1].Depth} levels below the row above it, \"{InputErrors.Shorten(drafts[row - 1].Name)}\": a level is left out; {expected} expected"
                )
        );
    }

    private static string Spaces(int count) =>
        count == 1 ? "1 space" : string.Create(CultureInfo.InvariantCulture, $"{count} spaces");
}
