using CsCheck;
using Plenum.Core.Network;
using Plenum.Core.Network.Live;

namespace Plenum.Core.Tests.Network;

/// <summary>
/// Laws of a computed network, each on networks of the domain in which it holds: elsewhere most of them are false, which is
/// what makes date conditions, several calendars and links to finishes hard to read. Follow from the definitions; the
/// floats as in Kelley and Walker 1959 and, for independent float, common practice.
/// </summary>
public class NetworkLawTests
{
    private const int Runs = 400;

    private static readonly DrawnNetwork.Domain Anything = new();

    private static readonly DrawnNetwork.Domain Unlimited = new() { NoLater = false, On = false };

    /// <summary>Nothing asks for a finish: links lead to starts, conditions hold starts.</summary>
    private static readonly DrawnNetwork.Domain StartsOnly = new()
    {
        Progress = false,
        On = false,
        FinishNoEarlier = false,
        ToStartOnly = true,
    };

    [Fact]
    public void Lengthening_an_activity_makes_nothing_earlier_where_links_lead_to_starts() =>
        Holds(
            StartsOnly,
            (draw, input) =>
            {
                var before = NetworkDates.Of(input);
                var one = draw.Between(0, before.Count - 1);
                var longer = input.Duration.ToArray();
                longer[one] += draw.Between(1, 9);
                return NothingEarlier(before, NetworkDates.Of(input with { Duration = longer }));
            }
        );

    [Fact]
    public void Where_a_link_leads_to_a_finish_lengthening_an_activity_can_make_others_earlier()
    {
        // B ends with A and begins as late as that allows; C begins with B
        var drawn = new DrawnNetwork(1, DrawnNetwork.Domain.Plain).Input(3, 3);
        var input = drawn with
        {
            Duration = [10, 2, 1],
            From = [0, 1],
            To = [1, 2],
            Type = [LinkType.FinishToFinish, LinkType.StartToStart],
            Lag = [0, 0],
        };
        var before = NetworkDates.Of(input);
        var after = NetworkDates.Of(input with { Duration = [10, 5, 1] });
        Assert.Equal(3, before.EarlyStart(2).DayNumber - after.EarlyStart(2).DayNumber);
    }

    [Fact]
    public void A_link_that_is_added_makes_no_early_date_earlier() =>
        Holds(
            Anything,
            (draw, input) =>
            {
                var before = NetworkDates.Of(input);
                var live = new LiveNetwork(before);
                var link = new LinkFacts(
                    draw.Between(0, before.Count - 1),
                    draw.Between(0, before.Count - 1),
                    draw.LinkKind(),
                    draw.Lag()
                );
                try
                {
                    live.Apply(new NetworkEdit { AddedLinks = [link] });
                }
                catch (NetworkException)
                {
                    return true; // a ring
                }

                return NothingEarlier(before, live.Dates);
            }
        );

    [Fact]
    public void A_later_no_earlier_date_makes_no_early_date_earlier() =>
        Holds(
            Anything,
            (draw, input) =>
            {
                var before = NetworkDates.Of(input);
                var one = draw.Between(0, before.Count - 1);
                var live = new LiveNetwork(before);
                var facts = live.Facts(one);
                var day = Math.Max(DrawnNetwork.Start, facts.StartNoEarlier) + draw.Between(0, 30);
                live.Apply(
                    new NetworkEdit { Activities = [(one, facts with { StartNoEarlier = day })] }
                );
                return NothingEarlier(before, live.Dates);
            }
        );

    [Fact]
    public void Without_late_conditions_no_float_is_negative_and_none_is_greater_than_the_total() =>
        HoldsForEach(
            Unlimited,
            (dates, activity) =>
                dates.TotalFloat(activity) is null
                || (
                    dates.IndependentFloat(activity) >= 0
                    && dates.IndependentFloat(activity) <= dates.FreeFloat(activity)
                    && dates.FreeFloat(activity) <= dates.TotalFloat(activity)
                )
        );

    [Fact]
    public void Total_float_is_free_and_interfering_float_together() =>
        HoldsForEach(
            Anything,
            (dates, activity) =>
                dates.TotalFloat(activity)
                == dates.FreeFloat(activity) + dates.InterferingFloat(activity)
        );

    [Fact]
    public void Finished_work_has_no_float_and_keeps_its_actual_dates() =>
        HoldsForEach(
            Anything,
            (dates, activity) =>
                !dates.IsFinished(activity)
                || (
                    dates.TotalFloat(activity) is null
                    && dates.EarlyStart(activity).DayNumber == dates.Input.Started[activity]
                    && dates.LateFinish(activity).DayNumber == dates.Input.Finished[activity]
                )
        );

    [Fact]
    public void Work_that_is_not_done_lies_after_the_status_date_unless_an_on_date_holds_it() =>
        HoldsForEach(
            new DrawnNetwork.Domain { On = false },
            (dates, activity) =>
                dates.WorkResumes(activity) is not { } day
                || dates.IsMilestone(activity)
                || dates.Remaining(activity) == 0
                || day.DayNumber >= dates.Input.FirstOpenDay
        );

    [Fact]
    public void Every_driving_chain_begins_with_something_that_is_no_link_and_each_link_of_it_is_without_slack() =>
        HoldsForEach(
            Anything,
            (dates, activity) =>
            {
                var chain = dates.Drivers.ChainTo(activity);
                return chain[^1].Activity == activity
                    && chain[0].HeldBy != Holder.Link
                    && chain
                        .Skip(1)
                        .Zip(chain)
                        .All(pair =>
                            pair.First.HeldBy == Holder.Link
                            && pair.Second.Leaves is { } link
                            && dates.Drivers.DrivingLinksOf(pair.First.Activity).Contains(link)
                            && dates.Input.From[link] == pair.Second.Activity
                        );
            }
        );

    [Fact]
    public void The_project_ends_with_the_last_early_finish_and_some_activity_is_critical_unless_all_that_ends_it_is_done() =>
        Holds(
            Anything,
            (_, input) =>
            {
                var dates = NetworkDates.Of(input);
                var activities = Enumerable.Range(0, dates.Count).ToList();
                return dates.FinishInstant == activities.Max(dates.EarlyFinishInstant)
                    && (dates.CriticalFloat is null || activities.Exists(dates.IsCritical));
            }
        );

    [Fact]
    public void In_a_plain_network_the_driving_chain_has_no_float_and_is_as_long_as_the_project() =>
        Holds(
            DrawnNetwork.Domain.Plain,
            (_, input) =>
            {
                var dates = NetworkDates.Of(input);
                var chain = dates.Drivers.ChainToFinish();
                return chain.All(station => dates.TotalFloat(station.Activity) == 0)
                    && chain.Sum(station => input.Duration[station.Activity])
                        == dates.FinishInstant - input.Start;
            }
        );

    [Fact]
    public void In_a_plain_network_a_delay_within_the_total_float_moves_no_end_and_one_day_more_moves_it_by_one() =>
        Holds(
            DrawnNetwork.Domain.Plain,
            (draw, input) =>
            {
                var dates = NetworkDates.Of(input);
                var one = draw.Between(0, dates.Count - 1);
                var room = dates.TotalFloat(one)!.Value;
                return Later(room) == dates.FinishInstant
                    && Later(room + 1) == dates.FinishInstant + 1;

                int Later(int days)
                {
                    var longer = input.Duration.ToArray();
                    longer[one] += days;
                    return NetworkDates.Of(input with { Duration = longer }).FinishInstant;
                }
            }
        );

    [Fact]
    public void A_plain_network_read_backwards_has_early_and_late_dates_exchanged() =>
        Holds(
            DrawnNetwork.Domain.Plain,
            (_, input) =>
            {
                var dates = NetworkDates.Of(input);
                var back = NetworkDates.Of(input with { From = input.To, To = input.From });
                return dates.FinishInstant == back.FinishInstant
                    && Enumerable
                        .Range(0, dates.Count)
                        .All(activity =>
                            dates.LateStart(activity).DayNumber - input.Start
                            == back.FinishInstant - 1 - back.EarlyFinish(activity).DayNumber
                        );
            }
        );

    [Fact]
    public void The_order_of_activities_and_links_changes_nothing() =>
        Holds(
            Anything,
            (draw, input) =>
            {
                var order = Enumerable.Range(0, input.Count).ToArray();
                var links = Enumerable.Range(0, input.LinkCount).ToArray();
                draw.Shuffle(order);
                draw.Shuffle(links);
                var dates = NetworkDates.Of(input);
                var other = NetworkDates.Of(Reordered(input, order, links));
                return dates.FinishInstant == other.FinishInstant
                    && Enumerable
                        .Range(0, order.Length)
                        .All(place =>
                            dates.EarlyFinishInstant(order[place])
                                == other.EarlyFinishInstant(place)
                            && dates.TotalFloat(order[place]) == other.TotalFloat(place)
                            && dates.FreeFloat(order[place]) == other.FreeFloat(place)
                            && dates.IsDriving(order[place]) == other.IsDriving(place)
                        );
            }
        );

    [Fact]
    public void A_start_that_is_weeks_later_moves_all_dates_by_so_many_weeks_where_weeks_are_alike() =>
        Holds(
            new DrawnNetwork.Domain
            {
                Progress = false,
                NoEarlier = false,
                NoLater = false,
                On = false,
                Holidays = false,
            },
            (draw, input) =>
            {
                var days = 7 * draw.Between(1, 100);
                var dates = NetworkDates.Of(input);
                var later = NetworkDates.Of(input with { Start = input.Start + days });
                return Enumerable
                    .Range(0, dates.Count)
                    .All(activity =>
                        dates.EarlyStart(activity).AddDays(days) == later.EarlyStart(activity)
                        && dates.LateFinish(activity).AddDays(days) == later.LateFinish(activity)
                        && dates.TotalFloat(activity) == later.TotalFloat(activity)
                    );
            }
        );

    private static void Holds(
        DrawnNetwork.Domain domain,
        Func<DrawnNetwork, NetworkInput, bool> law
    ) =>
        Gen.Int[0, int.MaxValue - 1]
            .Sample(
                seed =>
                {
                    var draw = new DrawnNetwork(seed, domain);
                    return law(draw, draw.Input(1, 25));
                },
                iter: Runs
            );

    private static void HoldsForEach(
        DrawnNetwork.Domain domain,
        Func<NetworkDates, int, bool> law
    ) =>
        Holds(
            domain,
            (_, input) =>
            {
                var dates = NetworkDates.Of(input);
                return Enumerable.Range(0, dates.Count).All(activity => law(dates, activity));
            }
        );

    private static bool NothingEarlier(NetworkDates before, NetworkDates after) =>
        Enumerable
            .Range(0, before.Count)
            .All(activity =>
                after.EarlyFinishInstant(activity) >= before.EarlyFinishInstant(activity)
            );

    private static NetworkInput Reordered(NetworkInput input, int[] order, int[] links)
    {
        var placeOf = new int[order.Length];
        for (var place = 0; place < order.Length; place++)
        {
            placeOf[order[place]] = place;
        }

        return input with
        {
            Codes = [.. order.Select(activity => input.Codes[activity])],
            Duration = Of(input.Duration),
            Calendar = Of(input.Calendar),
            Conditions = new ActivityConditions(
                Of(input.Conditions.StartNoEarlier),
                Of(input.Conditions.StartNoLater),
                Of(input.Conditions.FinishNoEarlier),
                Of(input.Conditions.FinishNoLater),
                Of(input.Conditions.StartOn),
                Of(input.Conditions.FinishOn),
                Of(input.Conditions.RequiredBy)
            ),
            Started = Of(input.Started),
            Finished = Of(input.Finished),
            Remaining = Of(input.Remaining),
            From = [.. links.Select(link => placeOf[input.From[link]])],
            To = [.. links.Select(link => placeOf[input.To[link]])],
            Type = [.. links.Select(link => input.Type[link])],
            Lag = [.. links.Select(link => input.Lag[link])],
        };

        int[] Of(int[] column) => [.. order.Select(activity => column[activity])];
    }
}
