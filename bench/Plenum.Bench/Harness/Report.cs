using System.Globalization;

namespace Plenum.Bench.Harness;

/// <summary>Writes a benchmark's table as Markdown.</summary>
internal static class Report
{
    public static void Write(
        TextWriter to,
        string name,
        Benchmark benchmark,
        IReadOnlyList<Runs> all,
        int rounds
    )
    {
        to.WriteLine($"### {name}");
        to.WriteLine();
        to.WriteLine(benchmark.Question);
        to.WriteLine();
        to.WriteLine(
            $"{benchmark.Data} {rounds} rounds in turn after 2 to warm up; answers compared after every run; a run under "
                + "50 ms follows one that does not count."
        );
        to.WriteLine();
        to.WriteLine(
            "| | median ms | least to most | x floor | x limit | processor ms | allocated MB |"
        );
        to.WriteLine("|---|---:|---:|---:|---:|---:|---:|");
        var floor = LeastOf(all, Role.Floor);
        var limit = LeastOf(all, Role.Limit);
        foreach (var runs in all)
        {
            var part = runs.Contender.PartOf;
            var mark = runs.Contender.Role switch
            {
                Role.Floor => "floor: ",
                Role.Limit => "limit: ",
                _ => "",
            };
            to.WriteLine(
                $"| {mark}{runs.Contender.Name} | {Number(runs.Median)} "
                    + $"| {Number(runs.Least)} to {Number(runs.Most)} "
                    + $"| {Ratio(runs.Median * part, floor)} | {Ratio(runs.Median * part, limit)} "
                    + $"| {Number(runs.MedianProcessor)} | {Number(runs.MedianBytes / 1e6)} |"
            );
        }

        to.WriteLine();
        foreach (var line in benchmark.Below)
        {
            to.WriteLine(line);
        }

        to.WriteLine();
    }

    private static double? LeastOf(IReadOnlyList<Runs> all, Role role)
    {
        var medians = all.Where(runs => runs.Contender.Role == role)
            .Select(runs => runs.Median)
            .ToList();
        return medians.Count == 0 ? null : medians.Min();
    }

    private static string Ratio(double value, double? of) =>
        of is { } divisor ? Number(value / divisor) : "";

    /// <summary>Three digits, which is more than these figures are good for.</summary>
    internal static string Number(double value)
    {
        var decimals =
            value >= 100 ? 0
            : value >= 10 ? 1
            : value >= 1 ? 2
            : 3;
        return value.ToString("F" + decimals, CultureInfo.InvariantCulture);
    }
}
