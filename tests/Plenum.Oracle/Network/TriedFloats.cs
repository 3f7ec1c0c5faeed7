namespace Plenum.Oracle.Network;

/// <summary>
/// Floats and driving links from given early and late dates, found by trying: how far can it slip, what would this link
/// alone give. Slow and plain.
/// </summary>
public sealed class TriedFloats(NetworkFacts facts, SolvedDates solved)
{
    /// <summary>Late finish less early finish in working days of the activity's own calendar; null when finished.</summary>
    public int? TotalFloat(int activity) =>
        facts.Activities[activity].IsFinished
            ? null
            : facts
                .Activities[activity]
                .Calendar.DaysBetween(solved.Early[activity].End, solved.Late[activity].End);

    /// <summary>
    /// The most working days by which the activity can slip before a link asks a successor for more than its early dates, or
    /// the project's finish moves.
    /// </summary>
    public int? FreeFloat(int activity)
    {
        if (facts.Activities[activity].IsFinished)
        {
            return null;
        }

        var slip = 0;
        while (Fits(activity, slip + 1))
        {
            slip++;
        }

        return slip;
    }

    /// <summary>The greatest total float of the activities that end the project; null if only finished ones do.</summary>
    public int? CriticalFloat() =>
        Enumerable.Range(0, facts.Activities.Count).Where(EndsTheProject).Max(TotalFloat);

    public bool IsCritical(int activity) => TotalFloat(activity) <= CriticalFloat();

    /// <summary>By activity, whether a chain of links without slack leads from it to an activity that ends the project.</summary>
    public IReadOnlyList<bool> Driving()
    {
        var driving = Enumerable.Range(0, facts.Activities.Count).Select(EndsTheProject).ToArray();
        for (var changed = true; changed; )
        {
            changed = false;
            foreach (var link in facts.Links)
            {
                if (driving[link.To] && !driving[link.From] && IsWithoutSlack(link))
                {
                    driving[link.From] = changed = true;
                }
            }
        }

        return driving;
    }

    /// <summary>First and last day at the early or late dates; a milestone's one day.</summary>
    public (DateOnly Start, DateOnly Finish) Dates(int activity, bool late)
    {
        var of = facts.Activities[activity];
        var span = late ? solved.Late[activity] : solved.Early[activity];
        if (of.IsFinished)
        {
            return (of.Started!.Value, of.Finished!.Value);
        }

        var isPoint = facts.Work(of) == 0;
        var begins = isPoint && DatedByBeginning(activity);
        var finish = begins ? span.End : span.End.AddDays(-1);
        return (of.Started ?? (isPoint ? finish : span.Begin), finish);
    }

    private bool EndsTheProject(int activity) => End(activity) == solved.Finish;

    private DateOnly End(int activity) =>
        facts.Activities[activity].Finished?.AddDays(1) ?? solved.Early[activity].End;

    private bool IsWithoutSlack(Link link)
    {
        if (!facts.IsActive(link))
        {
            return false;
        }

        var to = facts.Activities[link.To];
        var asked = Asked(link, solved.Early[link.From]);
        return Alone(to, link, asked) == solved.Early[link.To];
    }

    /// <summary>Where an activity would lie if this link alone said so.</summary>
    private Span Alone(Activity to, Link link, DateOnly asked)
    {
        var work = facts.Work(to);
        if (work == 0)
        {
            return new Span(asked, asked);
        }

        var begin = link.LeadsToStart ? asked : asked.AddDays(-1000);
        while (
            !to.Calendar.IsWorking(begin)
            || (!link.LeadsToStart && to.Calendar.Walk(begin, work) < asked)
        )
        {
            begin = begin.AddDays(1);
        }

        return new Span(begin, to.Calendar.Walk(begin, work));
    }

    private DateOnly Asked(Link link, Span from)
    {
        var of = facts.Activities[link.From];
        var leaves = link.LeavesFinish
            ? of.Finished?.AddDays(1) ?? from.End
            : of.Started ?? from.Begin;
        return of.Calendar.Walk(leaves, link.Lag);
    }

    private bool Fits(int activity, int slip)
    {
        var of = facts.Activities[activity];
        var early = solved.Early[activity];
        var span =
            facts.Work(of) == 0
                ? Point(of.Calendar.Walk(early.End, slip))
                : new Span(
                    NextWorking(of.Calendar, of.Calendar.Walk(early.Begin, slip)),
                    of.Calendar.Walk(early.End, slip)
                );
        if (span.End > solved.Finish)
        {
            return false;
        }

        foreach (var link in facts.Links)
        {
            if (link.From != activity || !facts.IsActive(link))
            {
                continue;
            }

            if (of.IsUnderWay && !link.LeavesFinish)
            {
                continue;
            }

            var to = solved.Early[link.To];
            if (Asked(link, span) > (link.LeadsToStart ? to.Begin : to.End))
            {
                return false;
            }
        }

        return true;
    }

    private static Span Point(DateOnly instant) => new(instant, instant);

    private static DateOnly NextWorking(DayWalk calendar, DateOnly instant)
    {
        while (!calendar.IsWorking(instant))
        {
            instant = instant.AddDays(1);
        }

        return instant;
    }

    /// <summary>
    /// A milestone is dated by the day that begins at its instant where only starts without lag drive it, or nothing does.
    /// </summary>
    private bool DatedByBeginning(int activity)
    {
        var of = facts.Activities[activity];
        if (of.Started is not null && of.Duration > 0)
        {
            return false;
        }

        if (of.IsFixed)
        {
            return of is { StartOn: not null, Started: null };
        }

        if (of.FinishNoEarlier?.AddDays(1) == solved.Early[activity].End)
        {
            return false;
        }

        return facts
            .Links.Where(link => link.To == activity && IsWithoutSlack(link))
            .All(link =>
                link.Lag == 0
                && (
                    !facts.Activities[link.From].IsFinished
                    && facts.Work(facts.Activities[link.From]) == 0
                        ? DatedByBeginning(link.From)
                        : !link.LeavesFinish
                )
            );
    }
}
