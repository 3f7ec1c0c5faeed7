using Plenum.Store;
using Plenum.Workbench.Commands;

namespace Plenum.Web.Shell;

/// <summary>
/// The edits of one person on this page: does commands, takes them back, and keeps what has to be said about the last
/// one. What is wrong stays until the next edit or until it is put away; entries stay in their fields meanwhile.
/// </summary>
public sealed class Editing(Sheet sheet, TimeProvider clock)
{
    private EditCommand? refused;

    /// <summary>What is said, or who works here, has changed.</summary>
    public event Action? Changed;

    /// <summary>Who works on this page.</summary>
    public string Person { get; private set; } = Environment.UserName;

    /// <summary>An edit is being written.</summary>
    public bool IsBusy { get; private set; }

    /// <summary>What was done last, in words; null before the first edit.</summary>
    public string? Said { get; private set; }

    /// <summary>When it was written.</summary>
    public DateTimeOffset? SavedAt { get; private set; }

    /// <summary>What is wrong with the last edit, line by line; empty if nothing is.</summary>
    public IReadOnlyList<string> Troubles { get; private set; } = [];

    /// <summary>Cells that somebody else has written since they were seen; the person chooses.</summary>
    public IReadOnlyList<EditConflict> Conflicts { get; private set; } = [];

    /// <summary>What could be taken back and done again, in words; null for nothing.</summary>
    public (string? Undo, string? Redo) Steps => sheet.Shelved?.StepsOf(Person) ?? (null, null);

    /// <summary>Names who works here.</summary>
    public void Name(string person)
    {
        if (person.Trim() is { Length: > 0 } name && name != Person)
        {
            Person = name;
            Changed?.Invoke();
        }
    }

    /// <summary>Does a command.</summary>
    /// <returns>What it has done; null if it was refused, for a reason that stands in <see cref="Troubles"/>, or there
    /// are two values to choose from, which stand in <see cref="Conflicts"/>.</returns>
    public async Task<EditAnswer?> Do(EditCommand command, string? reason = null)
    {
        var answer = await Try(shelved => Answered(shelved.Edit(command, Person, reason)));
        refused = answer is null ? command : null;
        return answer;
    }

    /// <summary>Takes back this person's last edit.</summary>
    public Task<EditAnswer?> Undo() => Try(shelved => shelved.Undo(Person));

    /// <summary>Does again what was taken back last.</summary>
    public Task<EditAnswer?> Redo() => Try(shelved => shelved.Redo(Person));

    /// <summary>Of two values, writes one's own, knowing the other.</summary>
    public async Task KeepMine()
    {
        var command = refused;
        var theirs = Conflicts;
        PutAway();
        switch (command)
        {
            case SetCellCommand one:
                await Do(new SetCellCommand(Seeing(one.Cell, theirs)));
                break;
            case SetCellsCommand many:
                await Do(
                    many with
                    {
                        Texts = [.. many.Texts.Select(cell => Seeing(cell, theirs))],
                    }
                );
                break;
            case not null:
                await Do(
                    new SetCellsCommand(
                        "keep my values",
                        [
                            .. theirs.Select(both => new CellText(
                                both.Table,
                                both.Id,
                                both.Column,
                                both.Mine,
                                both.Theirs
                            )),
                        ]
                    )
                );
                break;
        }
    }

    /// <summary>Puts away what was said: of two values the one that stands stays.</summary>
    public void PutAway()
    {
        Troubles = [];
        Conflicts = [];
        refused = null;
        Changed?.Invoke();
    }

    /// <summary>Says what is wrong with something that did not come to be a command.</summary>
    public void Complain(params IReadOnlyList<string> troubles)
    {
        Troubles = troubles;
        Changed?.Invoke();
    }

    private static async Task<EditAnswer?> Answered(Task<EditAnswer> answer) => await answer;

    private static CellText Seeing(CellText cell, IReadOnlyList<EditConflict> conflicts) =>
        conflicts.FirstOrDefault(both =>
            both.Table == cell.Table && both.Id == cell.Id && both.Column == cell.Column
        )
            is { } conflict
            ? cell with
            {
                Seen = conflict.Theirs,
            }
            : cell;

    private async Task<EditAnswer?> Try(Func<Host.ShelvedProject, Task<EditAnswer?>> edit)
    {
        if (sheet.Shelved is not { } shelved)
        {
            return null;
        }

        IsBusy = true;
        Troubles = [];
        Conflicts = [];
        try
        {
            var answer = await edit(shelved);
            if (answer is { Changes.Count: > 0 })
            {
                Said = answer.Words;
                SavedAt = clock.GetLocalNow();
            }

            return answer;
        }
        catch (EditConflictException both)
        {
            Conflicts = both.Conflicts;
        }
        catch (EditException wrong)
        {
            Troubles = [.. wrong.Faults.Select(fault => fault.Message)];
        }
        catch (Exception unwritten)
            when (unwritten
                    is StoreException
                        or IOException
                        or UnauthorizedAccessException
                        or InvalidOperationException
            )
        {
            Troubles = [unwritten.Message];
        }
        finally
        {
            IsBusy = false;
            Changed?.Invoke();
        }

        return null;
    }
}
