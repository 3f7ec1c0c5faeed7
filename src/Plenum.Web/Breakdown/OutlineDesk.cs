using Plenum.Core.Breakdown;
using Plenum.Web.Shell;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Commands.Breakdown;
using Plenum.Workbench.Questions;

namespace Plenum.Web.Breakdown;

/// <summary>The line of the outline in which somebody types: a new element, or a name that is written anew.</summary>
/// <param name="Parent">Id of the parent of the new element; of an element that is renamed its parent.</param>
/// <param name="After">Id of the sister that it comes after; 0 for the first place.</param>
/// <param name="Renamed">Id of the element whose name is written anew; 0 for a new one.</param>
public sealed record OutlineEntry(int Parent, int After, int Renamed = 0);

/// <summary>
/// What the keys of the outline do. The line that is typed in stays open after Enter, for the next sister, so that a whole
/// breakdown can be typed without lifting the hands.
/// </summary>
public sealed class OutlineDesk(Sheet sheet, Editing editing)
{
    /// <summary>The line that is typed in has come, gone or moved.</summary>
    public event Action? Changed;

    /// <summary>Where somebody types; null if nobody does.</summary>
    public OutlineEntry? Entry { get; private set; }

    /// <summary>Id of the element that the focus is to go to once it is drawn; 0 for none.</summary>
    public int Wanted { get; set; }

    /// <summary>The elements that were copied last, with what stands on the clipboard.</summary>
    public (int Id, string Text)? Copied { get; set; }

    /// <summary>Opens a line after an element, or below the root.</summary>
    public void AddAfter(int position)
    {
        var tree = sheet.Project!.Tree;
        var ids = tree.Elements.Ids;
        var parent = tree.Parent[position];
        Open(
            parent < 0
                ? new OutlineEntry(ids[position], LastChild(ids[position]))
                : new OutlineEntry(ids[parent], ids[position])
        );
    }

    /// <summary>Opens the first line of a project that has only its root.</summary>
    public void Begin()
    {
        if (sheet.Project is { Tree.Count: 1 })
        {
            AddBelow(0);
        }
    }

    /// <summary>Opens a line below an element, after its last part.</summary>
    public void AddBelow(int position)
    {
        var id = sheet.Project!.Tree.Elements.Ids[position];
        Open(new OutlineEntry(id, LastChild(id)));
    }

    public void Rename(int position)
    {
        var tree = sheet.Project!.Tree;
        var ids = tree.Elements.Ids;
        var parent = tree.Parent[position];
        Open(new OutlineEntry(parent < 0 ? 0 : ids[parent], 0, ids[position]));
    }

    /// <summary>Leaves the line; the focus goes back to where it was opened.</summary>
    public void Leave()
    {
        if (Entry is { } entry)
        {
            Wanted =
                entry.Renamed > 0 ? entry.Renamed
                : entry.After > 0 ? entry.After
                : entry.Parent;
            Entry = null;
            Changed?.Invoke();
        }
    }

    /// <summary>Takes what was typed, and opens the next line.</summary>
    /// <returns>True if it was written, or there was nothing to write.</returns>
    public async Task<bool> Take(string text)
    {
        if (Entry is not { } entry)
        {
            return true;
        }

        if (text.Trim().Length == 0)
        {
            Leave();
            return true;
        }

        if (entry.Renamed > 0)
        {
            return await WriteName(entry, text);
        }

        var answer = await editing.Do(new AddElementCommand(entry.Parent, entry.After, text));
        return answer is not null && GoOn(entry, answer);
    }

    /// <summary>Takes over a part that sisters have, with all below it.</summary>
    public async Task<bool> TakeOver(PartSuggestion part)
    {
        if (Entry is not { Renamed: 0 } entry)
        {
            return false;
        }

        var answer = await editing.Do(
            part.Source > 0
                ? new CopyElementCommand(part.Source, entry.Parent, entry.After, part.Name)
                : new AddElementCommand(entry.Parent, entry.After, part.Name)
        );
        return answer is not null && GoOn(entry, answer);
    }

    /// <summary>Moves the line, or the element that is renamed, one level down or up.</summary>
    public async Task Level(bool down, string text)
    {
        if (Entry is not { } entry)
        {
            return;
        }

        if (entry.Renamed > 0)
        {
            if (await WriteName(entry, text))
            {
                await editing.Do(
                    new StepElementCommand(entry.Renamed, down ? Step.LevelDown : Step.LevelUp)
                );
                Open(entry with { });
            }

            return;
        }

        var tree = sheet.Project!.Tree;
        if (down && entry.After > 0)
        {
            Open(new OutlineEntry(entry.After, LastChild(entry.After)));
        }
        else if (
            !down
            && tree.Elements.RowOf(entry.Parent) is var parent and > 0
            && tree.Parent[parent] is var above and >= 0
        )
        {
            Open(new OutlineEntry(tree.Elements.Ids[above], entry.Parent));
        }
    }

    private async Task<bool> WriteName(OutlineEntry entry, string text)
    {
        var elements = sheet.Project!.Tree.Elements;
        var row = elements.RowOf(entry.Renamed);
        var seen = Seen ?? (row < 0 ? "" : sheet.Project.Tree.Name(row));
        var answer = await editing.Do(
            new SetCellCommand(new CellText("elements", entry.Renamed, "name", text.Trim(), seen))
        );
        if (answer is null)
        {
            return false;
        }

        Leave();
        return true;
    }

    /// <summary>The name as it stood when somebody began to write it anew.</summary>
    public string? Seen { get; private set; }

    private bool GoOn(OutlineEntry entry, EditAnswer answer)
    {
        var added = answer.Added(ElementTable.Definition);
        Open(entry with { After = added.Count > 0 ? added[0] : entry.After });
        return true;
    }

    private void Open(OutlineEntry entry)
    {
        Entry = entry;
        var elements = sheet.Project!.Tree.Elements;
        Seen =
            entry.Renamed > 0 && elements.RowOf(entry.Renamed) is var row and >= 0
                ? sheet.Project.Tree.Name(row)
                : null;
        Changed?.Invoke();
    }

    private int LastChild(int id)
    {
        var tree = sheet.Project!.Tree;
        var row = tree.Elements.RowOf(id);
        var last = 0;
        for (
            var child = row + 1;
            row >= 0 && child < tree.SubtreeEnd[row];
            child = tree.SubtreeEnd[child]
        )
        {
            last = tree.Elements.Ids[child];
        }

        return last;
    }
}
