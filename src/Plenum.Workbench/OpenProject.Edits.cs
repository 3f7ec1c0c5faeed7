using Plenum.Core;
using Plenum.Core.Foundation.Tables;
using Plenum.Store;
using Plenum.Workbench.Commands;

namespace Plenum.Workbench;

/// <summary>Commands that can be taken back.</summary>
public sealed partial class OpenProject
{
    private readonly IdBook ids = new();
    private readonly StepBook steps = new();

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
            var words = command.Tell(Current);
            return Apply(command, words, new AuditEntry(person, words, reason, null))
                ?? new EditAnswer(words, Current.Revision, []);
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
            if (steps.LastOf(person) is not { } step)
            {
                return null;
            }

            var answer = Repeat(step, person, $"take back: {step.Words}", isBack: true);
            steps.TakenBack(step);
            return answer;
        }
    }

    /// <summary>Does again what a person took back last; null if there is nothing.</summary>
    /// <inheritdoc cref="Undo" path="/exception"/>
    public EditAnswer? Redo(string person)
    {
        lock (writing)
        {
            if (steps.LastTakenBackBy(person) is not { } step)
            {
                return null;
            }

            var answer = Repeat(step, person, $"do again: {step.Words}", isBack: false);
            steps.DoneAgain(step);
            return answer;
        }
    }

    /// <summary>What a person could take back and do again, in words; null for nothing.</summary>
    public (string? Undo, string? Redo) StepsOf(string person)
    {
        lock (writing)
        {
            return (steps.LastOf(person)?.Words, steps.LastTakenBackBy(person)?.Words);
        }
    }

    /// <summary>The last edits since the project was opened, newest first: who, when, what.</summary>
    public IReadOnlyList<EditNote> LastEdits(int count)
    {
        lock (writing)
        {
            return steps.Newest(count);
        }
    }

    private EditAnswer Repeat(EditStep step, string person, string words, bool isBack) =>
        Apply(
            new RepeatCommand(step, isBack),
            words,
            new AuditEntry(person, words, null, null),
            isRepeat: true
        ) ?? new EditAnswer(words, Current.Revision, []);

    private EditAnswer? Apply(
        EditCommand command,
        string words,
        AuditEntry entry,
        bool isRepeat = false
    )
    {
        var draft = new EditDraft(Current, ids) { LastWriter = steps.LastWriter };
        command.Apply(draft);
        if (EditFinish.Of(draft) is not var (next, changes))
        {
            return null;
        }

        Publish(next, changes, entry, isRepeat: isRepeat);
        return new EditAnswer(words, Current.Revision, changes);
    }

    /// <summary>Writes a value with its audit record, and only then lets everybody see it.</summary>
    private void Publish(
        Project next,
        IReadOnlyList<TableChange> changes,
        AuditEntry entry,
        IProgress<double>? progress = null,
        CancellationToken ct = default,
        bool isRepeat = false
    )
    {
        file.Commit(Current, next, changes, entry, progress, ct);
        steps.Note(
            EditStep.Of(Current, next, changes, entry.Person, entry.Command, clock.GetUtcNow()),
            isRepeat
        );
        AuditBook.Follow(Current, next);
        ids.Follow(next);
        Current = next;
    }
}

/// <summary>What an edit has done.</summary>
/// <param name="Words">In words.</param>
/// <param name="Revision">Revision of the project afterwards.</param>
/// <param name="Changes">The rows that have changed, by table; none if everything was so already.</param>
public sealed record EditAnswer(string Words, long Revision, IReadOnlyList<TableChange> Changes)
{
    /// <summary>The rows of a table that were added, in order.</summary>
    public IReadOnlyList<int> Added(TableDefinition table) =>
        Changes.FirstOrDefault(change => change.Definition == table)?.Added ?? [];
}

/// <summary>An edit as it is told to others.</summary>
public sealed record EditNote(string Person, DateTimeOffset At, string Words, long Revision);
