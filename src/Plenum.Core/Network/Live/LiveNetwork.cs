using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Network.Live;

/// <summary>
/// A computed network that is kept right while it is edited. After an edit only what it can reach is computed again, and the
/// dates equal those of a pass over everything. One writer at a time; <see cref="Dates"/> gives an immutable value of any
/// state. Activities keep the numbers of the input, links theirs for as long as they live: those added are numbered on.
/// Time of an edit: in the activities that move and their links; in all activities when the project's finish moves.
/// </summary>
public sealed class LiveNetwork
{
    private readonly NetworkModel model;
    private readonly LiveLinks links;
    private readonly LiveOrder order;
    private readonly LivePass pass;
    private readonly bool earlyOnly;
    private int[] placeOfLink;
    private bool[] isOut;
    private NetworkDates? current;

    public LiveNetwork(NetworkDates dates)
        : this(dates, earlyOnly: false) { }

    /// <param name="dates">Where to begin.</param>
    /// <param name="earlyOnly">Late dates are left as they are; there is no <see cref="Dates"/> then.</param>
    internal LiveNetwork(NetworkDates dates, bool earlyOnly)
    {
        this.earlyOnly = earlyOnly;
        model = dates.CopyOfModel();
        links = new LiveLinks(model);
        order = new LiveOrder(dates.Count);
        pass = new LivePass(model, links, order, earlyOnly);
        LinkCount = model.LinkOf.Length;
        placeOfLink = new int[LinkCount];
        isOut = new bool[LinkCount];
        for (var k = 0; k < LinkCount; k++)
        {
            placeOfLink[model.LinkOf[k]] = k;
        }

        Revision = dates.Revision;
        current = earlyOnly ? null : dates;
    }

    /// <summary>Links that there have been, those that were taken out included: the number of the next.</summary>
    public int LinkCount { get; private set; }

    /// <summary>Counts on from that of the first dates with every edit.</summary>
    public long Revision { get; private set; }

    /// <summary>The network as it is now: an immutable value. Made when it is first asked for after an edit.</summary>
    public NetworkDates Dates => current ??= MakeDates();

    /// <summary>
    /// The links that there are, by number. The first is link 0 of <see cref="Dates"/>, the next link 1, and so on.
    /// </summary>
    public IEnumerable<int> Links => Enumerable.Range(0, LinkCount).Where(link => !isOut[link]);

    public ActivityFacts Facts(int activity) => ActivityFacts.Of(model.Input, activity);

    public LinkFacts Link(int link) => LinkFacts.Of(model.Input, link);

    /// <summary>Changes the network, all of it or, where an edit is refused, nothing.</summary>
    /// <returns>The activities whose early finish has moved.</returns>
    /// <exception cref="NetworkException">The links would form a ring, or work would lead beyond its calendar.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The edit names what there is not.</exception>
    public IReadOnlyList<Move> Apply(NetworkEdit edit)
    {
        Check(edit);
        var undo = new Stack<Action>();
        List<int> touched = [];
        try
        {
            undo.Push(() => PrepareAgain(touched));
            if (Change(edit, touched, undo))
            {
                PrepareAgain(touched);
                Open(edit, touched);
                pass.Run();
                current = null;
                Revision++;
                return pass.Keep();
            }
        }
        catch (OverflowException)
        {
            // refused below, with what the full pass says
        }

        var refused = InputNow();
        pass.TakeBack();
        while (undo.TryPop(out var step))
        {
            step();
        }

        pass.LayLimits();
        _ = NetworkDates.Of(refused);
        throw new InvalidOperationException("An edit was refused that can be computed.");
    }

    /// <summary>The early finish of an activity as an instant, see <see cref="WorkingTime"/>.</summary>
    public int EarlyFinishInstant(int activity) => pass.FinishAt(model.RankOf[activity]);

    private void Check(NetworkEdit edit)
    {
        var calendars = model.Calendars.Length;
        var isKnown = true;
        foreach (var (calendar, _) in edit.Calendars)
        {
            isKnown &= calendar >= 0 && calendar <= calendars;
            calendars = Math.Max(calendars, calendar + 1);
        }

        foreach (var (activity, facts) in edit.Activities)
        {
            isKnown &= IsActivity(activity) && facts.Calendar >= 0 && facts.Calendar < calendars;
        }

        foreach (var link in edit.RemovedLinks)
        {
            isKnown &= link >= 0 && link < LinkCount && !isOut[link];
        }

        foreach (var link in edit.AddedLinks)
        {
            isKnown &= IsActivity(link.From) && IsActivity(link.To);
        }

        if (!isKnown)
        {
            throw new ArgumentOutOfRangeException(
                nameof(edit),
                "It names an activity, calendar or link that there is not."
            );
        }

        bool IsActivity(int activity) => activity >= 0 && activity < model.Early.Length;
    }

    /// <returns>False if a link closes a ring.</returns>
    private bool Change(NetworkEdit edit, List<int> touched, Stack<Action> undo)
    {
        if (edit.Calendars.Count > 0)
        {
            Replace(edit.Calendars, touched, undo);
        }

        foreach (var (activity, facts) in edit.Activities)
        {
            var was = Facts(activity);
            undo.Push(() => was.WriteTo(model.Input, activity));
            facts.WriteTo(model.Input, activity);
            touched.Add(model.RankOf[activity]);
        }

        foreach (var link in edit.RemovedLinks)
        {
            var k = placeOfLink[link];
            links.Unchain(k, model.Predecessor(k));
            isOut[link] = true;
            StandsOtherwise(undo);
            undo.Push(() =>
            {
                isOut[link] = false;
                links.Chain(k, model.Predecessor(k), links.To(k));
            });
        }

        if (edit.AddedLinks.Count == 0)
        {
            return true;
        }

        StandsOtherwise(undo);
        return Add(edit.AddedLinks, undo);
    }

    private void StandsOtherwise(Stack<Action> undo)
    {
        if (pass.IsAsBuilt)
        {
            pass.IsAsBuilt = false;
            undo.Push(() => pass.IsAsBuilt = true);
        }
    }

    private void Replace(
        IReadOnlyList<(int Calendar, WorkCalendar Days)> replaced,
        List<int> touched,
        Stack<Action> undo
    )
    {
        var (input, times) = (model.Input.Calendars, model.Calendars);
        undo.Push(() => model.Take(model.Input with { Calendars = input }, times));
        List<WorkCalendar> calendars = [.. input];
        List<WorkingTime> made = [.. times];
        var isNew = new bool[times.Length + replaced.Count];
        foreach (var (calendar, days) in replaced)
        {
            var time = new WorkingTime(days, model.Input.FirstOpenDay);
            if (calendar == calendars.Count)
            {
                calendars.Add(days);
                made.Add(time);
            }
            else
            {
                (calendars[calendar], made[calendar]) = (days, time);
            }

            isNew[calendar] = true;
        }

        model.Take(model.Input with { Calendars = calendars }, [.. made]);
        pass.LayLimits();
        for (var rank = 0; rank < model.Calendar.Length; rank++)
        {
            if (isNew[model.Calendar[rank]])
            {
                touched.Add(rank);
            }
        }
    }

    /// <returns>False if one of them closes a ring.</returns>
    private bool Add(IReadOnlyList<LinkFacts> added, Stack<Action> undo)
    {
        var first = LinkCount;
        undo.Push(() => LinkCount = first);
        LinkCount += added.Count;
        MakeRoom();
        var input = model.Input;
        for (var i = 0; i < added.Count; i++)
        {
            var link = first + i;
            (input.From[link], input.To[link]) = (added[i].From, added[i].To);
            (input.Type[link], input.Lag[link]) = (added[i].Type, added[i].Lag);
            (placeOfLink[link], model.LinkOf[link]) = (link, link);
            isOut[link] = false;
        }

        for (var link = first; link < LinkCount; link++)
        {
            var k = link;
            var from = model.RankOf[input.From[link]];
            var to = model.RankOf[input.To[link]];
            if (order.LetPass(from, to, model, links) is not { } was)
            {
                return false;
            }

            undo.Push(() => order.Restore(was));
            model.From[k] = from;
            links.Chain(k, from, to);
            undo.Push(() => links.Unchain(k, from));
        }

        return true;
    }

    private void MakeRoom()
    {
        if (LinkCount <= model.LinkOf.Length)
        {
            return;
        }

        var capacity = Math.Max(LinkCount + 16, LinkCount + (LinkCount / 4));
        var input = model.Input;
        model.Take(
            input with
            {
                From = Grown(input.From),
                To = Grown(input.To),
                Type = Grown(input.Type),
                Lag = Grown(input.Lag),
            },
            model.Calendars
        );
        links.Grow(capacity);
        Array.Resize(ref placeOfLink, capacity);
        Array.Resize(ref isOut, capacity);

        int[] Grown(int[] column)
        {
            Array.Resize(ref column, capacity);
            return column;
        }
    }

    /// <summary>Reads activities and their links from the input again.</summary>
    private void PrepareAgain(List<int> touched)
    {
        foreach (var rank in touched)
        {
            model.Prepare(rank);
        }

        foreach (var rank in touched)
        {
            for (var k = links.FirstIn(rank); k >= 0; k = links.NextIn(k))
            {
                model.PrepareLink(k, model.Predecessor(k), rank);
            }

            for (var k = links.FirstOut(rank); k >= 0; k = links.NextOut(k))
            {
                model.PrepareLink(k, rank, links.To(k));
            }
        }
    }

    private void Open(NetworkEdit edit, List<int> touched)
    {
        for (var link = LinkCount - edit.AddedLinks.Count; link < LinkCount; link++)
        {
            var k = placeOfLink[link];
            model.PrepareLink(k, model.Predecessor(k), links.To(k));
            OpenEnds(k);
        }

        foreach (var link in edit.RemovedLinks)
        {
            OpenEnds(placeOfLink[link]);
        }

        foreach (var rank in touched)
        {
            pass.OpenChanged(rank);
            for (var k = links.FirstIn(rank); k >= 0; k = links.NextIn(k))
            {
                pass.OpenLate(model.Predecessor(k));
            }

            for (var k = links.FirstOut(rank); k >= 0; k = links.NextOut(k))
            {
                pass.OpenEarly(links.To(k));
            }
        }
    }

    private void OpenEnds(int k)
    {
        pass.OpenEarly(links.To(k));
        pass.OpenLate(model.Predecessor(k));
    }

    private NetworkDates MakeDates()
    {
        if (earlyOnly)
        {
            throw new InvalidOperationException("Late dates were not kept.");
        }

        if (pass.IsAsBuilt && model.LinkOf.Length == LinkCount)
        {
            return new NetworkDates(model.Copy()) { Revision = Revision };
        }

        var count = model.Early.Length;
        var activities = new int[count];
        for (var place = 0; place < count; place++)
        {
            activities[place] = model.Order[order.RankAt(place)];
        }

        var sorted = NetworkModel.InOrder(InputNow(), activities, model.Calendars);
        for (var place = 0; place < count; place++)
        {
            sorted.Early[place] = model.Early[order.RankAt(place)];
            sorted.Late[place] = model.Late[order.RankAt(place)];
        }

        sorted.Finish = model.Finish;
        return new NetworkDates(sorted) { Revision = Revision };
    }

    /// <summary>The input without the links that were taken out.</summary>
    internal NetworkInput InputNow()
    {
        int[] kept = [.. Links];
        var input = model.Input;
        return input.Copy() with
        {
            From = Array.ConvertAll(kept, link => input.From[link]),
            To = Array.ConvertAll(kept, link => input.To[link]),
            Type = Array.ConvertAll(kept, link => input.Type[link]),
            Lag = Array.ConvertAll(kept, link => input.Lag[link]),
        };
    }
}
