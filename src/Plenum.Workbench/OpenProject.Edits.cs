using Plenum.Store;
using Plenum.Workbench.Commands;

namespace Plenum.Workbench;

/// <summary>Commands that can be taken back.</summary>
public sealed partial class OpenProject
{
    /// <summary>Does a command: all of it, or nothing.</summary>
    /// <param name="command">What is to be done.</param>
    /// <param name="person">Who does it.</param>
    /// <param name="reason">Why, where the trade asks for it.</param>
    /// <exception cref="EditException">Something is wrong with it; nothing has changed.</exception>
    /// <exception cref="EditConflictException">Somebody else has written the same cell since it was seen.</exception>
    /// <exception cref="StoreException">It could not be written; nothing has changed.</exception>
    public EditAnswer Edit(EditCommand command, string person, string? reason = null)
    {
        lock (writing)
        {
            return desk.Edit(command, person, reason);
        }
    }

    /// <summary>Takes back the last command of a person that is not taken back yet; null if there is none.</summary>
    /// <exception cref="EditException">
    /// Somebody else has worked on the same rows since: their work stays, and nothing has changed.
    /// </exception>
    /// <exception cref="StoreException">It could not be written; nothing has changed.</exception>
    public EditAnswer? Undo(string person)
    {
        lock (writing)
        {
            return desk.Undo(person);
        }
    }

    /// <summary>Does again what a person took back last; null if there is nothing.</summary>
    /// <inheritdoc cref="Undo" path="/exception"/>
    public EditAnswer? Redo(string person)
    {
        lock (writing)
        {
            return desk.Redo(person);
        }
    }

    /// <summary>What a person could take back and do again, in words; null for nothing.</summary>
    public (string? Undo, string? Redo) StepsOf(string person)
    {
        lock (writing)
        {
            return (desk.Steps.LastOf(person)?.Words, desk.Steps.LastTakenBackBy(person)?.Words);
        }
    }

    /// <summary>The last edits since the project was opened, newest first: who, when, what.</summary>
    public IReadOnlyList<EditNote> LastEdits(int count)
    {
        lock (writing)
        {
            return desk.Steps.Newest(count);
        }
    }
}
