using Plenum.Core.Foundation.Time;
using Plenum.Core.Network;

namespace Plenum.Bench.Data;

/// <summary>
/// A network as a large job has it: activities in some 300 stages, one and a half links each, finish to start, most from the
/// stage before and some with a lag; one week, Monday to Friday. Lasts about ten years. In topological order, or in no order
/// at all.
/// </summary>
internal sealed class DrawnLinks
{
    private const int Stages = 300;

    public DrawnLinks(int count, ulong seed, bool isShuffled)
    {
        var draw = new Draw(seed);
        var stage = Math.Max(1, count / Stages);
        Work = new int[count];
        List<(int From, int To, int Lag)> links = new(count * 3 / 2);
        for (var activity = 0; activity < count; activity++)
        {
            Work[activity] = draw.Between(1, 15);
            var number = activity < stage ? 0 : draw.Between(1, 2);
            for (var link = 0; link < number; link++)
            {
                var from = activity - draw.Between(stage / 2, 2 * stage);
                links.Add(
                    (Math.Max(0, from), activity, draw.Below(10) == 0 ? draw.Between(1, 10) : 0)
                );
            }
        }

        var idOf = new int[count];
        for (var activity = 0; activity < count; activity++)
        {
            idOf[activity] = activity;
        }

        if (isShuffled)
        {
            Shuffle(idOf.AsSpan(), draw);
            Shuffle(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(links), draw);
            var work = new int[count];
            for (var activity = 0; activity < count; activity++)
            {
                work[idOf[activity]] = Work[activity];
            }

            Work = work;
        }

        From = [.. links.Select(link => idOf[link.From])];
        To = [.. links.Select(link => idOf[link.To])];
        Lag = [.. links.Select(link => link.Lag)];
    }

    public int[] Work { get; }

    public int[] From { get; }

    public int[] To { get; }

    public int[] Lag { get; }

    public int Count => Work.Length;

    public NetworkInput Input()
    {
        var codes = new string[Count];
        for (var activity = 0; activity < Count; activity++)
        {
            codes[activity] = activity.ToString(System.Globalization.CultureInfo.InvariantCulture);
        }

        return new NetworkInput
        {
            Codes = codes,
            Duration = Work,
            Calendar = new int[Count],
            Conditions = ActivityConditions.None(Count),
            Started = NetworkInput.NoDays(Count),
            Finished = NetworkInput.NoDays(Count),
            Remaining = NetworkInput.NoDays(Count),
            From = From,
            To = To,
            Type = new int[From.Length],
            Lag = Lag,
            Calendars = [WorkCalendar.MondayToFriday],
            Start = new DateOnly(2026, 1, 5).DayNumber,
            StatusDay = null,
            LogicHolds = true,
        };
    }

    /// <summary>Links by successor, for activities in topological order.</summary>
    public (int[] InStart, int[] From, int[] Weight) BySuccessor()
    {
        var start = new int[Count + 1];
        foreach (var to in To)
        {
            start[to + 1]++;
        }

        for (var activity = 0; activity < Count; activity++)
        {
            start[activity + 1] += start[activity];
        }

        var next = start[..Count].ToArray();
        var from = new int[From.Length];
        var weight = new int[From.Length];
        for (var link = 0; link < From.Length; link++)
        {
            var k = next[To[link]]++;
            from[k] = From[link];
            weight[k] = Work[From[link]] + Lag[link];
        }

        return (start, from, weight);
    }

    private static void Shuffle<T>(Span<T> values, Draw draw)
    {
        for (var place = values.Length - 1; place > 0; place--)
        {
            var other = draw.Below(place + 1);
            (values[place], values[other]) = (values[other], values[place]);
        }
    }
}
