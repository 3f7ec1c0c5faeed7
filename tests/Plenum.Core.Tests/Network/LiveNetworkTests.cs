using System.Globalization;
using Plenum.Core.Network;
using Plenum.Core.Network.Live;

namespace Plenum.Core.Tests.Network;

/// <summary>A network that is edited has the dates of one that is computed from the start.</summary>
public class LiveNetworkTests
{
    private const int Networks = 250;
    private const int EditsOfEach = 40;

    [Fact]
    public void After_each_of_10_000_random_edits_all_results_equal_those_of_a_full_pass()
    {
        Dictionary<string, int> met = new(StringComparer.Ordinal);
        for (var seed = 0; seed < Networks; seed++)
        {
            var draw = new DrawnNetwork(seed);
            var live = new LiveNetwork(NetworkDates.Of(draw.Input()));
            for (var number = 0; number < EditsOfEach; number++)
            {
                var (kind, edit) = DrawnEdit(draw, live);
                var where = string.Create(
                    CultureInfo.InvariantCulture,
                    $"seed {seed}, edit {number}, {kind}"
                );
                Count(kind);
                Count(Apply(live, edit, where));
            }
        }

        Assert.Equal(Networks * EditsOfEach, met["kept"] + met["refused"]);
        Assert.All(
            new[]
            {
                "duration",
                "progress",
                "conditions",
                "calendar of an activity",
                "days of a calendar",
                "link added",
                "link removed",
                "several",
                "refused",
                "finish moved",
            },
            what => Assert.True(met.GetValueOrDefault(what) >= 100, $"{what} was hardly met")
        );

        string Apply(LiveNetwork live, NetworkEdit edit, string where)
        {
            var before = live.Dates;
            var text = Results.Of(before);
            var links = live.Links.ToList();
            try
            {
                var moves = live.Apply(edit);
                Assert.Equal(before.Revision + 1, live.Dates.Revision);
                AssertMoves(before, live.Dates, moves, where);
            }
            catch (NetworkException)
            {
                Assert.Same(before, live.Dates);
                Assert.Equal(links, live.Links);
                // the state, not only the value that was kept of it
                live.Apply(new NetworkEdit());
                Assert.True(text == Results.Of(live.Dates), $"{where}: refused, but not as before");
                return "refused";
            }

            Assert.True(
                Results.Of(NetworkDates.Of(live.Dates.Input)) == Results.Of(live.Dates),
                $"{where}: the full pass has other results"
            );
            Assert.True(text == Results.Of(before), $"{where}: an earlier value has changed");
            if (before.FinishInstant != live.Dates.FinishInstant)
            {
                Count("finish moved");
            }

            return "kept";
        }

        void Count(string what) => met[what] = met.GetValueOrDefault(what) + 1;
    }

    [Fact]
    public void A_link_that_closes_a_ring_is_refused_with_the_whole_ring()
    {
        var live = Chain(3);
        var wrong = Assert.Throws<NetworkException>(() =>
            live.Apply(new NetworkEdit { AddedLinks = [new LinkFacts(2, 0, 0, 0)] })
        );
        Assert.Equal("the links form a ring of 3: A0 before A1 before A2 before A0", wrong.Reason);
        Assert.Equal([0, 1], live.Links);
    }

    [Fact]
    public void A_duration_beyond_all_dates_is_refused_and_leaves_the_network_as_it_was()
    {
        var live = Chain(3);
        var before = live.Dates;
        Assert.Throws<NetworkException>(() =>
            live.Apply(
                new NetworkEdit { Activities = [(1, live.Facts(1) with { Duration = 3_000_000 })] }
            )
        );
        Assert.Same(before, live.Dates);
        live.Apply(new NetworkEdit { Activities = [(1, live.Facts(1) with { Duration = 7 })] });
        Assert.Equal(new DateOnly(2026, 3, 20), before.Finish);
        Assert.Equal(new DateOnly(2026, 3, 24), live.Dates.Finish);
    }

    [Fact]
    public void An_edit_that_names_what_there_is_not_is_a_mistake_of_the_program() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            Chain(2).Apply(new NetworkEdit { RemovedLinks = [5] })
        );

    /// <summary>Activities of a week each, one after the other.</summary>
    private static LiveNetwork Chain(int count)
    {
        var input = new DrawnNetwork(1, DrawnNetwork.Domain.Plain).Input(count, count);
        return new LiveNetwork(
            NetworkDates.Of(
                input with
                {
                    Duration = [.. Enumerable.Repeat(5, count)],
                    From = [.. Enumerable.Range(0, count - 1)],
                    To = [.. Enumerable.Range(1, count - 1)],
                    Type = new int[count - 1],
                    Lag = new int[count - 1],
                    Calendars =
                    [
                        Core.Foundation.Time.WorkCalendar.MondayToFriday,
                        .. input.Calendars.Skip(1),
                    ],
                }
            )
        );
    }

    private static void AssertMoves(
        NetworkDates before,
        NetworkDates after,
        IReadOnlyList<Move> moves,
        string where
    )
    {
        var expected = Enumerable
            .Range(0, before.Count)
            .Where(activity =>
                before.EarlyFinishInstant(activity) != after.EarlyFinishInstant(activity)
            );
        Assert.True(
            expected.SequenceEqual(moves.Select(move => move.Activity).Order()),
            $"{where}: other activities moved"
        );
        Assert.All(
            moves,
            move => Assert.Equal(after.EarlyFinishInstant(move.Activity), move.After)
        );
    }

    private static (string Kind, NetworkEdit Edit) DrawnEdit(DrawnNetwork draw, LiveNetwork live)
    {
        var count = live.Dates.Count;
        return draw.Between(0, 8) switch
        {
            0 => ("duration", Of(Duration())),
            1 => ("progress", Of(Progress())),
            2 => ("conditions", Of(Conditions())),
            3 => ("calendar of an activity", Of(Calendar())),
            4 => (
                "days of a calendar",
                new NetworkEdit
                {
                    Calendars = [(draw.Between(0, DrawnNetwork.Calendars - 1), draw.Calendar())],
                }
            ),
            5 => ("link removed", new NetworkEdit { RemovedLinks = Removed() }),
            6 or 7 => ("link added", new NetworkEdit { AddedLinks = [Link()] }),
            _ => (
                "several",
                Of(draw.Chance(50) ? Duration() : Progress()) with
                {
                    RemovedLinks = Removed(),
                    AddedLinks = [Link(), Link()],
                }
            ),
        };

        static NetworkEdit Of((int, ActivityFacts) facts) => new() { Activities = [facts] };

        int Some() => draw.Between(0, count - 1);

        (int, ActivityFacts) Duration()
        {
            var activity = Some();
            var facts = live.Facts(activity);
            // now and then far beyond all dates
            return (
                activity,
                facts with
                {
                    Duration = draw.Chance(4) ? 5_000_000 : draw.Between(0, 12),
                }
            );
        }

        (int, ActivityFacts) Progress()
        {
            var activity = Some();
            return (activity, draw.WithProgress(live.Facts(activity)));
        }

        (int, ActivityFacts) Conditions()
        {
            var activity = Some();
            var facts = live.Facts(activity);
            return (
                activity,
                draw.Between(0, 6) switch
                {
                    0 => facts with { StartNoEarlier = draw.Day(true, 60) },
                    1 => facts with { FinishNoEarlier = draw.Day(true, 60) },
                    2 => facts with { StartNoLater = draw.Day(true, 60) },
                    3 => facts with { FinishNoLater = draw.Day(true, 60) },
                    4 => facts with { StartOn = draw.Day(true, 50) },
                    5 => facts with { FinishOn = draw.Day(true, 50) },
                    _ => facts with { RequiredBy = draw.Day(true, 60) },
                }
            );
        }

        (int, ActivityFacts) Calendar()
        {
            var activity = Some();
            return (
                activity,
                live.Facts(activity) with
                {
                    Calendar = draw.Between(0, DrawnNetwork.Calendars - 1),
                }
            );
        }

        LinkFacts Link() => new(Some(), Some(), draw.LinkKind(), draw.Lag());

        IReadOnlyList<int> Removed()
        {
            var links = live.Links.ToList();
            return links.Count == 0 ? [] : [links[draw.Between(0, links.Count - 1)]];
        }
    }
}
