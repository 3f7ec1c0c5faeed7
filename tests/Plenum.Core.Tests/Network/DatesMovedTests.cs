using Plenum.Core.Network;
using Plenum.Core.Network.Live;
using Plenum.Core.Network.Moves;

namespace Plenum.Core.Tests.Network;

/// <summary>What moved, and because of what.</summary>
public class DatesMovedTests
{
    private const int Networks = 600;

    [Fact]
    public void The_causes_of_every_move_add_up_to_it()
    {
        for (var seed = 0; seed < Networks; seed++)
        {
            var draw = new DrawnNetwork(seed);
            var before = NetworkDates.Of(draw.Input(3, 30));
            var after = Edited(draw, before, 6);
            var moved = DatesMoved.Between(before, after);
            Assert.All(
                moved.Activities,
                one =>
                    Assert.True(
                        one.WorkDays == one.Because.Sum(cause => cause.WorkDays),
                        $"seed {seed}: the causes of a move of {one.WorkDays} add up to {one.Because.Sum(cause => cause.WorkDays)}"
                    )
            );
            var expected = Enumerable
                .Range(0, after.Count)
                .Where(activity =>
                    before.EarlyStart(activity) != after.EarlyStart(activity)
                    || before.EarlyFinish(activity) != after.EarlyFinish(activity)
                );
            Assert.Equal(expected, moved.Activities.Select(one => one.Activity));
        }
    }

    [Fact]
    public void The_causes_add_up_when_the_status_date_has_moved_on_too()
    {
        for (var seed = 0; seed < Networks; seed++)
        {
            var draw = new DrawnNetwork(seed);
            var before = NetworkDates.Of(draw.Input(3, 30));
            var edited = Edited(draw, before, 4).Input;
            var after = NetworkDates.Of(
                edited with
                {
                    StatusDay = (edited.StatusDay ?? DrawnNetwork.Start + 40) + 10,
                }
            );
            Assert.All(
                DatesMoved.Between(before, after).Activities,
                one => Assert.Equal(one.WorkDays, one.Because.Sum(cause => cause.WorkDays))
            );
        }
    }

    [Fact]
    public void A_single_change_is_the_cause_of_all_that_moves()
    {
        for (var seed = 0; seed < Networks; seed++)
        {
            var draw = new DrawnNetwork(seed);
            var before = NetworkDates.Of(draw.Input(3, 30));
            var moved = DatesMoved.Between(before, Edited(draw, before, 1));
            Assert.True(moved.Changes.Count <= 1, $"seed {seed}");
            Assert.All(
                moved.Activities.SelectMany(one => one.Because),
                cause => Assert.Equal(0, cause.Change)
            );
        }
    }

    [Fact]
    public void Nothing_has_moved_between_a_network_and_itself()
    {
        var dates = NetworkDates.Of(new DrawnNetwork(3).Input(20, 20));
        var moved = DatesMoved.Between(dates, dates);
        Assert.Empty(moved.Changes);
        Assert.Empty(moved.Activities);
    }

    /// <summary>After so many edits that are not refused.</summary>
    private static NetworkDates Edited(DrawnNetwork draw, NetworkDates before, int edits)
    {
        var live = new LiveNetwork(before);
        while (edits > 0)
        {
            var activity = draw.Between(0, before.Count - 1);
            var facts = live.Facts(activity);
            var links = live.Links.ToList();
            var edit = draw.Between(0, 4) switch
            {
                0 => Of(facts with { Duration = draw.Between(0, 12) }),
                1 => Of(draw.WithProgress(facts)),
                2 => Of(facts with { StartNoEarlier = draw.Day(true, 70) }),
                3 => new NetworkEdit { AddedLinks = Missing() },
                _ => new NetworkEdit
                {
                    RemovedLinks =
                        links.Count == 0 ? [] : [links[draw.Between(0, links.Count - 1)]],
                },
            };
            try
            {
                live.Apply(edit);
                edits--;
            }
            catch (NetworkException)
            {
                // a ring: another edit
            }

            IReadOnlyList<LinkFacts> Missing()
            {
                var link = new LinkFacts(
                    activity,
                    draw.Between(0, before.Count - 1),
                    draw.LinkKind(),
                    draw.Lag()
                );
                return links.Exists(other => (live.Link(other) with { Lag = link.Lag }) == link)
                    ? []
                    : [link];
            }

            NetworkEdit Of(ActivityFacts changed) => new() { Activities = [(activity, changed)] };
        }

        return live.Dates;
    }
}
