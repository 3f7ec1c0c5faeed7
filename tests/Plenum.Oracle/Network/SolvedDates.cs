using Google.OrTools.Sat;

namespace Plenum.Oracle.Network;

/// <summary>Where an activity lies: the instants at which its work that is still to be done begins and ends.</summary>
public readonly record struct Span(DateOnly Begin, DateOnly End);

/// <summary>
/// Early and late dates of a network by a constraint solver. How calendars are mapped stands in README.md beside this
/// file.
/// </summary>
public sealed class SolvedDates
{
    private readonly NetworkFacts facts;
    private readonly DateOnly zero;
    private readonly int horizon;

    public SolvedDates(NetworkFacts facts)
    {
        this.facts = facts;
        var days = facts.Activities.Sum(facts.Work) + facts.Links.Sum(link => Math.Abs(link.Lag));
        // every calendar of the generator works at least three days in ten over any long time
        var span = (days * 3) + 60;
        var dates = Dates().Append(facts.FirstOpenDay).ToList();
        zero = dates.Min().AddDays(-span);
        horizon = dates.Max().AddDays(span).DayNumber - zero.DayNumber;
        Early = Solve(finish: null);
        Finish = facts
            .Activities.Select(
                (activity, index) => activity.Finished?.AddDays(1) ?? Early[index].End
            )
            .DefaultIfEmpty(facts.FirstOpenDay)
            .Max();
        Late = Solve(Finish);
    }

    /// <summary>By activity; of a finished one its actual dates.</summary>
    public IReadOnlyList<Span> Early { get; }

    /// <summary>The latest end of an activity, as an instant.</summary>
    public DateOnly Finish { get; }

    public IReadOnlyList<Span> Late { get; }

    private IEnumerable<DateOnly> Dates() =>
        facts.Activities.SelectMany(activity =>
            new[]
            {
                activity.StartNoEarlier,
                activity.StartNoLater,
                activity.FinishNoEarlier,
                activity.FinishNoLater,
                activity.StartOn,
                activity.FinishOn,
                activity.Started,
                activity.Finished,
            }
                .Where(date => date is not null)
                .Select(date => date!.Value)
        );

    private int Number(DateOnly instant) => instant.DayNumber - zero.DayNumber;

    private DateOnly Instant(long number) => zero.AddDays((int)number);

    /// <summary>The least positions that keep to everything, or with a finish the greatest.</summary>
    private List<Span> Solve(DateOnly? finish)
    {
        var isLate = finish is not null;
        var model = new CpModel();
        var ends = facts.Activities.Select(activity => Position(model, activity)).ToList();
        for (var index = 0; index < ends.Count; index++)
        {
            Limit(model, facts.Activities[index], ends[index], finish);
        }

        foreach (var link in facts.Links.Where(facts.IsActive))
        {
            // what an on date says is not to be moved by links
            if (!facts.Activities[isLate ? link.From : link.To].IsFixed)
            {
                Hold(model, link, ends[link.From], ends[link.To], isLate);
            }
        }

        var sum = LinearExpr.Sum(
            ends.Where((_, index) => !facts.Activities[index].IsFinished).Select(end => end.End)
        );
        if (isLate)
        {
            model.Maximize(sum);
        }
        else
        {
            model.Minimize(sum);
        }

        var solver = new CpSolver { StringParameters = "num_search_workers:1, random_seed:1" };
        var status = solver.Solve(model);
        if (status != CpSolverStatus.Optimal)
        {
            throw new InvalidOperationException(
                $"The {(isLate ? "late" : "early")} dates were not solved: {status}"
            );
        }

        return
        [
            .. ends.Select(end => new Span(
                Instant(solver.Value(end.Begin)),
                Instant(solver.Value(end.End))
            )),
        ];
    }

    private (LinearExpr Begin, LinearExpr End) Position(CpModel model, Activity activity)
    {
        if (activity.Finished is { } finished)
        {
            return (
                model.NewConstant(Number(activity.Started!.Value)),
                model.NewConstant(Number(finished.AddDays(1)))
            );
        }

        var work = facts.Work(activity);
        if (work == 0)
        {
            var instant = model.NewIntVar(0, horizon, activity.Code);
            return (instant, instant);
        }

        // all positions that the calendar has, each with the instants at which work would begin and end there
        List<long> begins = [];
        List<long> finishes = [];
        for (var day = 0; day < horizon; day++)
        {
            if (activity.Calendar.IsWorking(Instant(day)))
            {
                var end = Number(activity.Calendar.Walk(Instant(day), work));
                if (end <= horizon)
                {
                    begins.Add(day);
                    finishes.Add(end);
                }
            }
        }

        var place = model.NewIntVar(0, begins.Count - 1, activity.Code);
        var begin = model.NewIntVar(begins[0], begins[^1], activity.Code + " begins");
        var finish = model.NewIntVar(finishes[0], finishes[^1], activity.Code + " ends");
        model.AddElement(place, begins, begin);
        model.AddElement(place, finishes, finish);
        return (begin, finish);
    }

    private void Limit(
        CpModel model,
        Activity activity,
        (LinearExpr Begin, LinearExpr End) at,
        DateOnly? finish
    )
    {
        if (activity.IsFinished)
        {
            return;
        }

        if (activity.IsFixed)
        {
            if (activity is { StartOn: { } startOn, Started: null })
            {
                model.Add(at.Begin == Number(startOn));
            }
            else
            {
                model.Add(at.End == Number(activity.FinishOn!.Value.AddDays(1)));
            }

            return;
        }

        if (finish is { } last)
        {
            model.Add(at.End <= Number(last));
            if (activity is { StartNoLater: { } startTo, Started: null })
            {
                model.Add(at.Begin <= Number(startTo));
            }

            if (activity.FinishNoLater is { } finishTo)
            {
                model.Add(at.End <= Number(finishTo.AddDays(1)));
            }

            return;
        }

        model.Add(at.Begin >= Number(facts.FirstOpenDay));
        if (activity is { StartNoEarlier: { } startFrom, Started: null })
        {
            model.Add(at.Begin >= Number(startFrom));
        }

        if (activity.FinishNoEarlier is { } finishFrom)
        {
            model.Add(at.End >= Number(finishFrom.AddDays(1)));
        }
    }

    private void Hold(
        CpModel model,
        Link link,
        (LinearExpr Begin, LinearExpr End) from,
        (LinearExpr Begin, LinearExpr End) to,
        bool isLate
    )
    {
        var before = facts.Activities[link.From];
        var isPast = before.IsFinished || (before.IsUnderWay && !link.LeavesFinish);
        if (isPast && isLate)
        {
            return; // what has happened has no late date
        }

        var leaves =
            link.LeavesFinish ? from.End
            : before.Started is { } started ? LinearExpr.Constant(Number(started))
            : from.Begin;
        var asked = link.Lag == 0 ? leaves : Walked(model, link, before.Calendar, leaves);
        model.Add((link.LeadsToStart ? to.Begin : to.End) >= asked);
    }

    private IntVar Walked(CpModel model, Link link, DayWalk calendar, LinearExpr leaves)
    {
        List<long> walked = [];
        for (var day = 0; day <= horizon; day++)
        {
            walked.Add(Number(calendar.Walk(Instant(day), link.Lag)));
        }

        var from = model.NewIntVar(0, horizon, $"{link} leaves");
        var asked = model.NewIntVar(walked.Min(), walked.Max(), $"{link} asks");
        model.Add(from == leaves);
        model.AddElement(from, walked, asked);
        return asked;
    }
}
