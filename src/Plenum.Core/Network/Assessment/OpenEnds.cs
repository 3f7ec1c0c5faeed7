namespace Plenum.Core.Network.Assessment;

/// <summary>
/// Activities without predecessor or successor. One start and one end are as they should be: of the activities without
/// predecessor the one that starts first, of those without successor the one that finishes last; milestones before others
/// on the same day.
/// </summary>
public sealed class OpenEnds
{
    private readonly bool[] hasPredecessor;
    private readonly bool[] hasSuccessor;

    public OpenEnds(NetworkDates dates, AssessmentFacts facts)
    {
        var input = dates.Input;
        hasPredecessor = new bool[input.Count];
        hasSuccessor = new bool[input.Count];
        for (var link = 0; link < input.LinkCount; link++)
        {
            hasPredecessor[input.To[link]] = true;
            hasSuccessor[input.From[link]] = true;
        }

        ProjectStart = First(
            activity => !hasPredecessor[activity],
            activity => dates.EarlyStart(activity).DayNumber
        );
        ProjectFinish = First(
            activity => !hasSuccessor[activity],
            activity => -dates.EarlyFinish(activity).DayNumber
        );

        int First(Func<int, bool> isOpen, Func<int, int> day)
        {
            var first = -1;
            for (var activity = 0; activity < input.Count; activity++)
            {
                if (
                    isOpen(activity)
                    && !facts.IsLevelOfEffort[activity]
                    && (first < 0 || Rank(activity).CompareTo(Rank(first)) < 0)
                )
                {
                    first = activity;
                }
            }

            return first;

            (int, int) Rank(int activity) =>
                (day(activity), ScheduleAssessment.IsMilestone(dates, facts, activity) ? 0 : 1);
        }
    }

    /// <summary>The activity that starts the project; −1 if everything has a predecessor.</summary>
    public int ProjectStart { get; }

    /// <summary>The activity that ends the project; −1 if everything has a successor.</summary>
    public int ProjectFinish { get; }

    public bool LacksPredecessor(int activity) =>
        !hasPredecessor[activity] && activity != ProjectStart;

    public bool LacksSuccessor(int activity) =>
        !hasSuccessor[activity] && activity != ProjectFinish;

    public bool IsOpen(int activity) => LacksPredecessor(activity) || LacksSuccessor(activity);
}
