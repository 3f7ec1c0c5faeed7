using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Network.Assessment;

/// <summary>A measure of one of the ten best practices of scheduling (GAO-16-89G). No limit is attached to any.</summary>
/// <param name="Practice">1 to 10.</param>
/// <param name="Name">What is measured, in lower case with underscores.</param>
/// <param name="Value">A count, a share of one, or working days; null where there is nothing to measure.</param>
/// <param name="Of">Out of how many, where it is a count of some.</param>
public sealed record PracticeMeasure(int Practice, string Name, decimal? Value, int? Of = null);

/// <summary>
/// The tests of GAO-16-89G (appendices II and VI) that can be measured. Detail activities are tasks that are no milestones
/// and no level of effort. Those of practice 5 (traceability between levels) need figures outside the network and are left
/// out; its shock test is the critical path test of the assessment.
/// </summary>
public sealed class SchedulePractices
{
    private const int ManyPredecessors = 10;

    private readonly NetworkDates dates;
    private readonly AssessmentFacts facts;
    private readonly AssessmentLimits limits;
    private readonly NetworkInput input;
    private readonly int[] detail;
    private readonly int[] open;
    private readonly List<PracticeMeasure> measures = [];

    private SchedulePractices(NetworkDates dates, AssessmentFacts facts, AssessmentLimits limits)
    {
        this.dates = dates;
        this.facts = facts;
        this.limits = limits;
        input = dates.Input;
        detail = [.. ScheduleAssessment.TasksOf(dates, facts)];
        open = [.. detail.Where(activity => !dates.IsFinished(activity))];
    }

    public static IReadOnlyList<PracticeMeasure> Of(
        NetworkDates dates,
        AssessmentFacts facts,
        AssessmentLimits limits
    )
    {
        var practices = new SchedulePractices(dates, facts, limits);
        practices.Capture();
        practices.Sequence();
        practices.Resources();
        practices.Durations();
        practices.CriticalPath();
        practices.Floats();
        practices.Risk();
        practices.Progress();
        practices.Baseline();
        return practices.measures;
    }

    private void Capture()
    {
        var milestones = All().Count(IsMilestone);
        Count(1, "detail_activities", detail.Length, dates.Count);
        Count(1, "milestones", milestones, dates.Count);
        Count(1, "level_of_effort", All().Count(Effort), dates.Count);
        Value(
            1,
            "detail_activities_per_milestone",
            milestones == 0 ? null : detail.Length / (decimal)milestones
        );
        Count(
            1,
            "unnamed",
            All().Count(activity => string.IsNullOrWhiteSpace(facts.Name(activity))),
            dates.Count
        );
        Count(
            1,
            "duplicate_names",
            All()
                .Where(activity => !string.IsNullOrWhiteSpace(facts.Name(activity)))
                .GroupBy(facts.Name, StringComparer.Ordinal)
                .Sum(group => group.Count() - 1),
            dates.Count
        );
    }

    private void Sequence()
    {
        var ends = new OpenEnds(dates, facts);
        var links = new LinkCounts(input);
        Count(2, "without_predecessor", open.Count(ends.LacksPredecessor), open.Length);
        Count(2, "without_successor", open.Count(ends.LacksSuccessor), open.Length);
        Count(
            2,
            "without_both",
            open.Count(activity =>
                ends.LacksPredecessor(activity) && ends.LacksSuccessor(activity)
            ),
            open.Length
        );
        Count(2, "dangling_starts", open.Count(links.HasDanglingStart), open.Length);
        Count(2, "dangling_finishes", open.Count(links.HasDanglingFinish), open.Length);
        Count(
            2,
            "finish_to_start_links",
            input.Type.Count(type => type == LinkType.FinishToStart),
            input.LinkCount
        );
        Count(
            2,
            "start_to_finish_links",
            input.Type.Count(type => type == LinkType.StartToFinish),
            input.LinkCount
        );
        Count(
            2,
            "with_ten_predecessors_or_more",
            All().Count(activity => links.Predecessors(activity) >= ManyPredecessors),
            dates.Count
        );
        Count(
            2,
            "with_soft_conditions",
            open.Count(activity =>
                input.Conditions.StartNoEarlier[activity] != Cell.NoInt
                || input.Conditions.FinishNoEarlier[activity] != Cell.NoInt
            ),
            open.Length
        );
    }

    private void Resources() =>
        Count(
            3,
            "with_hours_or_money",
            detail.Count(activity => facts.HasResources[activity]),
            detail.Length
        );

    private void Durations()
    {
        if (facts.ReportingDays is { } period)
        {
            Count(
                4,
                "longer_than_reporting_period",
                open.Count(activity => input.Duration[activity] > period),
                open.Length
            );
        }

        decimal[] left = [.. open.Select(activity => (decimal)dates.Remaining(activity))];
        Value(4, "mean_remaining_days", Mean(left));
        Value(4, "median_remaining_days", Median(left));
        Count(
            4,
            "actual_dates_on_non_working_days",
            detail.Count(activity =>
                IsIdle(activity, input.Started[activity])
                || IsIdle(activity, input.Finished[activity])
            ),
            detail.Length
        );
    }

    private void CriticalPath()
    {
        var chain = dates.Drivers.ChainToFinish();
        Count(6, "critical", open.Count(dates.IsCritical), open.Length);
        Count(
            6,
            "critical_level_of_effort",
            All().Count(activity => Effort(activity) && dates.IsDriving(activity)),
            All().Count(Effort)
        );
        Count(
            6,
            "lags_on_driving_chain",
            chain.Count(station => station.Leaves is { } link && input.Lag[link] > 0),
            chain.Count
        );
        Count(
            6,
            "leads_on_driving_chain",
            chain.Count(station => station.Leaves is { } link && input.Lag[link] < 0),
            chain.Count
        );
        Count(
            6,
            "hard_conditions_on_driving_chain",
            chain.Count(station =>
                ScheduleAssessment.HasHardCondition(input.Conditions, station.Activity)
            ),
            chain.Count
        );
    }

    private void Floats()
    {
        decimal[] floats = [.. open.Select(activity => (decimal)dates.TotalFloat(activity)!.Value)];
        Count(7, "negative_float", floats.Count(days => days < 0), open.Length);
        Count(7, "high_float", floats.Count(days => days > limits.FloatDays), open.Length);
        Value(7, "mean_float_days", Mean(floats));
        Value(7, "median_float_days", Median(floats));
        Count(
            7,
            "critical_under_way",
            open.Count(activity => dates.IsStarted(activity) && dates.IsCritical(activity)),
            open.Count(dates.IsStarted)
        );
    }

    private void Risk() =>
        Count(
            8,
            "with_low_and_high_duration",
            open.Count(activity => facts.HasRange[activity]),
            open.Length
        );

    private void Progress()
    {
        Count(
            9,
            "forecast_before_status_date",
            detail.Count(activity => ScheduleAssessment.IsForecastInThePast(dates, activity)),
            detail.Length
        );
        Count(
            9,
            "actual_after_status_date",
            detail.Count(activity =>
                ScheduleAssessment.IsActualInTheFuture(dates, facts, activity)
            ),
            detail.Length
        );
        Count(
            9,
            "links_out_of_sequence",
            dates.Drivers.LinksOutOfSequence().Count(),
            input.LinkCount
        );
    }

    private void Baseline()
    {
        int[] dated = [.. detail.Where(activity => facts.BaselineFinish[activity] != Cell.NoInt)];
        decimal[] late =
        [
            .. dated.Select(activity =>
            {
                var calendar = input.Calendars[input.Calendar[activity]];
                return (decimal)(
                    calendar.NumberOfDay(dates.EarlyFinish(activity).DayNumber)
                    - calendar.NumberOfDay(facts.BaselineFinish[activity])
                );
            }),
        ];
        Count(10, "without_baseline_dates", detail.Length - dated.Length, detail.Length);
        Count(10, "early_against_baseline", late.Count(days => days < 0), dated.Length);
        Count(10, "on_time_against_baseline", late.Count(days => days == 0), dated.Length);
        Count(10, "late_against_baseline", late.Count(days => days > 0), dated.Length);
        Value(10, "mean_finish_variance_days", Mean(late));
        Value(10, "median_finish_variance_days", Median(late));
    }

    private static decimal? Mean(decimal[] values) =>
        values.Length == 0 ? null : values.Sum() / values.Length;

    private static decimal? Median(decimal[] values)
    {
        if (values.Length == 0)
        {
            return null;
        }

        decimal[] sorted = [.. values.Order()];
        var middle = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    private IEnumerable<int> All() => Enumerable.Range(0, dates.Count);

    private bool IsMilestone(int activity) =>
        ScheduleAssessment.IsMilestone(dates, facts, activity);

    private bool Effort(int activity) => facts.IsLevelOfEffort[activity];

    private bool IsIdle(int activity, int day) =>
        day != Cell.NoInt
        && input.Calendars[input.Calendar[activity]] is var calendar
        && calendar.NumberOfDay(day) == calendar.NumberOfDay(day - 1);

    private void Count(int practice, string name, int count, int of) =>
        measures.Add(new PracticeMeasure(practice, name, count, of));

    private void Value(int practice, string name, decimal? value) =>
        measures.Add(new PracticeMeasure(practice, name, value));
}
