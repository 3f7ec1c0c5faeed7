using System.Diagnostics;
using System.Globalization;
using Plenum.Bench.Data;
using Plenum.Bench.Harness;
using Plenum.Core.Network;
using Plenum.Core.Network.Live;

namespace Plenum.Bench;

/// <summary>A network kept right through 1 000 edits: 500, and their opposites in reverse.</summary>
internal sealed class NetworkEditBenchmark : Benchmark
{
    private const int Edits = 1_000;

    private readonly DrawnLinks links;
    private readonly NetworkModel model;
    private readonly LiveNetwork live;
    private readonly List<(NetworkEdit? Edit, int Added)> there = [];
    private readonly List<double> microseconds = [];
    private readonly List<double> moved = [];
    private readonly List<double> passes = [];
    private readonly HashSet<int> gone = [];
    private readonly double datesBytes;
    private readonly double liveBytes;

    public NetworkEditBenchmark(Setting setting)
    {
        links = new DrawnLinks(setting.Size(1_000_000), setting.Seed, isShuffled: true);
        var input = links.Input();
        var empty = GC.GetTotalMemory(forceFullCollection: true);
        var dates = NetworkDates.Of(input);
        datesBytes = GC.GetTotalMemory(forceFullCollection: true) - empty;
        live = new LiveNetwork(dates);
        liveBytes = GC.GetTotalMemory(forceFullCollection: true) - empty - datesBytes;
        model = NetworkModel.Of(input);
        var draw = new Draw(setting.Seed + 1);
        for (var number = 0; number < Edits / 2; number++)
        {
            there.Add(Drawn(draw));
        }

        var copy = new int[links.Count];
        Contenders =
        [
            new("plain copy of the late dates", Role.Floor, () => model.Late.CopyTo(copy, 0)),
            new("Plenum, the whole network, ready", Role.Limit, WholePass),
            new($"Plenum, {Edits} edits", Role.Plenum, AllEdits),
        ];
    }

    public override string Question =>
        $"{Edits} edits of a network of {links.Count} activities and {links.From.Length} links, its dates right after each.";

    public override string Data =>
        "Half of the edits change a duration by one to five working days, a quarter adds a link, a quarter takes one out; then each is taken back. "
        + "The figures of the row are of all edits together; those of one stand below.";

    public override IReadOnlyList<Contender> Contenders { get; }

    public override IEnumerable<string> Notes
    {
        get
        {
            // the first two runs warm up; the very first link that is added makes room for more
            var sorted = microseconds.Skip(2 * Edits).Order().ToList();
            var worst = microseconds.Chunk(Edits).Skip(2).Select(run => run.Max()).Order().ToList();
            var pass = Part([.. passes.Order()], 0.5);
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"One edit: median {Report.Number(Part(sorted, 0.5))} µs, 90 % within {Report.Number(Part(sorted, 0.9))} µs, 99 % within {Report.Number(Part(sorted, 0.99))} µs."
            );
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"The worst of {Edits}: {Report.Number(Part(worst, 0.5))} µs in the median run, {Report.Number(worst[^1])} µs in the worst, {Report.Number(microseconds.Take(2 * Edits).Max())} µs while warming up."
            );
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"A pass over everything: median {Report.Number(pass)} µs, as long as {Report.Number(pass / Part(sorted, 0.5))} median edits or {Report.Number(pass / Part(worst, 0.5))} of the worst."
            );
            var byMoves = moved.Order().ToList();
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"Activities whose early finish an edit moved: median {Report.Number(Part(byMoves, 0.5))}, most {Report.Number(byMoves[^1])}."
            );
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"Memory for an activity with its links: {Report.Number(datesBytes / links.Count)} bytes of dates beside the input, {Report.Number(liveBytes / links.Count)} more for the live network."
            );
        }
    }

    private static double Part(List<double> sorted, double share) =>
        sorted[(int)(share * (sorted.Count - 1))];

    private (NetworkEdit? Edit, int Added) Drawn(Draw draw)
    {
        var activity = draw.Below(links.Count);
        switch (draw.Below(4))
        {
            case 0:
                var other = draw.Below(links.Count);
                // from the one that comes first, so that it closes no ring
                var isForward = model.RankOf[activity] < model.RankOf[other];
                var link = new LinkFacts(
                    isForward ? activity : other,
                    isForward ? other : activity,
                    LinkType.FinishToStart,
                    0
                );
                return (new NetworkEdit { AddedLinks = [link] }, 1);
            case 1:
                return (null, 0);
            default:
                var facts = live.Facts(activity);
                return (
                    new NetworkEdit
                    {
                        Activities =
                        [
                            (
                                activity,
                                facts with
                                {
                                    Duration = facts.Duration + draw.Between(1, 5),
                                }
                            ),
                        ],
                    },
                    0
                );
        }
    }

    private void WholePass()
    {
        var clock = Stopwatch.GetTimestamp();
        NetworkPass.Run(model);
        passes.Add(Stopwatch.GetElapsedTime(clock).TotalMicroseconds);
    }

    private void AllEdits()
    {
        var draw = new Draw(7);
        var back = new Stack<NetworkEdit>();
        foreach (var (edit, added) in there)
        {
            if (edit is null)
            {
                var link = SomeLink(draw);
                back.Push(new NetworkEdit { AddedLinks = [live.Link(link)] });
                Apply(new NetworkEdit { RemovedLinks = [link] });
                gone.Add(link);
                continue;
            }

            back.Push(
                new NetworkEdit
                {
                    Activities =
                    [
                        .. edit.Activities.Select(one => (one.Activity, live.Facts(one.Activity))),
                    ],
                    RemovedLinks = [.. Enumerable.Range(live.LinkCount, added)],
                }
            );
            Apply(edit);
        }

        while (back.TryPop(out var edit))
        {
            Apply(edit);
        }
    }

    private int SomeLink(Draw draw)
    {
        int link;
        do
        {
            link = draw.Below(links.From.Length);
        } while (gone.Contains(link));

        return link;
    }

    private void Apply(NetworkEdit edit)
    {
        var clock = Stopwatch.GetTimestamp();
        var moves = live.Apply(edit);
        microseconds.Add(Stopwatch.GetElapsedTime(clock).TotalMicroseconds);
        moved.Add(moves.Count);
    }
}
