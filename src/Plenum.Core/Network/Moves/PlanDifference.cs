using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;
using Plenum.Core.Network.Live;

namespace Plenum.Core.Network.Moves;

/// <summary>
/// What differs between two networks, as edits of the earlier one in the order in which they can be made: no step closes a
/// ring. Activities are the same by code, links by their ends and type, calendars by code. All are numbered as in the later
/// network, those that are no longer there behind.
/// </summary>
internal sealed class PlanDifference
{
    private readonly NetworkInput before;
    private readonly NetworkInput after;
    private readonly List<string> codes;
    private readonly int[] placeOfBefore;
    private readonly List<WorkCalendar> calendars;
    private readonly int[] placeOfCalendar;
    private readonly List<(PlanChange Change, NetworkEdit Edit)> steps = [];

    public PlanDifference(NetworkInput before, NetworkInput after)
    {
        this.before = before;
        this.after = after;
        codes = [.. after.Codes];
        var placeOf = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var activity = 0; activity < after.Count; activity++)
        {
            placeOf[after.Codes[activity]] = activity;
        }

        placeOfBefore = new int[before.Count];
        for (var activity = 0; activity < before.Count; activity++)
        {
            if (!placeOf.TryGetValue(before.Codes[activity], out placeOfBefore[activity]))
            {
                placeOfBefore[activity] = codes.Count;
                codes.Add(before.Codes[activity]);
            }
        }

        BeforeOf = new int[codes.Count];
        BeforeOf.AsSpan().Fill(-1);
        for (var activity = 0; activity < before.Count; activity++)
        {
            BeforeOf[placeOfBefore[activity]] = activity;
        }

        calendars = [.. before.Calendars];
        placeOfCalendar = new int[after.Calendars.Count];
        for (var calendar = 0; calendar < placeOfCalendar.Length; calendar++)
        {
            placeOfCalendar[calendar] = PlaceOf(calendar);
        }

        Start = MakeStart();
        AddCalendars();
        AddLinksAndActivities();
    }

    /// <summary>The earlier network in the common numbers; activities that it has not stand alone.</summary>
    public NetworkInput Start { get; }

    /// <summary>Changes of the plan, without progress, each with the edit that makes it.</summary>
    public IReadOnlyList<(PlanChange Change, NetworkEdit Edit)> Steps => steps;

    /// <summary>The activity of the earlier network by its common number; −1 for none.</summary>
    public int[] BeforeOf { get; }

    /// <summary>What the later network takes from an activity, in the common numbers.</summary>
    public ActivityFacts FactsAfter(int activity)
    {
        var facts = ActivityFacts.Of(after, activity);
        return facts with { Calendar = placeOfCalendar[facts.Calendar] };
    }

    public static ActivityFacts WithProgressOf(ActivityFacts facts, ActivityFacts progress) =>
        facts with
        {
            Started = progress.Started,
            Finished = progress.Finished,
            Remaining = progress.Remaining,
        };

    private static string? CodeOf(NetworkInput input, int calendar) =>
        input.CalendarCodes.Count > 0
            ? input.CalendarCodes[calendar]
            : calendar.ToString(System.Globalization.CultureInfo.InvariantCulture);

    private int PlaceOf(int calendar)
    {
        for (var known = 0; known < before.Calendars.Count; known++)
        {
            if (
                CodeOf(before, known) == CodeOf(after, calendar)
                && before.Calendars[known].HasSameDaysAs(after.Calendars[calendar])
            )
            {
                return known;
            }
        }

        calendars.Add(after.Calendars[calendar]);
        return calendars.Count - 1;
    }

    private NetworkInput MakeStart()
    {
        var count = codes.Count;
        var input = before with
        {
            Codes = codes,
            Duration = new int[count],
            Calendar = new int[count],
            Conditions = ActivityConditions.None(count),
            Started = new int[count],
            Finished = new int[count],
            Remaining = new int[count],
            From = Array.ConvertAll(before.From, activity => placeOfBefore[activity]),
            To = Array.ConvertAll(before.To, activity => placeOfBefore[activity]),
            Calendars = calendars,
            CalendarCodes = [],
        };
        for (var activity = 0; activity < count; activity++)
        {
            var facts =
                BeforeOf[activity] >= 0
                    ? ActivityFacts.Of(before, BeforeOf[activity])
                    : FactsAfter(activity) with
                    {
                        Started = Cell.NoInt,
                        Finished = Cell.NoInt,
                        Remaining = Cell.NoInt,
                    };
            facts.WriteTo(input, activity);
        }

        return input;
    }

    /// <summary>A calendar that has other days now takes all its activities along in one step.</summary>
    private void AddCalendars()
    {
        for (var calendar = 0; calendar < after.Calendars.Count; calendar++)
        {
            var code = CodeOf(after, calendar);
            var place = placeOfCalendar[calendar];
            if (place < before.Calendars.Count)
            {
                continue;
            }

            List<(int, ActivityFacts)> moved = [];
            for (var activity = 0; activity < after.Count; activity++)
            {
                if (
                    BeforeOf[activity] >= 0
                    && after.Calendar[activity] == calendar
                    && CodeOf(before, before.Calendar[BeforeOf[activity]]) == code
                )
                {
                    moved.Add(
                        (activity, ActivityFacts.Of(Start, activity) with { Calendar = place })
                    );
                }
            }

            if (moved.Count > 0)
            {
                steps.Add(
                    (
                        new PlanChange(ChangeKind.Calendar) { Calendar = code },
                        new NetworkEdit { Activities = moved }
                    )
                );
            }
        }
    }

    private void AddLinksAndActivities()
    {
        var known = new Dictionary<(int From, int To, int Type), Queue<int>>();
        for (var link = 0; link < Start.LinkCount; link++)
        {
            var key = (Start.From[link], Start.To[link], Start.Type[link]);
            if (!known.TryGetValue(key, out var same))
            {
                known.Add(key, same = []);
            }

            same.Enqueue(link);
        }

        List<(PlanChange, NetworkEdit)> lags = [];
        List<LinkFacts> added = [];
        for (var link = 0; link < after.LinkCount; link++)
        {
            var facts = LinkFacts.Of(after, link);
            if (
                !known.TryGetValue((facts.From, facts.To, facts.Type), out var same)
                || !same.TryDequeue(out var was)
            )
            {
                added.Add(facts);
            }
            else if (Start.Lag[was] != facts.Lag)
            {
                lags.Add(
                    (
                        Of(ChangeKind.Lag, LinkFacts.Of(Start, was), facts),
                        new NetworkEdit { RemovedLinks = [was], AddedLinks = [facts] }
                    )
                );
            }
        }

        AddRemoved([.. known.Values.SelectMany(same => same).Order()]);
        AddActivities();
        steps.AddRange(lags);
        AddAdded(added);
    }

    private void AddRemoved(IReadOnlyList<int> removed)
    {
        List<int> alone = [];
        var ofGone = new SortedDictionary<int, List<int>>();
        for (var activity = after.Count; activity < codes.Count; activity++)
        {
            ofGone.Add(activity, []);
        }

        foreach (var link in removed)
        {
            var gone = Math.Max(Start.From[link], Start.To[link]);
            (gone >= after.Count ? ofGone[gone] : alone).Add(link);
        }

        foreach (var (activity, links) in ofGone)
        {
            steps.Add(
                (
                    new PlanChange(ChangeKind.ActivityRemoved, codes[activity]),
                    new NetworkEdit { RemovedLinks = links }
                )
            );
        }

        foreach (var link in alone)
        {
            steps.Add(
                (
                    Of(ChangeKind.LinkRemoved, LinkFacts.Of(Start, link), null),
                    new NetworkEdit { RemovedLinks = [link] }
                )
            );
        }
    }

    private void AddActivities()
    {
        for (var activity = 0; activity < after.Count; activity++)
        {
            if (BeforeOf[activity] < 0)
            {
                continue;
            }

            var was = ActivityFacts.Of(Start, activity);
            var calendarWas = CodeOf(before, was.Calendar);
            var calendarIs = CodeOf(after, after.Calendar[activity]);
            var now = WithProgressOf(FactsAfter(activity), was);
            if (
                was == now
                || (calendarWas == calendarIs && was with { Calendar = now.Calendar } == now)
            )
            {
                continue;
            }

            steps.Add(
                (
                    new PlanChange(ChangeKind.Activity, codes[activity])
                    {
                        Before = was,
                        After = now,
                        Calendar = calendarIs,
                        CalendarBefore = calendarWas,
                    },
                    new NetworkEdit { Activities = [(activity, now)] }
                )
            );
        }
    }

    private void AddAdded(List<LinkFacts> added)
    {
        var ofNew = new SortedDictionary<int, List<LinkFacts>>();
        for (var activity = 0; activity < after.Count; activity++)
        {
            if (BeforeOf[activity] < 0)
            {
                ofNew.Add(activity, []);
            }
        }

        foreach (var link in added)
        {
            // with the later of two new activities, so that both are there
            var owner = Math.Max(
                ofNew.ContainsKey(link.From) ? link.From : -1,
                ofNew.ContainsKey(link.To) ? link.To : -1
            );
            if (owner >= 0)
            {
                ofNew[owner].Add(link);
                continue;
            }

            steps.Add(
                (Of(ChangeKind.LinkAdded, null, link), new NetworkEdit { AddedLinks = [link] })
            );
        }

        foreach (var (activity, links) in ofNew)
        {
            steps.Add(
                (
                    new PlanChange(ChangeKind.ActivityAdded, codes[activity]),
                    new NetworkEdit { AddedLinks = links }
                )
            );
        }
    }

    private PlanChange Of(ChangeKind kind, LinkFacts? was, LinkFacts? now)
    {
        var ends = was ?? now!.Value;
        return new PlanChange(kind, codes[ends.From])
        {
            To = codes[ends.To],
            LinkBefore = was,
            LinkAfter = now,
        };
    }
}
