using Google.OrTools.LinearSolver;
using Plenum.Bench.Data;
using Plenum.Bench.Harness;
using Plenum.Core.Network;
using QuikGraph;
using QuikGraph.Algorithms;

namespace Plenum.Bench;

/// <summary>Early and late dates from raw links in no order, beside a graph library and a linear solver.</summary>
internal sealed class NetworkRawBenchmark : Benchmark
{
    private const int GraphIsPartOf = 10;
    private const int SolverIsPartOf = 100;

    private readonly DrawnLinks links;
    private readonly NetworkInput input;
    private NetworkModel? ready;

    public NetworkRawBenchmark(Setting setting)
    {
        links = new DrawnLinks(setting.Size(1_000_000), setting.Seed, isShuffled: true);
        input = links.Input();
        var (early, late) = (new int[links.Count], new int[links.Count]);
        var (copyOfFrom, copyOfTo) = (new int[links.From.Length], new int[links.To.Length]);
        List<Contender> contenders =
        [
            new(
                "plain copy of the links",
                Role.Floor,
                () =>
                {
                    links.From.CopyTo(copyOfFrom, 0);
                    links.To.CopyTo(copyOfTo, 0);
                }
            ),
            new("Plenum, from raw links", Role.Plenum, () => ready = Computed(input))
            {
                Answer = () => Places.Of(ready!),
            },
        ];
        if (setting.Limits is { } limits)
        {
            contenders.Insert(
                1,
                new(
                    "the same in C++",
                    Role.Limit,
                    () =>
                        limits.NetworkRaw(links.From, links.To, links.Lag, links.Work, early, late)
                )
                {
                    Answer = () => Places.Of(early, late),
                }
            );
        }

        Add(contenders, setting, GraphIsPartOf, "QuikGraph, sorted topologically", WithGraph);
        Add(
            contenders,
            setting,
            SolverIsPartOf,
            "OR-Tools, two linear programs (GLOP)",
            WithSolver
        );
        Contenders = contenders;
    }

    public override string Question =>
        $"Early and late dates of {links.Count} activities from {links.From.Length} raw links, both in no order.";

    public override string Data =>
        "Finish to start, one in ten with a lag, one calendar, drawn from the seed. Inside the clock: from links as they come to "
        + "early and late dates by activity; Plenum also checks for rings and reads conditions, calendars and progress.";

    public override IReadOnlyList<Contender> Contenders { get; }

    private static NetworkModel Computed(NetworkInput input)
    {
        var model = NetworkModel.Of(input);
        NetworkPass.Run(model);
        return model;
    }

    /// <summary>A tool and Plenum on a part of the work.</summary>
    private static void Add(
        List<Contender> to,
        Setting setting,
        int partOf,
        string name,
        Action<DrawnLinks, int[], int[]> compute
    )
    {
        var part = new DrawnLinks(setting.Size(1_000_000 / partOf), setting.Seed, isShuffled: true);
        var (early, late) = (new int[part.Count], new int[part.Count]);
        to.Add(
            new(
                $"{name}, {part.Count} activities; ratios times {partOf}",
                Role.Tool,
                () => compute(part, early, late)
            )
            {
                Answer = () => Places.Of(early, late),
                PartOf = partOf,
            }
        );
        var partInput = part.Input();
        NetworkModel? computed = null;
        to.Add(
            new(
                $"Plenum, {part.Count} activities; ratios times {partOf}",
                Role.Plenum,
                () => computed = Computed(partInput)
            )
            {
                Answer = () => Places.Of(computed!),
                PartOf = partOf,
            }
        );
    }

    private static void WithGraph(DrawnLinks links, int[] early, int[] late)
    {
        var graph = new AdjacencyGraph<int, STaggedEdge<int, int>>(allowParallelEdges: true);
        for (var activity = 0; activity < links.Count; activity++)
        {
            graph.AddVertex(activity);
        }

        for (var link = 0; link < links.From.Length; link++)
        {
            graph.AddEdge(
                new STaggedEdge<int, int>(links.From[link], links.To[link], links.Lag[link])
            );
        }

        int[] order = [.. graph.TopologicalSort()];
        Array.Clear(early);
        var finish = 0;
        foreach (var activity in order)
        {
            var end = early[activity] + links.Work[activity];
            finish = Math.Max(finish, end);
            foreach (var edge in graph.OutEdges(activity))
            {
                early[edge.Target] = Math.Max(early[edge.Target], end + edge.Tag);
            }
        }

        for (var place = order.Length - 1; place >= 0; place--)
        {
            var activity = order[place];
            var end = finish;
            foreach (var edge in graph.OutEdges(activity))
            {
                end = Math.Min(end, late[edge.Target] - edge.Tag);
            }

            late[activity] = end - links.Work[activity];
        }
    }

    private static void WithSolver(DrawnLinks links, int[] early, int[] late)
    {
        var finish = Solve(links, double.PositiveInfinity, isLate: false, early);
        Solve(links, finish, isLate: true, late);
    }

    /// <returns>The latest finish.</returns>
    private static int Solve(DrawnLinks links, double finish, bool isLate, int[] starts)
    {
        using var solver = Solver.CreateSolver("GLOP");
        var variables = new Variable[links.Count];
        using var objective = solver.Objective();
        for (var activity = 0; activity < variables.Length; activity++)
        {
            variables[activity] = solver.MakeNumVar(0, finish - links.Work[activity], "");
            objective.SetCoefficient(variables[activity], 1);
        }

        objective.SetOptimizationDirection(isLate);
        for (var link = 0; link < links.From.Length; link++)
        {
            using var asked = solver.MakeConstraint(
                links.Work[links.From[link]] + links.Lag[link],
                double.PositiveInfinity
            );
            asked.SetCoefficient(variables[links.To[link]], 1);
            asked.SetCoefficient(variables[links.From[link]], -1);
        }

        if (solver.Solve() != Solver.ResultStatus.OPTIMAL)
        {
            throw new InvalidOperationException("The solver found no best solution.");
        }

        var latest = 0;
        for (var activity = 0; activity < variables.Length; activity++)
        {
            starts[activity] = (int)Math.Round(variables[activity].SolutionValue());
            latest = Math.Max(latest, starts[activity] + links.Work[activity]);
        }

        return latest;
    }
}
