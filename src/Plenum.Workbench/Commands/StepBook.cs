using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Commands;

/// <summary>
/// The edits since the project was opened, and which of them each person can take back or do again. Taking back goes
/// through a person's own steps only. At least the last <see cref="Kept"/> steps of everybody are kept.
/// </summary>
internal sealed class StepBook
{
    /// <summary>How many steps each person can take back.</summary>
    public const int Kept = 500;

    private const int MostNotes = 5_000;

    private readonly LinkedList<EditStep> log = [];
    private readonly Dictionary<string, LinkedList<EditStep>> done = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Stack<EditStep>> takenBack = new(StringComparer.Ordinal);

    /// <summary>Notes a step that was written.</summary>
    /// <param name="step">The step.</param>
    /// <param name="isRepeat">It took back another, or did it again: it is no step of its own then.</param>
    public void Note(EditStep step, bool isRepeat)
    {
        log.AddFirst(step);
        if (log.Count > MostNotes)
        {
            log.RemoveLast();
        }

        if (isRepeat)
        {
            return;
        }

        takenBack.Remove(step.Person);
        var own = StepsOf(step.Person);
        if (step.CanBeTakenBack)
        {
            own.AddFirst(step);
            if (own.Count > Kept)
            {
                own.RemoveLast();
            }
        }
        else
        {
            // what came before it cannot be taken back past it
            own.Clear();
        }
    }

    public EditStep? LastOf(string person) => done.GetValueOrDefault(person)?.First?.Value;

    public EditStep? LastTakenBackBy(string person) =>
        takenBack.GetValueOrDefault(person) is { Count: > 0 } steps ? steps.Peek() : null;

    public void TakenBack(EditStep step)
    {
        StepsOf(step.Person).RemoveFirst();
        if (!takenBack.TryGetValue(step.Person, out var steps))
        {
            takenBack[step.Person] = steps = new Stack<EditStep>();
        }

        steps.Push(step);
    }

    public void DoneAgain(EditStep step)
    {
        takenBack[step.Person].Pop();
        StepsOf(step.Person).AddFirst(step);
    }

    /// <summary>Who wrote a cell last since the project was opened; null if nobody did.</summary>
    public (string Person, DateTimeOffset At)? LastWriter(ColumnDefinition column, int id)
    {
        foreach (var step in log)
        {
            foreach (var table in step.Tables)
            {
                if (
                    table.Definition != column.Table
                    || table.After.RowOf(id) is not (>= 0 and var now)
                )
                {
                    continue;
                }

                var was = table.Before.RowOf(id);
                if (
                    was < 0
                    || !table.After.Table[column].SameAt(now, table.Before.Table[column], was)
                )
                {
                    return (step.Person, step.At);
                }
            }
        }

        return null;
    }

    public IReadOnlyList<EditNote> Newest(int count) =>
        [
            .. log.Take(count)
                .Select(step => new EditNote(step.Person, step.At, step.Words, step.Revision)),
        ];

    public void Clear()
    {
        log.Clear();
        done.Clear();
        takenBack.Clear();
    }

    private LinkedList<EditStep> StepsOf(string person)
    {
        if (!done.TryGetValue(person, out var steps))
        {
            done[person] = steps = [];
        }

        return steps;
    }
}
