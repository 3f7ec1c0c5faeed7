using System.Globalization;
using Plenum.Bench;
using Plenum.Bench.Harness;
using Plenum.Bench.Native;

// dotnet run -c Release --project bench/Plenum.Bench [-- --only NAME] [--rounds N] [--seed N] [--divide N]
Dictionary<string, Func<Setting, Benchmark>> benchmarks = new(StringComparer.OrdinalIgnoreCase)
{
    ["roll-up"] = setting => new RollUpBenchmark(setting),
    ["ledger"] = setting => new LedgerBenchmark(setting),
    ["open"] = setting => new OpenBenchmark(setting),
    ["time-phase"] = setting => new TimePhaseBenchmark(setting),
    ["network"] = setting => new NetworkBenchmark(setting),
    ["network-raw"] = setting => new NetworkRawBenchmark(setting),
    ["network-edit"] = setting => new NetworkEditBenchmark(setting),
    ["accounts"] = setting => new AccountsBenchmark(setting),
    ["audit"] = setting => new AuditBenchmark(setting),
    ["matrix"] = setting => new MatrixBenchmark(setting),
    ["edit"] = setting => new EditBenchmark(setting),
};

var only = Option("--only");
if (only is not null && !benchmarks.ContainsKey(only))
{
    Console.Error.WriteLine(
        $"There is no benchmark \"{only}\". Known are {string.Join(", ", benchmarks.Keys)}."
    );
    return 2;
}

var rounds = Number("--rounds", 7);
var seed = (ulong)Number("--seed", 20_260_101);
var divide = Number("--divide", 1);
var folder = Directory.CreateTempSubdirectory("plenum-bench-");
try
{
    var limits = Limits.Build(folder.FullName);
    Machine.Describe(Console.Out, limits, seed);
    foreach (var (name, make) in benchmarks)
    {
        if (only is not null && !name.Equals(only, StringComparison.OrdinalIgnoreCase))
        {
            continue;
        }

        Say(name, "making the data");
        var own = folder.CreateSubdirectory(name);
        using (var benchmark = make(new Setting(seed, divide, limits, own.FullName)))
        {
            var all = Rounds.Play(benchmark.Contenders, rounds, what => Say(name, what));
            Say("", "");
            Report.Write(Console.Out, name, benchmark, all, rounds);
        }

        own.Delete(recursive: true);
    }
}
finally
{
    folder.Delete(recursive: true);
}

return 0;

string? Option(string option)
{
    var at = Array.IndexOf(args, option);
    return at >= 0 && at + 1 < args.Length ? args[at + 1] : null;
}

int Number(string option, int standard) =>
    Option(option) is { } text
        ? int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture)
        : standard;

static void Say(string name, string what)
{
    if (!Console.IsErrorRedirected)
    {
        Console.Error.Write($"\r{name} {what}".PadRight(60));
    }
}
