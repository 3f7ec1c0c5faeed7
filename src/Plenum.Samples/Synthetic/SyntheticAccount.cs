using Plenum.Samples.Foundation;
using static Plenum.Samples.Synthetic.SyntheticWords;

namespace Plenum.Samples.Synthetic;

/// <summary>
/// All packages of one control account, made from the project's seed and the account's number: the same each time.
/// </summary>
internal sealed class SyntheticAccount(SyntheticTree tree, ulong seed)
{
    private const int LatestStart = 400;

    private readonly SeededRandom _random = new(seed);
    private readonly List<SyntheticPackage> _packages = [];
    private readonly int[] _starts = new int[Steps.Length];

    /// <summary>The packages of the account; valid until the next <see cref="Make"/>.</summary>
    public ReadOnlySpan<SyntheticPackage> Packages =>
        System.Runtime.InteropServices.CollectionsMarshal.AsSpan(_packages)[..Count];

    public int Count { get; private set; }

    public long Budget { get; private set; }

    public void Make(int account)
    {
        _random.Restart(SeededRandom.Mix(seed ^ ((ulong)account << 20)));
        Count = tree.PackagesOf(account);
        while (_packages.Count < Count)
        {
            _packages.Add(new SyntheticPackage());
        }
        Array.Clear(_starts);
        Budget = 0;
        var start = _random.Below(LatestStart);
        for (var first = 0; first < Count; first += SyntheticTree.PackagesPerPart)
        {
            var part = Packages.Slice(
                first,
                Math.Min(SyntheticTree.PackagesPerPart, Count - first)
            );
            var unit = _random.Unit();
            var size = 200_000 + (3_000_000 * unit * unit * unit);
            for (var step = 0; step < part.Length; step++)
            {
                Plan(part, step, start);
                Fund(part[step], size);
                Work(part, step);
                Budget += part[step].Budget;
            }
            start += _random.Between(1, 4);
        }
    }

    /// <summary>Steps that must be done before a step starts; the second one may be none (-1).</summary>
    public static (int First, int Second) Before(int step) =>
        step switch
        {
            Specification => (Design, -1),
            Purchase => (Specification, -1),
            Manufacture => (Purchase, -1),
            Delivery => (Manufacture, -1),
            CivilWorks => (Design, -1),
            Erection => (Delivery, CivilWorks),
            Commissioning => (Erection, -1),
            _ => (-1, -1),
        };

    /// <summary>Inspection and supervision last as long as this step; -1 for all others.</summary>
    public static int Accompanies(int step) =>
        step switch
        {
            Inspection => Manufacture,
            Supervision => Erection,
            _ => -1,
        };

    /// <summary>Steps that the next part of the account starts no earlier than this one.</summary>
    public static bool PassesOn(int step) =>
        step is Design or Manufacture or CivilWorks or Erection or Commissioning;

    private void Plan(ReadOnlySpan<SyntheticPackage> part, int step, int start)
    {
        var package = part[step];
        package.Step = step;
        if (Accompanies(step) is >= 0 and var other)
        {
            package.Start = part[other].Start;
            package.Finish = part[other].Finish;
        }
        else
        {
            var (first, second) = Before(step);
            package.Start = Math.Max(
                first < 0 ? start : part[first].Finish + 1,
                PassesOn(step) ? _starts[step] : 0
            );
            if (second >= 0)
            {
                package.Start = Math.Max(package.Start, part[second].Finish + 1);
            }
            package.Finish =
                package.Start + _random.Between(package.Kind.Shortest, package.Kind.Longest) - 1;
        }
        _starts[step] = package.Start;
        package.Technique = TechniqueOf(step, _random.Below(100));
        package.Spread = package.Technique is "percent" or "units" or "items"
            ? SpreadOf(_random.Below(100))
            : "even";
        package.Quantity = _random.Between(12, 240);
    }

    private void Fund(SyntheticPackage package, double size)
    {
        const long Whole = 100;
        var budget = (long)(size * package.Kind.Share / 1000 * _random.Between(0.7, 1.3)) * Whole;
        package.OtherBudget =
            package.Kind.OtherCost.Length == 0
                ? 0
                : budget * _random.Between(10, 35) / 100 / Whole * Whole;
        package.MainBudget = budget - package.OtherBudget;
        package.CostFactor = _random.Between(0.82, 1.28);
    }

    private void Work(ReadOnlySpan<SyntheticPackage> part, int step)
    {
        var package = part[step];
        if (Accompanies(step) is >= 0 and var other)
        {
            package.ActualStart = part[other].ActualStart;
            package.ActualFinish = part[other].ActualFinish;
            return;
        }
        var (first, second) = Before(step);
        var start = package.Start + _random.Between(-2, 12);
        start = Math.Max(start, first < 0 ? 0 : part[first].ActualFinish + 1);
        start = Math.Max(start, second < 0 ? 0 : part[second].ActualFinish + 1);
        package.ActualStart = start;
        package.ActualFinish =
            start + Math.Max(1, (int)(package.Days * _random.Between(0.85, 1.25))) - 1;
    }

    private static string TechniqueOf(int step, int kind) =>
        step switch
        {
            Design => kind switch
            {
                < 30 => "items",
                < 60 => "milestones",
                _ => "percent",
            },
            Specification => "50/50",
            Purchase => kind < 70 ? "0/100" : "20/80",
            Manufacture => kind < 70 ? "milestones" : "percent",
            Inspection => "apportioned",
            Delivery => kind < 60 ? "25/75" : "0/100",
            CivilWorks => kind < 55 ? "units" : "percent",
            Erection => kind switch
            {
                < 45 => "units",
                < 65 => "items",
                _ => "percent",
            },
            Supervision => "loe",
            _ => kind < 40 ? "milestones" : "percent",
        };

    private static string SpreadOf(int kind) =>
        kind switch
        {
            < 40 => "even",
            < 75 => "s_shaped",
            < 84 => "rising",
            < 92 => "falling",
            _ => "periods",
        };
}
