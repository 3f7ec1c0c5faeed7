using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Network;

/// <summary>
/// A network made ready for its passes: activities by rank (their place in an order in which every link leads forward),
/// links by the rank of their successor. Where an activity lies is one number: for ordinary work the place at which the
/// work that is still to be done begins, in its own calendar (<see cref="WorkingTime"/>); for an activity without work
/// (a milestone) its instant; nothing for a finished one.
/// </summary>
internal sealed class NetworkModel
{
    /// <summary>No work to be done: it has one instant, which is not moved to a working day.</summary>
    public const byte Point = 1;

    public const byte Started = 2;
    public const byte Finished = 4;

    /// <summary>A start-on or finish-on date says where it lies.</summary>
    public const byte Fixed = 8;

    /// <summary>Where nothing limits an activity.</summary>
    public const int Unlimited = int.MaxValue;

    /// <summary>Weight of a link that asks for nothing; far beyond every place and instant.</summary>
    private const int AsksNothing = -(1 << 30);

    private NetworkModel(NetworkInput input, int[] order, WorkingTime[]? calendars = null)
    {
        Input = input;
        Order = order;
        var count = input.Count;
        RankOf = new int[count];
        for (var rank = 0; rank < count; rank++)
        {
            RankOf[order[rank]] = rank;
        }

        Calendars =
            calendars
            ?? [.. input.Calendars.Select(days => new WorkingTime(days, input.FirstOpenDay))];

        Work = new int[count];
        Calendar = new int[count];
        State = new byte[count];
        Low = new int[count];
        High = new int[count];
        Early = new int[count];
        Late = new int[count];
        InStart = new int[count + 1];
        From = new int[input.LinkCount];
        Weight = new int[input.LinkCount];
        LinkOf = new int[input.LinkCount];
    }

    public NetworkInput Input { get; private set; }

    /// <summary>The activity of each rank.</summary>
    public int[] Order { get; }

    /// <summary>The rank of each activity.</summary>
    public int[] RankOf { get; }

    public WorkingTime[] Calendars { get; private set; }

    /// <summary>Working days still to be done, by rank.</summary>
    public int[] Work { get; private set; }

    /// <summary>Index of the calendar, by rank.</summary>
    public int[] Calendar { get; private set; }

    public byte[] State { get; private set; }

    /// <summary>The earliest that project, status date and own conditions allow; where a fixed activity lies.</summary>
    public int[] Low { get; private set; }

    /// <summary>The latest that own conditions allow; where a fixed activity lies.</summary>
    public int[] High { get; private set; }

    /// <summary>Where each activity lies at the earliest.</summary>
    public int[] Early { get; private set; }

    /// <summary>Where each activity lies at the latest.</summary>
    public int[] Late { get; private set; }

    /// <summary>First link of each successor; links of rank r are those from InStart[r] to InStart[r + 1].</summary>
    public int[] InStart { get; }

    /// <summary>
    /// Rank of each link's predecessor where it is plain, else the complement of it. A plain link asks its successor to
    /// lie at least <see cref="Weight"/> beyond its predecessor: both lie in one calendar.
    /// </summary>
    public int[] From { get; private set; }

    public int[] Weight { get; private set; }

    /// <summary>The link of the input.</summary>
    public int[] LinkOf { get; private set; }

    /// <summary>The latest early finish, as an instant; the first open day where there is no activity.</summary>
    public int Finish { get; set; }

    /// <exception cref="NetworkException">The links form a ring.</exception>
    public static NetworkModel Of(NetworkInput input)
    {
        var order =
            NetworkOrder.Of(input.Count, input.From, input.To)
            ?? throw NetworkException.OfRings(input);
        return InOrder(input, order, null);
    }

    /// <param name="input">A network without rings.</param>
    /// <param name="order">Its activities in an order in which every link leads forward.</param>
    /// <param name="calendars">Its calendars; made from the input if null.</param>
    public static NetworkModel InOrder(NetworkInput input, int[] order, WorkingTime[]? calendars)
    {
        var model = new NetworkModel(input, order, calendars);
        for (var rank = 0; rank < order.Length; rank++)
        {
            model.Prepare(rank);
        }

        model.SortLinks();
        return model;
    }

    /// <summary>A model of its own; only what never changes is shared.</summary>
    public NetworkModel Copy()
    {
        var copy = (NetworkModel)MemberwiseClone();
        copy.Input = Input.Copy();
        copy.Calendars = [.. Calendars];
        (copy.Work, copy.Calendar, copy.State) = ([.. Work], [.. Calendar], [.. State]);
        (copy.Low, copy.High) = ([.. Low], [.. High]);
        (copy.Early, copy.Late) = ([.. Early], [.. Late]);
        (copy.From, copy.Weight, copy.LinkOf) = ([.. From], [.. Weight], [.. LinkOf]);
        return copy;
    }

    /// <summary>Takes other values of the same activities, and links added at the end; the columns of links grow.</summary>
    public void Take(NetworkInput input, WorkingTime[] calendars)
    {
        Input = input;
        Calendars = calendars;
        var capacity = input.From.Length;
        if (capacity == LinkOf.Length)
        {
            return;
        }

        (From, Weight, LinkOf) = (Grown(From), Grown(Weight), Grown(LinkOf));

        int[] Grown(int[] column)
        {
            Array.Resize(ref column, capacity);
            return column;
        }
    }

    public WorkingTime TimeOf(int rank) => Calendars[Calendar[rank]];

    /// <summary>Reads work, state and own limits of an activity from the input.</summary>
    public void Prepare(int rank)
    {
        var activity = Order[rank];
        Calendar[rank] = Input.Calendar[activity];
        var time = TimeOf(rank);
        var started = Input.Started[activity] != Cell.NoInt;
        State[rank] = started ? Started : (byte)0;
        if (Input.Finished[activity] != Cell.NoInt)
        {
            State[rank] |= Finished;
            Work[rank] = 0;
            Low[rank] = 0;
            High[rank] = Unlimited;
            return;
        }

        Work[rank] = WorkToDo(activity, time);
        if (Work[rank] == 0)
        {
            State[rank] |= Point;
        }

        SetLimits(rank, activity, started, time);
    }

    /// <summary>Makes a link ready; both its ends are.</summary>
    /// <param name="k">Place of the link among the links by successor.</param>
    /// <param name="from">Rank of its predecessor.</param>
    /// <param name="to">Rank of its successor.</param>
    public void PrepareLink(int k, int from, int to)
    {
        var type = Input.Type[LinkOf[k]];
        var lag = Input.Lag[LinkOf[k]];
        if (!IsActive(type, from, to))
        {
            From[k] = from;
            Weight[k] = AsksNothing;
            return;
        }

        var fromFinish = LinkType.FromFinish(type);
        var toStart = LinkType.ToStart(type);
        var isPlain =
            Calendar[from] == Calendar[to]
            && ((State[from] | State[to]) & (Point | Finished)) == 0
            && (fromFinish || (State[from] & Started) == 0)
            // a finish that is asked for at the beginning of a day lies at the end of a day, and not always the one before
            && (toStart || (fromFinish ? lag >= 0 : lag > 0));
        From[k] = isPlain ? from : ~from;
        Weight[k] = isPlain ? lag + (fromFinish ? Work[from] : 0) - (toStart ? 0 : Work[to]) : 0;
    }

    /// <summary>False for a link that asks nothing of its successor.</summary>
    public bool IsActive(int k) => From[k] < 0 || Weight[k] != AsksNothing;

    /// <summary>
    /// A finished successor has nothing left to be asked for. Under progress rules, remaining work that has begun does not
    /// wait for unfinished predecessors; its finish still does where a link leads to it.
    /// </summary>
    private bool IsActive(int type, int from, int to) =>
        (State[to] & Finished) == 0
        && (
            Input.LogicHolds
            || (State[to] & Started) == 0
            || (State[from] & Finished) != 0
            || !LinkType.ToStart(type)
        );

    /// <summary>The instant of an activity's start that lies at a place or instant; the actual start once it has started.</summary>
    public int StartInstant(int rank, int at) =>
        (State[rank] & Started) != 0 ? Input.Started[Order[rank]] : WorkInstant(rank, at);

    /// <summary>The instant at which work that is still to be done begins.</summary>
    public int WorkInstant(int rank, int at) =>
        (State[rank] & Finished) != 0 ? Input.Started[Order[rank]]
        : (State[rank] & Point) != 0 ? at
        : TimeOf(rank).BeginOf(at);

    public int FinishInstant(int rank, int at) =>
        (State[rank] & Finished) != 0 ? Input.Finished[Order[rank]] + 1
        : (State[rank] & Point) != 0 ? at
        : TimeOf(rank).EndOf(at + Work[rank]);

    /// <summary>The working days that lie between two positions of an activity, in its own calendar.</summary>
    public int WorkDays(int rank, int from, int to) =>
        (State[rank] & Point) != 0
            ? TimeOf(rank).PlaceOf(to) - TimeOf(rank).PlaceOf(from)
            : to - from;

    /// <summary>Where the successor must lie at the least for what a link that is not plain asks of it.</summary>
    /// <param name="k">The link.</param>
    /// <param name="from">Rank of its predecessor.</param>
    /// <param name="at">Where the predecessor lies.</param>
    /// <param name="to">Rank of its successor.</param>
    public int Asked(int k, int from, int at, int to)
    {
        var type = Input.Type[LinkOf[k]];
        var instant = TimeOf(from)
            .Go(
                LinkType.FromFinish(type) ? FinishInstant(from, at) : StartInstant(from, at),
                Input.Lag[LinkOf[k]]
            );
        if ((State[to] & Point) != 0)
        {
            return instant;
        }

        return LinkType.ToStart(type)
            ? TimeOf(to).PlaceOf(instant)
            : TimeOf(to).FirstEndFrom(instant) - Work[to];
    }

    /// <summary>Where the successor must lie at the least for what an active link asks of it.</summary>
    /// <param name="k">The link.</param>
    /// <param name="to">Rank of its successor.</param>
    /// <param name="at">Where the activities lie, by rank.</param>
    public int AskedBy(int k, int to, int[] at)
    {
        var from = From[k];
        return from >= 0 ? at[from] + Weight[k] : Asked(k, ~from, at[~from], to);
    }

    /// <summary>Rank of a link's predecessor.</summary>
    public int Predecessor(int k) => From[k] < 0 ? ~From[k] : From[k];

    /// <summary>
    /// Where the predecessor may lie at the most if a link that is not plain shall ask its successor for no more than
    /// a position.
    /// </summary>
    public int Allowed(int k, int from, int to, int target)
    {
        var type = Input.Type[LinkOf[k]];
        var fromFinish = LinkType.FromFinish(type);
        var isPoint = (State[from] & Point) != 0;
        if ((State[from] & Finished) != 0 || (!fromFinish && (State[from] & Started) != 0))
        {
            return Unlimited; // what it leaves from is past
        }

        var limit =
            (State[to] & Point) != 0 ? target
            : LinkType.ToStart(type) ? TimeOf(to).BeginOf(target)
            : TimeOf(to).EndOf(target + Work[to]);
        var lag = Input.Lag[LinkOf[k]];
        var time = TimeOf(from);
        if (lag == 0)
        {
            return isPoint ? limit
                : fromFinish ? time.PlaceOf(limit) - Work[from]
                : time.LastBeginTo(limit);
        }

        // the predecessor's end of the link may have at most so many working days before it
        var place = lag > 0 ? time.PlaceOf(limit) - lag : time.LastBeginTo(limit) - lag;
        return isPoint ? time.BeginOf(place)
            : fromFinish ? place - Work[from]
            : place;
    }

    private int WorkToDo(int activity, WorkingTime time)
    {
        if (Input.Remaining[activity] != Cell.NoInt)
        {
            return Input.Remaining[activity];
        }

        var duration = Input.Duration[activity];
        if (Input.Started[activity] == Cell.NoInt || duration == 0)
        {
            return duration;
        }

        var done = time.PlaceOf(Input.StatusDay!.Value + 1) - time.PlaceOf(Input.Started[activity]);
        return Math.Max(1, duration - done);
    }

    private void SetLimits(int rank, int activity, bool started, WorkingTime time)
    {
        var isPoint = (State[rank] & Point) != 0;
        var work = Work[rank];
        var given = Input.Conditions;
        var first = Input.FirstOpenDay;
        var low = isPoint ? first : time.PlaceOf(first);
        var high = Unlimited;
        var startOn = started ? Cell.NoInt : given.StartOn[activity];
        var finishOn = given.FinishOn[activity];
        if (startOn != Cell.NoInt || finishOn != Cell.NoInt)
        {
            State[rank] |= Fixed;
            low =
                startOn != Cell.NoInt ? (isPoint ? startOn : time.PlaceOf(startOn))
                : isPoint ? finishOn + 1
                : time.PlaceOf(finishOn + 1) - work;
            Low[rank] = High[rank] = low;
            return;
        }

        if (!started && given.StartNoEarlier[activity] is var startFrom and not Cell.NoInt)
        {
            low = Math.Max(low, isPoint ? startFrom : time.PlaceOf(startFrom));
        }

        if (given.FinishNoEarlier[activity] is var finishFrom and not Cell.NoInt)
        {
            low = Math.Max(
                low,
                isPoint ? finishFrom + 1 : time.FirstEndFrom(finishFrom + 1) - work
            );
        }

        if (!started && given.StartNoLater[activity] is var startTo and not Cell.NoInt)
        {
            high = isPoint ? startTo : time.LastBeginTo(startTo);
        }

        if (given.FinishNoLater[activity] is var finishTo and not Cell.NoInt)
        {
            high = Math.Min(high, isPoint ? finishTo + 1 : time.PlaceOf(finishTo + 1) - work);
        }

        Low[rank] = low;
        High[rank] = high;
    }

    private void SortLinks()
    {
        for (var link = 0; link < Input.LinkCount; link++)
        {
            InStart[RankOf[Input.To[link]] + 1]++;
        }

        for (var rank = 0; rank < Input.Count; rank++)
        {
            InStart[rank + 1] += InStart[rank];
        }

        var next = InStart.AsSpan(0, Input.Count).ToArray();
        for (var link = 0; link < Input.LinkCount; link++)
        {
            var to = RankOf[Input.To[link]];
            var k = next[to]++;
            LinkOf[k] = link;
            PrepareLink(k, RankOf[Input.From[link]], to);
        }
    }
}
