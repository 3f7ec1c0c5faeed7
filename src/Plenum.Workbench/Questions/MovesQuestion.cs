using Plenum.Core;
using Plenum.Core.Network;
using Plenum.Core.Network.Moves;

namespace Plenum.Workbench.Questions;

/// <summary>Which dates have moved, by how many working days, and because of which change?</summary>
/// <param name="Before">The project as it was; null for the same project.</param>
/// <param name="Since">
/// The status date from which the moves are told: what was reported up to this day counts before; null for the earlier
/// project's own status date.
/// </param>
public sealed record MovesQuestion(Project? Before, DateOnly? Since)
{
    /// <exception cref="QuestionException">One of the networks cannot be computed.</exception>
    public MovesAnswer Ask(Project project)
    {
        var earlier = Before ?? project;
        try
        {
            var before = ProjectNetwork.At(earlier, Since ?? earlier.Settings.StatusDate);
            return new MovesAnswer(
                project.Revision,
                before,
                project.Network,
                DatesMoved.Between(before.Dates, project.Network.Dates)
            );
        }
        catch (NetworkException wrong)
        {
            throw new QuestionException(wrong.Message);
        }
    }
}

/// <summary>The answer to a <see cref="MovesQuestion"/>.</summary>
/// <param name="Revision">Revision of the project that answered.</param>
/// <param name="Before">The network as it was.</param>
/// <param name="After">The network as it is.</param>
/// <param name="Moved">What lies between them.</param>
public sealed record MovesAnswer(
    long Revision,
    ProjectNetwork Before,
    ProjectNetwork After,
    DatesMoved Moved
)
{
    public DateOnly? StatusBefore => DayOf(Before.Input.StatusDay);

    public DateOnly? StatusAfter => DayOf(After.Input.StatusDay);

    /// <summary>When it ended; null without activities.</summary>
    public DateOnly? FinishBefore => Before.Dates.Count == 0 ? null : Before.Dates.Finish;

    /// <summary>When it ends; null without activities.</summary>
    public DateOnly? FinishAfter => After.Dates.Count == 0 ? null : After.Dates.Finish;

    /// <summary>What differs, with how many activities' early finish it moved.</summary>
    public IEnumerable<ChangeRow> Changes
    {
        get
        {
            var counts = new int[Moved.Changes.Count];
            foreach (var cause in Moved.Activities.SelectMany(activity => activity.Because))
            {
                counts[cause.Change]++;
            }

            return Moved.Changes.Select(
                (change, index) => new ChangeRow(index + 1, change, counts[index])
            );
        }
    }

    /// <summary>The activities that have moved, in the order of the packages.</summary>
    public IEnumerable<MoveRow> Activities =>
        Moved.Activities.Select(moved => new MoveRow(this, moved));

    /// <summary>The activity that ends the project now; null if its dates have not moved, or it was not there before.</summary>
    public MoveRow? Ender =>
        After.Dates.Drivers.ChainToFinish() is [.., var last]
            ? Activities.FirstOrDefault(row => row.Moved.Activity == last.Activity)
            : null;

    private static DateOnly? DayOf(int? day) =>
        day is { } number ? DateOnly.FromDayNumber(number) : null;
}

/// <summary>One difference between two networks.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="Change">What it is.</param>
/// <param name="Moved">How many activities it moved.</param>
public sealed record ChangeRow(int Number, PlanChange Change, int Moved);

/// <summary>One activity that has moved.</summary>
public sealed record MoveRow(MovesAnswer Answer, MovedActivity Moved)
{
    public string Code => Answer.After.Code(Moved.Activity);

    public string Name => Answer.After.Name(Moved.Activity);

    public string Package => Answer.After.PackageCode(Answer.After.Package[Moved.Activity]);

    public DateOnly StartBefore => Answer.Before.Dates.EarlyStart(Moved.Before);

    public DateOnly FinishBefore => Answer.Before.Dates.EarlyFinish(Moved.Before);

    public DateOnly StartAfter => Answer.After.Dates.EarlyStart(Moved.Activity);

    public DateOnly FinishAfter => Answer.After.Dates.EarlyFinish(Moved.Activity);

    /// <summary>Working days of its calendar by which its finish is later; negative for earlier.</summary>
    public int WorkDays => Moved.WorkDays;

    /// <summary>What moved it: the number of the change, and the working days.</summary>
    public IEnumerable<(int Change, int WorkDays)> Because =>
        Moved.Because.Select(cause => (cause.Change + 1, cause.WorkDays));
}
