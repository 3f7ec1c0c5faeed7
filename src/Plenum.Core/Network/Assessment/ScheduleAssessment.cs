using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Network.Assessment;

/// <summary>
/// The 14-point assessment of a schedule (DCMA-EA PAM 200.1, section 4). Tasks are all activities but level of effort and
/// milestones; incomplete tasks have no actual finish. Baseline dates are those of the activity's package.
/// </summary>
public sealed class ScheduleAssessment
{
    private readonly NetworkDates dates;
    private readonly AssessmentFacts facts;
    private readonly AssessmentLimits limits;
    private readonly NetworkInput input;
    private readonly int[] tasks;
    private readonly int[] incomplete;

    private ScheduleAssessment(NetworkDates dates, AssessmentFacts facts, AssessmentLimits limits)
    {
        this.dates = dates;
        this.facts = facts;
        this.limits = limits;
        input = dates.Input;
        tasks = [.. TasksOf(dates, facts)];
        incomplete = [.. tasks.Where(activity => !dates.IsFinished(activity))];
    }

    /// <summary>The fourteen metrics, in order.</summary>
    public static IReadOnlyList<AssessmentMetric> Of(
        NetworkDates dates,
        AssessmentFacts facts,
        AssessmentLimits limits
    )
    {
        var assessment = new ScheduleAssessment(dates, facts, limits);
        return
        [
            assessment.Logic(),
            assessment.Leads(),
            assessment.OfLinks(3, "lags", limits.Lags, false, link => dates.Input.Lag[link] > 0),
            assessment.OfLinks(
                4,
                "relationship_types",
                limits.FinishToStart,
                true,
                link => dates.Input.Type[link] == LinkType.FinishToStart
            ),
            assessment.OfIncomplete(
                5,
                "hard_constraints",
                limits.HardConditions,
                activity => HasHardCondition(dates.Input.Conditions, activity)
            ),
            assessment.OfIncomplete(
                6,
                "high_float",
                limits.HighFloat,
                activity => dates.TotalFloat(activity) > limits.FloatDays
            ),
            assessment.OfIncomplete(
                7,
                "negative_float",
                limits.NegativeFloat,
                activity => dates.TotalFloat(activity) < 0
            ),
            assessment.OfIncomplete(
                8,
                "high_duration",
                limits.HighDuration,
                activity =>
                    assessment.BaselineDuration(activity) > limits.DurationDays
                    && assessment.IsInWindow(activity)
            ),
            assessment.InvalidDates(),
            assessment.OfIncomplete(
                10,
                "resources",
                limits.Resources,
                activity => dates.Input.Duration[activity] >= 1 && !facts.HasResources[activity]
            ),
            assessment.Missed(),
            CriticalPathTest.Of(dates, assessment.incomplete, limits.DelayDays),
            assessment.CriticalPathLengthIndex(),
            assessment.BaselineExecutionIndex(),
        ];
    }

    /// <summary>All activities but level of effort and milestones.</summary>
    public static IEnumerable<int> TasksOf(NetworkDates dates, AssessmentFacts facts)
    {
        for (var activity = 0; activity < dates.Count; activity++)
        {
            if (!facts.IsLevelOfEffort[activity] && !IsMilestone(dates, facts, activity))
            {
                yield return activity;
            }
        }
    }

    public static bool IsMilestone(NetworkDates dates, AssessmentFacts facts, int activity) =>
        dates.IsMilestone(activity) && !facts.IsPackage[activity];

    /// <summary>True for a start-on, finish-on, start-no-later or finish-no-later date.</summary>
    public static bool HasHardCondition(ActivityConditions conditions, int activity) =>
        conditions.StartOn[activity] != Cell.NoInt
        || conditions.FinishOn[activity] != Cell.NoInt
        || conditions.StartNoLater[activity] != Cell.NoInt
        || conditions.FinishNoLater[activity] != Cell.NoInt;

    /// <summary>
    /// True if an incomplete activity is forecast to start or finish before the status date: only an on date can do that.
    /// </summary>
    public static bool IsForecastInThePast(NetworkDates dates, int activity) =>
        dates.Input.StatusDay is { } day
        && !dates.IsFinished(activity)
        && (
            dates.EarlyFinish(activity).DayNumber < day
            || (!dates.IsStarted(activity) && dates.EarlyStart(activity).DayNumber < day)
        );

    /// <summary>True if a report gives an actual date after the status date.</summary>
    public static bool IsActualInTheFuture(
        NetworkDates dates,
        AssessmentFacts facts,
        int activity
    ) =>
        dates.Input.StatusDay is { } day
        && (facts.ReportedStart[activity] > day || facts.ReportedFinish[activity] > day);

    private AssessmentMetric Logic()
    {
        var ends = new OpenEnds(dates, facts);
        return OfIncomplete(1, "logic", limits.Logic, ends.IsOpen);
    }

    private AssessmentMetric Leads() =>
        OfLinks(
            2,
            "leads",
            limits.Leads,
            false,
            link => input.Lag[link] < 0 && !dates.IsFinished(input.To[link])
        );

    private AssessmentMetric InvalidDates() =>
        Metric(
            9,
            "invalid_dates",
            [
                .. tasks.Where(activity =>
                    IsForecastInThePast(dates, activity)
                    || IsActualInTheFuture(dates, facts, activity)
                ),
            ],
            tasks.Length,
            limits.InvalidDates
        );

    private AssessmentMetric Missed()
    {
        int[] due = [.. tasks.Where(IsDue)];
        return Metric(
            11,
            "missed_tasks",
            [
                .. due.Where(activity =>
                    dates.EarlyFinish(activity).DayNumber > facts.BaselineFinish[activity]
                ),
            ],
            due.Length,
            limits.Missed
        );
    }

    /// <summary>
    /// (Length + float) ÷ length: length the working days from the first open day to the finish, float the working days from
    /// the finish to the date that is required of the activity that ends the project, or else to its baseline finish.
    /// </summary>
    private AssessmentMetric CriticalPathLengthIndex()
    {
        var ends = dates.Count == 0 ? -1 : dates.Drivers.ChainToFinish()[^1].Activity;
        var length = 0;
        int? margin = null;
        if (ends >= 0 && !dates.IsFinished(ends) && DeadlineOf(ends) is { } deadline)
        {
            var calendar = input.Calendars[input.Calendar[ends]];
            var finish = calendar.NumberOfDay(dates.Finish.DayNumber);
            length = finish - calendar.NumberOfDay(input.FirstOpenDay - 1);
            margin = calendar.NumberOfDay(deadline) - finish;
        }

        return new AssessmentMetric(
            13,
            "critical_path_length_index",
            length + (margin ?? 0),
            length,
            length > 0 && margin is not null ? (length + margin) / (decimal)length : null,
            limits.PathIndex,
            true,
            ends < 0 ? [] : [ends],
            []
        );
    }

    private int? DeadlineOf(int activity)
    {
        int[] given =
        [
            input.Conditions.RequiredBy[activity],
            input.Conditions.FinishNoLater[activity],
            facts.BaselineFinish[activity],
        ];
        foreach (var day in given)
        {
            if (day != Cell.NoInt)
            {
                return day;
            }
        }

        var latest = facts.BaselineFinish.Max();
        return latest == Cell.NoInt ? null : latest;
    }

    private AssessmentMetric BaselineExecutionIndex()
    {
        var done = input.StatusDay is null ? 0 : tasks.Count(dates.IsFinished);
        int[] counted = input.StatusDay is null
            ? []
            :
            [
                .. tasks.Where(activity =>
                    IsDue(activity) || facts.BaselineFinish[activity] == Cell.NoInt
                ),
            ];
        return new AssessmentMetric(
            14,
            "baseline_execution_index",
            done,
            counted.Length,
            counted.Length == 0 ? null : done / (decimal)counted.Length,
            limits.ExecutionIndex,
            true,
            [.. counted.Where(activity => !dates.IsFinished(activity))],
            []
        );
    }

    private bool IsDue(int activity) =>
        input.StatusDay is { } day
        && facts.BaselineFinish[activity] != Cell.NoInt
        && facts.BaselineFinish[activity] <= day;

    /// <summary>
    /// The planned duration of the activity; of a package that is its own activity these are the working days of its
    /// baseline dates.
    /// </summary>
    private int BaselineDuration(int activity) => input.Duration[activity];

    private bool IsInWindow(int activity)
    {
        if (limits.WindowDays is not { } window)
        {
            return true;
        }

        var start = facts.BaselineStart[activity];
        if (start == Cell.NoInt)
        {
            return false;
        }

        var calendar = input.Calendars[input.Calendar[activity]];
        return calendar.NumberOfDay(start - 1) - calendar.NumberOfDay(input.FirstOpenDay - 1)
            < window;
    }

    private AssessmentMetric OfLinks(
        int number,
        string name,
        decimal threshold,
        bool atLeast,
        Func<int, bool> counts
    )
    {
        List<int> found = [];
        for (var link = 0; link < input.LinkCount; link++)
        {
            if (counts(link))
            {
                found.Add(link);
            }
        }

        // where most links are to be of a kind, those that are not are the ones to look at
        List<int> shown = atLeast
            ? [.. Enumerable.Range(0, input.LinkCount).Where(link => !counts(link))]
            : found;
        return new AssessmentMetric(
            number,
            name,
            found.Count,
            input.LinkCount,
            input.LinkCount == 0 ? null : found.Count / (decimal)input.LinkCount,
            threshold,
            atLeast,
            [.. shown.Select(link => input.To[link]).Distinct()],
            shown
        );
    }

    private AssessmentMetric OfIncomplete(
        int number,
        string name,
        decimal? threshold,
        Func<int, bool> counts
    ) => Metric(number, name, [.. incomplete.Where(counts)], incomplete.Length, threshold);

    private static AssessmentMetric Metric(
        int number,
        string name,
        int[] found,
        int of,
        decimal? threshold
    ) =>
        new(
            number,
            name,
            found.Length,
            of,
            of == 0 ? null : found.Length / (decimal)of,
            threshold,
            false,
            found,
            []
        );
}
