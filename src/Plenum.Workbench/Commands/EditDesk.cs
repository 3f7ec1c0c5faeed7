using Plenum.Core;
using Plenum.Core.Foundation.Tables;
using Plenum.Store;

namespace Plenum.Workbench.Commands;

/// <summary>
/// Applies commands to a project's value, one after another, and keeps what each person can take back. What makes the
/// value last, or merely checks it, is given from outside. Not safe for several threads.
/// </summary>
/// <param name="current">The value to begin with.</param>
/// <param name="write">Writes a value before anybody sees it; may refuse by throwing, and then nothing has changed.</param>
/// <param name="clock">Dates the steps.</param>
internal sealed class EditDesk(Project current, EditDesk.Writing write, TimeProvider clock)
{
    private readonly IdBook ids = IdBook.Of(current);
    private readonly StepBook steps = new();

    public delegate void Writing(
        Project before,
        Project after,
        IReadOnlyList<TableChange> changes,
        AuditEntry entry,
        IProgress<double>? progress,
        CancellationToken ct
    );

    /// <summary>The newest value that is written.</summary>
    public Project Current { get; private set; } = current;

    public StepBook Steps => steps;

    /// <summary>Takes over a value that came from elsewhere: what was done before can no longer be taken back.</summary>
    public void Replace(Project project)
    {
        steps.Clear();
        ids.Follow(project);
        Current = project;
    }

    public EditAnswer Edit(EditCommand command, string person, string? reason = null)
    {
        var words = command.Tell(Current);
        return Apply(command, words, new AuditEntry(person, words, reason, null));
    }

    public EditAnswer? Undo(string person)
    {
        if (steps.LastOf(person) is not { } step)
        {
            return null;
        }

        var answer = Repeat(step, person, $"take back: {step.Words}", isBack: true);
        steps.TakenBack(step);
        return answer;
    }

    public EditAnswer? Redo(string person)
    {
        if (steps.LastTakenBackBy(person) is not { } step)
        {
            return null;
        }

        var answer = Repeat(step, person, $"do again: {step.Words}", isBack: false);
        steps.DoneAgain(step);
        return answer;
    }

    /// <summary>Writes a value with its audit record, and only then lets everybody see it.</summary>
    public void Publish(
        Project next,
        IReadOnlyList<TableChange> changes,
        AuditEntry entry,
        IProgress<double>? progress = null,
        bool isRepeat = false,
        CancellationToken ct = default
    )
    {
        write(Current, next, changes, entry, progress, ct);
        steps.Note(
            EditStep.Of(Current, next, changes, entry.Person, entry.Command, clock.GetUtcNow()),
            isRepeat
        );
        AuditBook.Follow(Current, next);
        ids.Follow(next);
        Current = next;
    }

    private EditAnswer Repeat(EditStep step, string person, string words, bool isBack) =>
        Apply(
            new RepeatCommand(step, isBack),
            words,
            new AuditEntry(person, words, null, null),
            isRepeat: true
        );

    private EditAnswer Apply(
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
            return new EditAnswer(words, Current.Revision, []);
        }

        Publish(next, changes, entry, isRepeat: isRepeat);
        return new EditAnswer(words, Current.Revision, changes);
    }
}
