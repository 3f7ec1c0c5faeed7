namespace Plenum.Core.Network.Live;

/// <summary>
/// The two passes over what a change can reach: activities that are open are computed again in order, and only one that
/// moves opens those next to it. When the finish moves, all late dates do, and one plain sweep backward is cheaper. What
/// was there before is kept until the change is kept or taken back.
/// </summary>
internal sealed class LivePass
{
    private readonly NetworkModel model;
    private readonly LiveLinks links;
    private readonly LiveOrder order;
    private readonly bool earlyOnly;
    private readonly FinishCounts counts = new();
    private readonly int[] finishAt;
    private readonly OpenPlaces forward;
    private readonly OpenPlaces backward;

    /// <summary>Once one in so many activities has moved, the rest is swept over in order.</summary>
    private const int ManyAreOneIn = 8;

    private readonly List<Entry> journal = [];
    private readonly List<int> touched = [];
    private readonly bool[] isTouched;
    private readonly bool[] isInJournal;
    private readonly int[] lateBefore;
    private bool allLateMoved;
    private int finishBefore;
    private int[] lastPlace = [];

    public LivePass(NetworkModel model, LiveLinks links, LiveOrder order, bool earlyOnly)
    {
        this.model = model;
        this.links = links;
        this.order = order;
        this.earlyOnly = earlyOnly;
        var count = model.Early.Length;
        forward = new OpenPlaces(count);
        backward = new OpenPlaces(count);
        isInJournal = new bool[count];
        isTouched = new bool[count];
        lateBefore = earlyOnly ? [] : new int[count];
        finishAt = new int[count];
        for (var rank = 0; rank < count; rank++)
        {
            finishAt[rank] = model.FinishInstant(rank, model.Early[rank]);
            counts.Add(finishAt[rank]);
        }

        finishBefore = model.Finish;
        LayLimits();
    }

    /// <summary>True while links stand as the model has sorted them.</summary>
    public bool IsAsBuilt { get; set; } = true;

    /// <summary>The instant of an activity's early finish.</summary>
    public int FinishAt(int rank) => finishAt[rank];

    /// <summary>An activity has other work, calendar or limits: all its dates are to be computed again.</summary>
    public void OpenChanged(int rank)
    {
        OpenEarly(rank);
        OpenLate(rank);
        if (!isTouched[rank])
        {
            isTouched[rank] = true;
            touched.Add(rank);
        }
    }

    /// <summary>The early dates of an activity are to be computed again.</summary>
    public void OpenEarly(int rank) => forward.Add(order.PlaceOf(rank));

    /// <summary>The late dates of an activity are to be computed again.</summary>
    public void OpenLate(int rank)
    {
        if (!earlyOnly)
        {
            backward.Add(order.PlaceOf(rank));
        }
    }

    /// <summary>Where activities may lie at the most to end with the project, by calendar.</summary>
    public void LayLimits() =>
        lastPlace = Array.ConvertAll(model.Calendars, time => time.PlaceOf(model.Finish));

    /// <exception cref="OverflowException">Work leads beyond the last date.</exception>
    public void Run()
    {
        Forward();
        model.Finish = counts.Latest ?? model.Input.FirstOpenDay;
        if (model.Finish > NetworkPass.LastInstant)
        {
            throw new OverflowException();
        }

        if (model.Finish != finishBefore)
        {
            LayLimits();
        }

        if (earlyOnly)
        {
            return;
        }

        if (model.Finish == finishBefore)
        {
            Backward();
        }
        else
        {
            SweepBack();
        }
    }

    /// <summary>Keeps what was computed.</summary>
    /// <returns>The activities whose early finish has moved.</returns>
    public IReadOnlyList<Move> Keep()
    {
        List<Move> moves = [];
        foreach (var was in journal)
        {
            if (finishAt[was.Rank] != was.Finish)
            {
                moves.Add(new Move(model.Order[was.Rank], was.Finish, finishAt[was.Rank]));
            }
        }

        Forget();
        return moves;
    }

    /// <summary>Takes back what was computed.</summary>
    public void TakeBack()
    {
        if (allLateMoved)
        {
            lateBefore.CopyTo(model.Late, 0);
        }

        foreach (var was in journal)
        {
            model.Early[was.Rank] = was.Early;
            if (!allLateMoved)
            {
                model.Late[was.Rank] = was.Late;
            }

            Finish(was.Rank, was.Finish);
        }

        model.Finish = finishBefore;
        forward.Clear();
        backward.Clear();
        Forget();
    }

    private void Forward()
    {
        var many = model.Early.Length / ManyAreOneIn;
        while (forward.TakeFirst() is var place and >= 0)
        {
            if (journal.Count > many)
            {
                forward.Clear();
                SweepForward(place);
                return;
            }

            var rank = order.RankAt(place);
            if (!MoveEarly(rank))
            {
                continue;
            }

            for (var k = links.FirstOut(rank); k >= 0; k = links.NextOut(k))
            {
                forward.Add(order.PlaceOf(links.To(k)));
            }
        }
    }

    /// <summary>Everything from a place on, in order: where much moves this is cheaper than to ask what is next.</summary>
    private void SweepForward(int place)
    {
        for (; place < model.Early.Length; place++)
        {
            MoveEarly(order.RankAt(place));
        }
    }

    /// <summary>Computes the early dates of an activity again; false if they stay.</summary>
    private bool MoveEarly(int rank)
    {
        var early = EarlyOf(rank);
        if (early == model.Early[rank] && !isTouched[rank])
        {
            return false;
        }

        var finish = model.FinishInstant(rank, early);
        if (early == model.Early[rank] && finish == finishAt[rank])
        {
            return false;
        }

        Remember(rank);
        model.Early[rank] = early;
        Finish(rank, finish);
        return true;
    }

    private int EarlyOf(int rank)
    {
        var at = model.Low[rank];
        if ((model.State[rank] & (NetworkModel.Fixed | NetworkModel.Finished)) != 0)
        {
            return at;
        }

        for (var k = links.FirstIn(rank); k >= 0; k = links.NextIn(k))
        {
            var asked = model.AskedBy(k, rank, model.Early);
            at = asked > at ? asked : at;
        }

        return at;
    }

    private void Finish(int rank, int instant)
    {
        if (finishAt[rank] != instant)
        {
            counts.Add(instant);
            counts.Remove(finishAt[rank]);
            finishAt[rank] = instant;
        }
    }

    private void Backward()
    {
        while (backward.TakeLast() is var place and >= 0)
        {
            var rank = order.RankAt(place);
            var late = LateOf(rank);
            if (late == model.Late[rank])
            {
                continue;
            }

            Remember(rank);
            model.Late[rank] = late;
            for (var k = links.FirstIn(rank); k >= 0; k = links.NextIn(k))
            {
                backward.Add(order.PlaceOf(model.Predecessor(k)));
            }
        }
    }

    private int LateOf(int rank)
    {
        var at = OwnLimit(rank);
        if ((model.State[rank] & (NetworkModel.Fixed | NetworkModel.Finished)) != 0)
        {
            return at;
        }

        for (var k = links.FirstOut(rank); k >= 0; k = links.NextOut(k))
        {
            if (model.IsActive(k))
            {
                var to = links.To(k);
                var allowed =
                    model.From[k] >= 0
                        ? model.Late[to] - model.Weight[k]
                        : model.Allowed(k, rank, to, model.Late[to]);
                at = allowed < at ? allowed : at;
            }
        }

        return at;
    }

    /// <summary>The latest that own conditions and the project's finish allow.</summary>
    private int OwnLimit(int rank)
    {
        var state = model.State[rank];
        return (state & NetworkModel.Finished) != 0 ? NetworkModel.Unlimited
            : (state & NetworkModel.Fixed) != 0 ? model.High[rank]
            : Math.Min(
                model.High[rank],
                (state & NetworkModel.Point) != 0
                    ? model.Finish
                    : lastPlace[model.Calendar[rank]] - model.Work[rank]
            );
    }

    private void SweepBack()
    {
        backward.Clear();
        allLateMoved = true;
        model.Late.CopyTo(lateBefore, 0);
        if (IsAsBuilt)
        {
            NetworkPass.Backward(model);
            return;
        }

        var late = model.Late;
        late.AsSpan().Fill(NetworkModel.Unlimited);
        for (var place = late.Length - 1; place >= 0; place--)
        {
            var rank = order.RankAt(place);
            var state = model.State[rank];
            if ((state & NetworkModel.Finished) != 0)
            {
                late[rank] = NetworkModel.Unlimited;
                continue;
            }

            var at = OwnLimit(rank);
            at = (state & NetworkModel.Fixed) != 0 ? at : Math.Min(at, late[rank]);
            late[rank] = at;
            for (var k = links.FirstIn(rank); k >= 0; k = links.NextIn(k))
            {
                if (!model.IsActive(k))
                {
                    continue;
                }

                var from = model.Predecessor(k);
                var allowed =
                    model.From[k] >= 0 ? at - model.Weight[k] : model.Allowed(k, from, rank, at);
                late[from] = allowed < late[from] ? allowed : late[from];
            }
        }
    }

    /// <summary>Keeps what an activity has before it is computed again.</summary>
    private void Remember(int rank)
    {
        if (!isInJournal[rank])
        {
            isInJournal[rank] = true;
            journal.Add(new Entry(rank, model.Early[rank], model.Late[rank], finishAt[rank]));
        }
    }

    private void Forget()
    {
        foreach (var was in journal)
        {
            isInJournal[was.Rank] = false;
        }

        foreach (var rank in touched)
        {
            isTouched[rank] = false;
        }

        journal.Clear();
        touched.Clear();
        allLateMoved = false;
        finishBefore = model.Finish;
    }

    private readonly record struct Entry(int Rank, int Early, int Late, int Finish);
}
