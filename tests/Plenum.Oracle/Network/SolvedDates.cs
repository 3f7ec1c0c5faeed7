using Google.OrTools.LinearSolver;

namespace Plenum.Oracle.Network;

/// <summary>Where an activity lies: the instants at which its work that is still to be done begins and ends.</summary>
public readonly record struct Span(DateOnly Begin, DateOnly End);

/// <summary>
/// Early and late dates of a network by a linear program. How calendars are mapped into it stands in README.md beside
/// this file.
/// </summary>
public sealed class SolvedDates
{
    private readonly NetworkFacts facts;
    private readonly List<List<Span>> positions;

    public SolvedDates(NetworkFacts facts)
    {
        this.facts = facts;
        var days = facts.Activities.Sum(facts.Work) + facts.Links.Sum(link => Math.Abs(link.Lag));
        // the generator's calendars work three days in seven at the least, but for some days here and there
        var span = (days * 7 / 3) + 45;
        var dates = Dates().Append(facts.FirstOpenDay).ToList();
        var first = dates.Min().AddDays(-span);
        var last = dates.Max().AddDays(span);
        positions = [.. facts.Activities.Select(activity => PositionsOf(activity, first, last))];
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

    /// <summary>All positions that an activity can have in its calendar, in order; of a finished one the one that it has.</summary>
    private List<Span> PositionsOf(Activity activity, DateOnly first, DateOnly last)
    {
        if (activity.Finished is { } finished)
        {
            return [new Span(activity.Started!.Value, finished.AddDays(1))];
        }

        var work = facts.Work(activity);
        List<Span> spans = [];
        for (var day = first; day <= last; day = day.AddDays(1))
        {
            if (work == 0)
            {
                spans.Add(new Span(day, day));
            }
            else if (
                activity.Calendar.IsWorking(day)
                && activity.Calendar.Walk(day, work) is var end
                && end <= last
            )
            {
                spans.Add(new Span(day, end));
            }
        }

        return spans;
    }

    /// <summary>The least positions that keep to everything, or with a finish the greatest.</summary>
    private List<Span> Solve(DateOnly? finish)
    {
        using var solver = Solver.CreateSolver("GLOP");
        var isLate = finish is not null;
        List<Variable[]> reached = [];
        for (var activity = 0; activity < positions.Count; activity++)
        {
            reached.Add(Reached(solver, activity, finish));
        }

        foreach (var link in facts.Links.Where(facts.IsActive))
        {
            // what an on date says is not to be moved by links
            if (!facts.Activities[isLate ? link.From : link.To].IsFixed)
            {
                Hold(solver, link, reached[link.From], reached[link.To], isLate);
            }
        }

        var sum = solver.Objective();
        foreach (var variable in reached.SelectMany(variables => variables))
        {
            sum.SetCoefficient(variable, 1);
        }

        if (isLate)
        {
            sum.SetMaximization();
        }
        else
        {
            sum.SetMinimization();
        }

        var status = solver.Solve();
        if (status != Solver.ResultStatus.OPTIMAL)
        {
            throw new InvalidOperationException(
                $"The {(isLate ? "late" : "early")} dates were not solved: {status}"
            );
        }

        return
        [
            .. reached.Select((variables, activity) => positions[activity][PlaceOf(variables)]),
        ];
    }

    /// <summary>The last place that is reached; every variable of a solution is 0 or 1.</summary>
    private static int PlaceOf(Variable[] reached)
    {
        var place = -1;
        foreach (var variable in reached)
        {
            var value = variable.SolutionValue();
            if (Math.Abs(value - Math.Round(value)) > 1e-6)
            {
                throw new InvalidOperationException("The solution is not whole.");
            }

            place += (int)Math.Round(value);
        }

        return place;
    }

    /// <summary>
    /// For each place of an activity a variable: 1 if the activity lies there or later. Own limits are bounds of these.
    /// </summary>
    private Variable[] Reached(Solver solver, int activity, DateOnly? finish)
    {
        var of = facts.Activities[activity];
        var own = positions[activity];
        var variables = new Variable[own.Count];
        for (var place = 0; place < own.Count; place++)
        {
            var mustReach = place == 0;
            var mayReach = true;
            if (of.IsFixed)
            {
                mustReach = mayReach = of is { StartOn: { } startOn, Started: null }
                    ? own[place].Begin <= startOn
                    : own[place].End <= of.FinishOn!.Value.AddDays(1);
            }
            else if (finish is { } last)
            {
                mayReach = of.IsFinished || IsAllowed(of, own[place], last);
            }
            else if (place > 0)
            {
                mustReach = !IsLateEnough(of, own[place - 1]);
            }

            variables[place] = solver.MakeNumVar(mustReach ? 1 : 0, mayReach ? 1 : 0, "");
            if (place > 0)
            {
                var inOrder = solver.MakeConstraint(0, double.PositiveInfinity);
                inOrder.SetCoefficient(variables[place - 1], 1);
                inOrder.SetCoefficient(variables[place], -1);
            }
        }

        return variables;
    }

    private static bool IsAllowed(Activity of, Span at, DateOnly finish) =>
        at.End <= finish
        && !(of is { StartNoLater: { } startTo, Started: null } && at.Begin > startTo)
        && !(of.FinishNoLater is { } finishTo && at.End > finishTo.AddDays(1));

    private bool IsLateEnough(Activity of, Span at) =>
        of.IsFinished
        || (
            at.Begin >= facts.FirstOpenDay
            && !(of is { StartNoEarlier: { } startFrom, Started: null } && at.Begin < startFrom)
            && !(of.FinishNoEarlier is { } finishFrom && at.End < finishFrom.AddDays(1))
        );

    /// <summary>Wherever the predecessor lies, the successor lies at least where the link then asks it to.</summary>
    private void Hold(Solver solver, Link link, Variable[] from, Variable[] to, bool isLate)
    {
        var before = facts.Activities[link.From];
        var isPast = before.IsFinished || (before.IsUnderWay && !link.LeavesFinish);
        if (isPast && isLate)
        {
            return; // what has happened has no late date
        }

        var target = positions[link.To];
        var asked = 0;
        var done = -1;
        for (var place = 0; place < from.Length; place++)
        {
            var at = positions[link.From][place];
            var leaves = link.LeavesFinish ? at.End : before.Started ?? at.Begin;
            var instant = before.Calendar.Walk(leaves, link.Lag);
            while (
                asked < target.Count
                && (link.LeadsToStart ? target[asked].Begin : target[asked].End) < instant
            )
            {
                asked++;
            }

            if (asked == done)
            {
                continue; // the same as from the place before
            }

            done = asked;
            var holds = solver.MakeConstraint(0, double.PositiveInfinity);
            holds.SetCoefficient(from[place], -1);
            if (asked < target.Count)
            {
                holds.SetCoefficient(to[asked], 1);
            }
            else
            {
                break; // no place of the successor is late enough, so the predecessor cannot lie here
            }
        }
    }
}
