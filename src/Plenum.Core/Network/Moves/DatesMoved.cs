using Plenum.Core.Network.Live;

namespace Plenum.Core.Network.Moves;

/// <summary>
/// What moved between two networks of a project, by how many working days, and because of which change. The changes are made
/// one after the other on the earlier network, and each is booked with what it moves; so the parts of every move add up to
/// it exactly. Where two changes move the same work, the one that is made first has what it moves alone: calendars, what was
/// taken out, durations and conditions, lags, what was added, progress. Where the status date itself differs, time and
/// progress count as one step, and what it moves is booked to the progress from which the driving links lead there, or, where there
/// is none, to the time that has passed. Source: definition of our own.
/// </summary>
public sealed class DatesMoved
{
    private readonly List<PlanChange> changes = [];
    private readonly List<(int Change, Move Move)> moves = [];

    private DatesMoved(NetworkDates before, NetworkDates after)
    {
        Before = before;
        After = after;
        var difference = new PlanDifference(before.Input, after.Input);
        var live = new LiveNetwork(NetworkDates.Of(difference.Start), earlyOnly: true);
        foreach (var (change, edit) in difference.Steps)
        {
            Book(change, live.Apply(edit));
        }

        if (
            before.Input.StatusDay == after.Input.StatusDay
            && before.Input.Start == after.Input.Start
            && before.Input.LogicHolds == after.Input.LogicHolds
        )
        {
            BookProgress(difference, live);
        }
        else
        {
            BookTime(difference, live);
        }

        Activities = Gather(difference.BeforeOf);
    }

    public NetworkDates Before { get; }

    public NetworkDates After { get; }

    /// <summary>All that differs, in the order in which it is made.</summary>
    public IReadOnlyList<PlanChange> Changes => changes;

    /// <summary>Activities that are in both and whose early start or finish is another day, in the order of the later one.</summary>
    public IReadOnlyList<MovedActivity> Activities { get; }

    /// <exception cref="NetworkException">A state between the two leads beyond its calendar.</exception>
    public static DatesMoved Between(NetworkDates before, NetworkDates after) => new(before, after);

    private void Book(PlanChange change, IReadOnlyList<Move> moved)
    {
        foreach (var move in moved)
        {
            moves.Add((changes.Count, move));
        }

        changes.Add(change);
    }

    private void BookProgress(PlanDifference difference, LiveNetwork live)
    {
        for (var activity = 0; activity < After.Count; activity++)
        {
            if (ProgressOf(difference, live, activity) is { } change)
            {
                Book(
                    change,
                    live.Apply(new NetworkEdit { Activities = [(activity, change.After!.Value)] })
                );
            }
        }
    }

    private PlanChange? ProgressOf(PlanDifference difference, LiveNetwork live, int activity)
    {
        var was = live.Facts(activity);
        var now = PlanDifference.WithProgressOf(was, difference.FactsAfter(activity));
        return was == now
            ? null
            : new PlanChange(ChangeKind.Progress, After.Input.Codes[activity])
            {
                Before = was,
                After = now,
            };
    }

    private void BookTime(PlanDifference difference, LiveNetwork live)
    {
        var input = live.InputNow() with
        {
            StatusDay = After.Input.StatusDay,
            Start = After.Input.Start,
            LogicHolds = After.Input.LogicHolds,
        };
        var changeOf = new Dictionary<int, int>();
        for (var activity = 0; activity < After.Count; activity++)
        {
            if (ProgressOf(difference, live, activity) is { } change)
            {
                changeOf.Add(activity, changes.Count);
                changes.Add(change);
                change.After!.Value.WriteTo(input, activity);
            }
        }

        var dates = NetworkDates.Of(input);
        var rest = changes.Count;
        changes.Add(
            new PlanChange(
                Before.Input.StatusDay != After.Input.StatusDay
                    ? ChangeKind.StatusDate
                    : ChangeKind.Setting
            )
        );
        var origins = new Origins(dates, changeOf.ContainsKey);
        for (var activity = 0; activity < dates.Count; activity++)
        {
            var (was, now) = (
                live.EarlyFinishInstant(activity),
                dates.EarlyFinishInstant(activity)
            );
            if (was != now)
            {
                moves.Add(
                    (
                        changeOf.GetValueOrDefault(origins.Of(activity), rest),
                        new Move(activity, was, now)
                    )
                );
            }
        }
    }

    private List<MovedActivity> Gather(int[] beforeOf)
    {
        var causes = new List<Cause>?[After.Count];
        var times = After
            .Input.Calendars.Select(days => new WorkingTime(days, After.Input.FirstOpenDay))
            .ToList();
        foreach (var (change, move) in moves)
        {
            if (move.Activity < After.Count)
            {
                var days = DaysOf(move.Activity, move.Before, move.After);
                (causes[move.Activity] ??= []).Add(new Cause(change, days));
            }
        }

        List<MovedActivity> moved = [];
        for (var activity = 0; activity < After.Count; activity++)
        {
            var was = beforeOf[activity];
            if (
                was >= 0
                && (
                    Before.EarlyStart(was) != After.EarlyStart(activity)
                    || Before.EarlyFinish(was) != After.EarlyFinish(activity)
                )
            )
            {
                moved.Add(
                    new MovedActivity(
                        activity,
                        was,
                        DaysOf(
                            activity,
                            Before.EarlyFinishInstant(was),
                            After.EarlyFinishInstant(activity)
                        ),
                        [.. (causes[activity] ?? []).Where(cause => cause.WorkDays != 0)]
                    )
                );
            }
        }

        return moved;

        int DaysOf(int activity, int from, int to)
        {
            var time = times[After.Input.Calendar[activity]];
            return time.PlaceOf(to) - time.PlaceOf(from);
        }
    }

    /// <summary>From where driving links lead to an activity: the nearest that a condition holds for, else where they begin.</summary>
    private sealed class Origins(NetworkDates dates, Func<int, bool> isOrigin)
    {
        private readonly Dictionary<int, int> known = [];

        public int Of(int activity)
        {
            List<int> path = [];
            int origin;
            while (!known.TryGetValue(activity, out origin))
            {
                path.Add(activity);
                var link = isOrigin(activity) ? -1 : dates.Drivers.FirstDrivingLinkOf(activity);
                if (link < 0)
                {
                    origin = activity;
                    break;
                }

                activity = dates.Input.From[link];
            }

            foreach (var passed in path)
            {
                known[passed] = origin;
            }

            return origin;
        }
    }
}
