using System.Globalization;
using System.Runtime.CompilerServices;

namespace Plenum.Core.Network;

/// <summary>
/// The two passes over a network (critical path method; Kelley and Walker 1959). Forward: every activity as early as its
/// links, its conditions and the status date allow. Backward from the latest early finish: as late as no link asks a
/// successor for more than its late dates. Time: in the number of activities and links; nothing is allocated.
/// </summary>
internal static class NetworkPass
{
    /// <summary>Day number of 31 December 9999 and one more: the last instant that has a date before it.</summary>
    public static readonly int LastInstant = DateOnly.MaxValue.DayNumber + 1;

    /// <exception cref="NetworkException">Work leads beyond the last date, or beyond the end of a calendar.</exception>
    public static void Run(NetworkModel model)
    {
        try
        {
            Forward(model);
            model.Finish = LatestFinish(model);
            if (model.Finish > LastInstant)
            {
                throw BeyondCalendar(model);
            }

            Backward(model);
        }
        catch (OverflowException)
        {
            throw new NetworkException("durations and lags add up to more than any calendar holds");
        }
    }

    public static void Forward(NetworkModel model)
    {
        var early = model.Early;
        var low = model.Low;
        var state = model.State;
        var inStart = model.InStart;
        var from = model.From;
        var weight = model.Weight;
        for (var rank = 0; rank < early.Length; rank++)
        {
            var at = low[rank];
            var end = inStart[rank + 1];
            var k =
                (state[rank] & (NetworkModel.Fixed | NetworkModel.Finished)) == 0
                    ? inStart[rank]
                    : end;
            for (; k < end; k++)
            {
                var before = from[k];
                var asked =
                    before >= 0
                        ? early[before] + weight[k]
                        : model.Asked(k, ~before, early[~before], rank);
                at = Greater(at, asked);
            }

            early[rank] = at;
        }
    }

    /// <summary>The latest early finish of all activities.</summary>
    public static int LatestFinish(NetworkModel model)
    {
        // of the ordinary work in one calendar only the greatest place of a finish matters
        var greatest = new int[model.Calendars.Length];
        greatest.AsSpan().Fill(int.MinValue);
        var latest = int.MinValue;
        for (var rank = 0; rank < model.Early.Length; rank++)
        {
            if ((model.State[rank] & (NetworkModel.Point | NetworkModel.Finished)) == 0)
            {
                ref var place = ref greatest[model.Calendar[rank]];
                var finish = model.Early[rank] + model.Work[rank];
                place = finish > place ? finish : place;
            }
            else
            {
                latest = Math.Max(latest, model.FinishInstant(rank, model.Early[rank]));
            }
        }

        for (var calendar = 0; calendar < greatest.Length; calendar++)
        {
            if (greatest[calendar] != int.MinValue)
            {
                latest = Math.Max(latest, model.Calendars[calendar].EndOf(greatest[calendar]));
            }
        }

        return latest == int.MinValue ? model.Input.FirstOpenDay : latest;
    }

    public static void Backward(NetworkModel model)
    {
        var late = model.Late;
        var work = model.Work;
        var state = model.State;
        var high = model.High;
        var inStart = model.InStart;
        var from = model.From;
        var weight = model.Weight;
        var lastPlace = new int[model.Calendars.Length];
        for (var calendar = 0; calendar < lastPlace.Length; calendar++)
        {
            lastPlace[calendar] = model.Calendars[calendar].PlaceOf(model.Finish);
        }

        late.AsSpan().Fill(NetworkModel.Unlimited);
        for (var rank = late.Length - 1; rank >= 0; rank--)
        {
            if ((state[rank] & NetworkModel.Finished) != 0)
            {
                continue;
            }

            var at = Math.Min(late[rank], high[rank]);
            if ((state[rank] & NetworkModel.Fixed) != 0)
            {
                at = high[rank];
            }
            else
            {
                var limit =
                    (state[rank] & NetworkModel.Point) != 0
                        ? model.Finish
                        : lastPlace[model.Calendar[rank]] - work[rank];
                at = limit < at ? limit : at;
            }

            late[rank] = at;
            var end = inStart[rank + 1];
            for (var k = inStart[rank]; k < end; k++)
            {
                var before = from[k];
                if (before >= 0)
                {
                    late[before] = Smaller(late[before], at - weight[k]);
                }
                else
                {
                    late[~before] = Math.Min(late[~before], model.Allowed(k, ~before, rank, at));
                }
            }
        }
    }

    // Which of two places is greater cannot be foretold, so a branch would often be taken wrongly. The difference of two
    // ints fits a long, and what comes out is one of the two.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Greater(int left, int right)
    {
        unchecked
        {
            var more = (long)left - right;
            return (int)(left - (more & (more >> 63)));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Smaller(int left, int right)
    {
        unchecked
        {
            var more = (long)left - right;
            return (int)(left - (more & ~(more >> 63)));
        }
    }

    private static NetworkException BeyondCalendar(NetworkModel model)
    {
        for (var rank = 0; rank < model.Early.Length; rank++)
        {
            if (model.FinishInstant(rank, model.Early[rank]) <= LastInstant)
            {
                continue;
            }

            var code = model.Input.Codes[model.Order[rank]];
            for (var k = model.InStart[rank]; k < model.InStart[rank + 1]; k++)
            {
                var before = model.Predecessor(k);
                var lag = model.Input.Lag[model.LinkOf[k]];
                if (
                    lag > 0
                    && model.IsActive(k)
                    && model.TimeOf(before).Go(Leaves(k, before), lag) > LastInstant
                )
                {
                    return new NetworkException(
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"the lag of {lag} working days from {model.Input.Codes[model.Order[before]]} to {code} leads beyond the last working day of the predecessor's calendar"
                        )
                    )
                    {
                        Link = model.LinkOf[k],
                    };
                }
            }

            return new NetworkException($"{code} leads beyond the last working day of its calendar")
            {
                Activity = model.Order[rank],
            };
        }

        return new NetworkException("it leads beyond the last date");

        int Leaves(int k, int before) =>
            LinkType.FromFinish(model.Input.Type[model.LinkOf[k]])
                ? model.FinishInstant(before, model.Early[before])
                : model.StartInstant(before, model.Early[before]);
    }
}
