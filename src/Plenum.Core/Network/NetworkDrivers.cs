using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Network;

/// <summary>
/// What drives what. A link is without slack when it alone gives its successor the early start or finish that it has;
/// what drives an activity is found by following such links back. Links to work that is finished drive nothing.
/// </summary>
public sealed class NetworkDrivers
{
    private readonly NetworkModel model;
    private readonly NetworkDates dates;
    private readonly Lazy<bool[]> driving;
    private readonly Lazy<int[]> bindsLate;

    internal NetworkDrivers(NetworkModel model, NetworkDates dates)
    {
        this.model = model;
        this.dates = dates;
        driving = new(FindDriving);
        bindsLate = new(FindWhatBindsLate);
    }

    /// <summary>True for an activity from which a chain of links without slack leads to the project's end.</summary>
    public bool IsDriving(int activity) => driving.Value[model.RankOf[activity]];

    /// <summary>The links without slack that lead to an activity.</summary>
    public IEnumerable<int> DrivingLinksOf(int activity)
    {
        var rank = model.RankOf[activity];
        for (var k = model.InStart[rank]; k < model.InStart[rank + 1]; k++)
        {
            if (IsWithoutSlack(k, rank))
            {
                yield return model.LinkOf[k];
            }
        }
    }

    /// <summary>The link that the driving chain to an activity follows last; −1 if no link drives it.</summary>
    public int FirstDrivingLinkOf(int activity)
    {
        var (k, _) = DriverOf(model.RankOf[activity]);
        return k < 0 ? -1 : model.LinkOf[k];
    }

    /// <summary>
    /// The driving chain to an activity, station by station from its beginning. Where several links drive, the one from
    /// the predecessor with the least total float is followed, of equals the first in the order of the links.
    /// </summary>
    public IReadOnlyList<Station> ChainTo(int activity)
    {
        List<Station> chain = [];
        int? leaves = null;
        for (var rank = model.RankOf[activity]; ; )
        {
            var (k, others) = DriverOf(rank);
            chain.Add(
                new Station(
                    model.Order[rank],
                    k < 0 ? HeldBy(rank) : Holder.Link,
                    leaves,
                    Math.Max(0, others)
                )
            );
            if (k < 0)
            {
                break;
            }

            leaves = model.LinkOf[k];
            rank = model.Predecessor(k);
        }

        chain.Reverse();
        return chain;
    }

    /// <summary>
    /// The chain to the activity that ends the project, if several do to the last of the input that drives no other of
    /// them; empty without activities.
    /// </summary>
    public IReadOnlyList<Station> ChainToFinish()
    {
        HashSet<int> enders = [.. dates.Enders];
        HashSet<int> passedOn = [];
        foreach (var ender in enders)
        {
            foreach (var link in DrivingLinksOf(ender))
            {
                passedOn.Add(model.Input.From[link]);
            }
        }

        enders.ExceptWith(passedOn);
        return enders.Count == 0 ? [] : ChainTo(enders.Max());
    }

    /// <summary>
    /// For an activity of negative float the activity whose no-later-than or on date causes it, and the condition; null
    /// for one that has none.
    /// </summary>
    public (int Activity, DateCondition Condition)? CauseOfNegativeFloat(int activity)
    {
        if (dates.TotalFloat(activity) is null or >= 0)
        {
            return null;
        }

        var rank = model.RankOf[activity];
        while (bindsLate.Value[rank] is var next and >= 0)
        {
            rank = next;
        }

        return (model.Order[rank], LateCondition(rank));
    }

    /// <summary>Links that an on date breaks, by successor: what they ask for is later than the date.</summary>
    public IEnumerable<BrokenLink> LinksBrokenByDates()
    {
        foreach (var rank in model.RankOf)
        {
            if ((model.State[rank] & NetworkModel.Fixed) == 0)
            {
                continue;
            }

            for (var k = model.InStart[rank]; k < model.InStart[rank + 1]; k++)
            {
                if (
                    model.IsActive(k)
                    && model.AskedBy(k, rank, model.Early) is var asked
                    && asked > model.Early[rank]
                )
                {
                    yield return new BrokenLink(
                        model.LinkOf[k],
                        model.WorkDays(rank, model.Early[rank], asked)
                    );
                }
            }
        }
    }

    /// <summary>Links that reported progress has not kept to, by successor: the successor began or ended before they allow it.</summary>
    public IEnumerable<int> LinksOutOfSequence()
    {
        foreach (var rank in model.RankOf)
        {
            if ((model.State[rank] & NetworkModel.Started) == 0)
            {
                continue;
            }

            for (var k = model.InStart[rank]; k < model.InStart[rank + 1]; k++)
            {
                if (IsOutOfSequence(model.LinkOf[k], model.Order[rank]))
                {
                    yield return model.LinkOf[k];
                }
            }
        }
    }

    /// <summary>What holds an activity where it is if no link does.</summary>
    internal Holder HeldBy(int rank)
    {
        var activity = model.Order[rank];
        var conditions = model.Input.Conditions;
        if ((model.State[rank] & NetworkModel.Finished) != 0)
        {
            return Holder.Progress;
        }

        if ((model.State[rank] & NetworkModel.Fixed) != 0)
        {
            return Holder.Condition;
        }

        var atOpening =
            (model.State[rank] & NetworkModel.Point) != 0
                ? model.Input.FirstOpenDay
                : model.TimeOf(rank).PlaceOf(model.Input.FirstOpenDay);
        if (
            model.Early[rank] > atOpening
            && (
                conditions.StartNoEarlier[activity] != Cell.NoInt
                || conditions.FinishNoEarlier[activity] != Cell.NoInt
            )
        )
        {
            return Holder.Condition;
        }

        return (model.State[rank] & NetworkModel.Started) != 0 ? Holder.Progress
            : model.Input.FirstOpenDay > model.Input.Start ? Holder.StatusDate
            : Holder.ProjectStart;
    }

    private bool IsWithoutSlack(int k, int rank) =>
        model.IsActive(k)
        && (model.State[rank] & NetworkModel.Finished) == 0
        && model.AskedBy(k, rank, model.Early) == model.Early[rank];

    private (int K, int Others) DriverOf(int rank)
    {
        var best = -1;
        var count = 0;
        for (var k = model.InStart[rank]; k < model.InStart[rank + 1]; k++)
        {
            if (!IsWithoutSlack(k, rank))
            {
                continue;
            }

            count++;
            if (best < 0 || FloatOf(k) < FloatOf(best))
            {
                best = k;
            }
        }

        return (best, count - 1);

        int FloatOf(int k) => dates.TotalFloat(model.Order[model.Predecessor(k)]) ?? int.MaxValue;
    }

    private bool[] FindDriving()
    {
        var found = new bool[model.Order.Length];
        foreach (var activity in dates.Enders)
        {
            found[model.RankOf[activity]] = true;
        }

        for (var rank = found.Length - 1; rank >= 0; rank--)
        {
            if (!found[rank])
            {
                continue;
            }

            for (var k = model.InStart[rank]; k < model.InStart[rank + 1]; k++)
            {
                if (IsWithoutSlack(k, rank))
                {
                    found[model.Predecessor(k)] = true;
                }
            }
        }

        return found;
    }

    /// <summary>By rank, the successor that keeps an activity from being later, of several that of the first link; −1 where it is its own condition or the finish.</summary>
    private int[] FindWhatBindsLate()
    {
        var binds = new int[model.Order.Length];
        var byLink = new int[model.Order.Length];
        binds.AsSpan().Fill(-1);
        byLink.AsSpan().Fill(int.MaxValue);
        for (var rank = 0; rank < binds.Length; rank++)
        {
            for (var k = model.InStart[rank]; k < model.InStart[rank + 1]; k++)
            {
                var before = model.Predecessor(k);
                if (
                    model.IsActive(k)
                    && model.LinkOf[k] < byLink[before]
                    && model.Late[before] != model.High[before]
                    && AllowedBy(k, before, rank) == model.Late[before]
                )
                {
                    (binds[before], byLink[before]) = (rank, model.LinkOf[k]);
                }
            }
        }

        return binds;
    }

    private int AllowedBy(int k, int before, int rank) =>
        model.From[k] >= 0
            ? model.Late[rank] - model.Weight[k]
            : model.Allowed(k, before, rank, model.Late[rank]);

    private DateCondition LateCondition(int rank)
    {
        var activity = model.Order[rank];
        var conditions = model.Input.Conditions;
        var isStarted = (model.State[rank] & NetworkModel.Started) != 0;
        if ((model.State[rank] & NetworkModel.Fixed) != 0)
        {
            return !isStarted && conditions.StartOn[activity] != Cell.NoInt
                ? DateCondition.StartOn
                : DateCondition.FinishOn;
        }

        if (conditions.FinishNoLater[activity] == Cell.NoInt)
        {
            return DateCondition.StartNoLater;
        }

        if (isStarted || conditions.StartNoLater[activity] == Cell.NoInt)
        {
            return DateCondition.FinishNoLater;
        }

        // of two the one that allows less
        var startTo = conditions.StartNoLater[activity];
        var isPoint = (model.State[rank] & NetworkModel.Point) != 0;
        var atStart = isPoint ? startTo : model.TimeOf(rank).LastBeginTo(startTo);
        return atStart == model.High[rank]
            ? DateCondition.StartNoLater
            : DateCondition.FinishNoLater;
    }

    private bool IsOutOfSequence(int link, int to)
    {
        var input = model.Input;
        var from = input.From[link];
        var type = input.Type[link];
        var reached = LinkType.ToStart(type) ? input.Started[to] : input.Finished[to] + 1;
        if (!LinkType.ToStart(type) && input.Finished[to] == Cell.NoInt)
        {
            return false;
        }

        var leaves = LinkType.FromFinish(type) ? input.Finished[from] : input.Started[from];
        if (leaves == Cell.NoInt)
        {
            return true;
        }

        var time = model.Calendars[input.Calendar[from]];
        return time.Go(leaves + (LinkType.FromFinish(type) ? 1 : 0), input.Lag[link]) > reached;
    }
}

/// <summary>One station of a driving chain.</summary>
/// <param name="Activity">The activity.</param>
/// <param name="HeldBy">What gives it its early dates.</param>
/// <param name="Leaves">The link that leads to the next station; null at the last.</param>
/// <param name="OtherDrivers">How many other links drive it too.</param>
public sealed record Station(int Activity, Holder HeldBy, int? Leaves, int OtherDrivers);

/// <summary>A link that a date breaks, and by how many working days of the successor's calendar.</summary>
public sealed record BrokenLink(int Link, int WorkDays);

/// <summary>What holds an activity where it is.</summary>
public enum Holder
{
    Link,
    Condition,

    /// <summary>It is under way or done.</summary>
    Progress,
    StatusDate,
    ProjectStart,
}
