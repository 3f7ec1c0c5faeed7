using Plenum.Bench.Data;
using Plenum.Bench.Harness;
using Plenum.Core.Network;

namespace Plenum.Bench;

/// <summary>Early and late dates of a network that is ready: links stored in topological order.</summary>
internal sealed class NetworkBenchmark : Benchmark
{
    private readonly DrawnLinks links;
    private readonly int[] inStart;
    private readonly int[] from;
    private readonly int[] weight;
    private readonly int[] early;
    private readonly int[] late;
    private readonly int[][] copies;
    private readonly NetworkModel model;

    public NetworkBenchmark(Setting setting)
    {
        links = new DrawnLinks(setting.Size(1_000_000), setting.Seed, isShuffled: false);
        (inStart, from, weight) = links.BySuccessor();
        early = new int[links.Count];
        late = new int[links.Count];
        copies =
        [
            [.. inStart],
            [.. from],
            [.. weight],
            [.. links.Work],
        ];
        model = NetworkModel.Of(links.Input());
        List<Contender> contenders =
        [
            new("plain copy of the columns", Role.Floor, Copy),
            new("bare loop in C#, unchecked", Role.Limit, BareLoop)
            {
                Answer = () => Places.Of(early, late),
            },
            new("Plenum, forward and backward", Role.Plenum, () => NetworkPass.Run(model))
            {
                Answer = () => Places.Of(model),
            },
        ];
        if (setting.Limits is { } limits)
        {
            contenders.Insert(
                1,
                new(
                    "loop in C++",
                    Role.Limit,
                    () => limits.Network(inStart, from, weight, links.Work, early, late)
                )
                {
                    Answer = () => Places.Of(early, late),
                }
            );
        }

        Contenders = contenders;
    }

    public override string Question =>
        $"Early and late dates of {links.Count} activities with {links.From.Length} links, stored in topological order.";

    public override string Data =>
        "Finish to start, one in ten with a lag, one calendar, drawn from the seed. Inside the clock: from columns in memory to "
        + "columns that are there already; total float is their difference.";

    public override IReadOnlyList<Contender> Contenders { get; }

    private void Copy()
    {
        inStart.CopyTo(copies[0], 0);
        from.CopyTo(copies[1], 0);
        weight.CopyTo(copies[2], 0);
        links.Work.CopyTo(copies[3], 0);
        links.Work.CopyTo(early, 0);
        links.Work.CopyTo(late, 0);
    }

    /// <summary>The two passes over plain memory, without checks of any kind.</summary>
    private unsafe void BareLoop()
    {
        fixed (
            int* starts = inStart,
                froms = from,
                weights = weight,
                work = links.Work,
                earlies = early,
                lates = late
        )
        {
            unchecked // a loop to compare with: the data fit
            {
                var count = links.Count;
                var finish = 0;
                for (var activity = 0; activity < count; activity++)
                {
                    var at = 0;
                    for (var k = starts[activity]; k < starts[activity + 1]; k++)
                    {
                        var asked = earlies[froms[k]] + weights[k];
                        at = asked > at ? asked : at;
                    }

                    earlies[activity] = at;
                    finish = at + work[activity] > finish ? at + work[activity] : finish;
                }

                for (var activity = 0; activity < count; activity++)
                {
                    lates[activity] = finish - work[activity];
                }

                for (var activity = count - 1; activity >= 0; activity--)
                {
                    var at = lates[activity];
                    for (var k = starts[activity]; k < starts[activity + 1]; k++)
                    {
                        var allowed = at - weights[k];
                        var before = lates + froms[k];
                        *before = allowed < *before ? allowed : *before;
                    }
                }
            }
        }
    }
}

/// <summary>Answers as working days from the beginning of the project.</summary>
internal static class Places
{
    public static string Of(params ReadOnlySpan<int[]> columns)
    {
        var wide = new long[columns.Length][];
        for (var column = 0; column < wide.Length; column++)
        {
            wide[column] = Array.ConvertAll(columns[column], place => (long)place);
        }

        return Checksum.Of(wide);
    }

    /// <summary>Of a model of ordinary work in one calendar, by activity.</summary>
    public static string Of(NetworkModel model)
    {
        var first = model.Calendars[0].PlaceOf(model.Input.FirstOpenDay);
        var early = new int[model.Early.Length];
        var late = new int[early.Length];
        for (var rank = 0; rank < early.Length; rank++)
        {
            early[model.Order[rank]] = model.Early[rank] - first;
            late[model.Order[rank]] = model.Late[rank] - first;
        }

        return Of(early, late);
    }
}
