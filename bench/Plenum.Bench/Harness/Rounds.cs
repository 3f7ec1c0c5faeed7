using System.Diagnostics;

namespace Plenum.Bench.Harness;

/// <summary>What one run took.</summary>
/// <param name="Milliseconds">By the clock.</param>
/// <param name="Processor">Milliseconds of processor time, of all threads together.</param>
/// <param name="Bytes">Allocated in managed memory, by all threads.</param>
internal readonly record struct Cost(double Milliseconds, double Processor, long Bytes);

/// <summary>The runs of one contender.</summary>
internal sealed class Runs(Contender contender)
{
    private readonly List<Cost> costs = [];

    public Contender Contender { get; } = contender;

    public double Median => MedianOf(cost => cost.Milliseconds);

    public double Least => costs.Min(cost => cost.Milliseconds);

    public double Most => costs.Max(cost => cost.Milliseconds);

    public double MedianProcessor => MedianOf(cost => cost.Processor);

    public double MedianBytes => MedianOf(cost => cost.Bytes);

    /// <summary>The last run, whether it counts or not.</summary>
    public Cost? Last { get; private set; }

    public void Add(Cost cost, bool counts)
    {
        Last = cost;
        if (counts)
        {
            costs.Add(cost);
        }
    }

    private double MedianOf(Func<Cost, double> of)
    {
        double[] values = [.. costs.Select(of).Order()];
        var middle = values.Length / 2;
        return values.Length % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
    }
}

/// <summary>
/// Runs the contenders in turn: one run of each makes a round, so that what else the machine does falls on all of
/// them. Rounds before the first that counts warm up code and caches. After every run its answer is compared.
/// </summary>
internal static class Rounds
{
    private const int WarmUp = 2;

    /// <summary>A run shorter than this, in milliseconds, follows one that does not count, on the same data.</summary>
    private const double Short = 50;

    /// <exception cref="InvalidOperationException">Two contenders answer differently.</exception>
    public static IReadOnlyList<Runs> Play(
        IReadOnlyList<Contender> contenders,
        int rounds,
        Action<string> say
    )
    {
        Runs[] all = [.. contenders.Select(contender => new Runs(contender))];
        Dictionary<string, (string Answer, string By)> answers = new(StringComparer.Ordinal);
        for (var round = -WarmUp; round < rounds; round++)
        {
            say(round < 0 ? $"warm-up {round + WarmUp + 1}" : $"round {round + 1} of {rounds}");
            foreach (var runs in all)
            {
                var cost = CostOf(runs.Contender, runs.Last?.Milliseconds < Short);
                Compare(runs.Contender, answers);
                runs.Contender.After?.Invoke();
                runs.Add(cost, counts: round >= 0);
            }
        }

        return all;
    }

    private static Cost CostOf(Contender contender, bool twice)
    {
        contender.Before?.Invoke();
        if (twice && contender.After is null)
        {
            contender.Run();
        }

        // nobody pays for what another has left behind
        GC.Collect();
        GC.WaitForPendingFinalizers();
        var bytes = GC.GetTotalAllocatedBytes(precise: true);
        var processor = Environment.CpuUsage.TotalTime;
        var start = Stopwatch.GetTimestamp();
        contender.Run();
        var time = Stopwatch.GetElapsedTime(start);
        return new Cost(
            time.TotalMilliseconds,
            (Environment.CpuUsage.TotalTime - processor).TotalMilliseconds,
            GC.GetTotalAllocatedBytes(precise: true) - bytes
        );
    }

    private static void Compare(
        Contender contender,
        Dictionary<string, (string Answer, string By)> answers
    )
    {
        if (contender.Answer?.Invoke() is not { } answer)
        {
            return;
        }

        if (!answers.TryGetValue(contender.AnswerGroup, out var first))
        {
            answers.Add(contender.AnswerGroup, (answer, contender.Name));
        }
        else if (first.Answer != answer)
        {
            throw new InvalidOperationException(
                $"{contender.Name} answers {answer}, but {first.By} answered {first.Answer}."
            );
        }
    }
}
