namespace Plenum.Samples.Demo;

/// <summary>What has really happened with a package, as far as the status date, and what was said of it.</summary>
internal sealed class Progress
{
    /// <summary>First and last day of the work as it turns out; either may lie after the status date.</summary>
    public int Start { get; set; } = int.MaxValue;
    public int Finish { get; set; } = int.MaxValue;

    /// <summary>For percent complete: what stands reported at the end of each closed period; -1 before the start.</summary>
    public int[] Percent { get; set; } = [];

    /// <summary>The share that was really done at the end of each closed period, whatever the technique says.</summary>
    public double[] Done { get; set; } = [];

    /// <summary>The last period in which anything was reported (from 0); null for no limit.</summary>
    public int? LastReport { get; set; }

    /// <summary>The last percentage is taken over from the plan, if that is near the truth.</summary>
    public bool IsAssumed { get; set; }

    /// <summary>A larger quantity is forecast in the last period.</summary>
    public bool IsQuantityRevised { get; set; }

    /// <summary>Cost still to come as reported per closed period, minor units; null where nothing was reported.</summary>
    public long?[] StillToCome { get; } = new long?[DemoTime.Closed];

    public bool IsStarted => Start <= DemoTime.StatusWorkDay;
    public bool IsFinished => Finish <= DemoTime.StatusWorkDay;
    public bool IsOpen => IsStarted && !IsFinished;

    public double DoneShare(int day, double wobble)
    {
        if (day < Start)
        {
            return 0;
        }
        if (day >= Finish)
        {
            return 1;
        }
        var x = (double)(day - Start + 1) / (Finish - Start + 1);
        return x + (wobble * x * (1 - x));
    }

    /// <summary>The working day on which a milestone of the package is reached; it may lie after the status date.</summary>
    public int DayOf(Package package, int milestone)
    {
        var reached = package.Milestones.Take(milestone + 1).Sum(step => step.Weight);
        return milestone == package.Milestones.Count - 1
            ? Finish
            : Math.Max(Start, Start + ((Finish - Start + 1) * reached / 100) - 1);
    }

    /// <summary>Earned share at the end of a closed period, by the package's technique.</summary>
    public static double EarnedShare(Package package, int period)
    {
        if (package.Base is { } followed)
        {
            return EarnedShare(followed, period);
        }
        var progress = package.Progress;
        if (package.Technique == "loe")
        {
            return Techniques.PlannedShare(package, DemoTime.Periods[period].LastWorkDay);
        }
        period = Math.Min(period, progress.LastReport ?? period);
        var day = DemoTime.Periods[period].LastWorkDay;
        if (day < progress.Start)
        {
            return 0;
        }
        if (day >= progress.Finish)
        {
            return 1;
        }
        return package.Technique switch
        {
            "percent" => progress.Percent[period] / 100.0,
            "units" => (double)UnitsDone(package, period) / QuantityAt(package, period),
            "milestones" => package
                .Milestones.Where((_, i) => progress.DayOf(package, i) <= day)
                .Sum(m => m.Weight) / 100.0,
            "items" => ItemShare(package, period),
            _ => Techniques.FirstOfPair(package.Technique)!.Value / 100.0,
        };
    }

    /// <summary>The quantity that counts at the end of a period: that of the plan, or what has been forecast since.</summary>
    public static int QuantityAt(Package package, int period) =>
        package.Progress.IsQuantityRevised && period == DemoTime.Closed - 1
            ? package.Quantity!.Value + (package.Quantity!.Value / 12) + 1
            : package.Quantity!.Value;

    public static int UnitsDone(Package package, int period) =>
        package.Progress.IsFinishedAt(period)
            ? package.Quantity!.Value
            : Math.Min(
                package.Quantity!.Value - 1,
                (int)(package.Quantity!.Value * package.Progress.Done[period])
            );

    /// <summary>The percentage of the last closed period is that of the plan.</summary>
    public static bool IsTakenFromPlan(Package package)
    {
        const double Near = 0.12;
        var difference =
            Techniques.PlannedShare(package, DemoTime.StatusWorkDay)
            - package.Progress.Done[DemoTime.Closed - 1];
        return package.Progress.IsAssumed && difference is > -Near and < Near;
    }

    public bool IsFinishedAt(int period) => Finish <= DemoTime.Periods[period].LastWorkDay;

    /// <summary>
    /// How much of each step of an item is done: the items one after another, of each its steps one after another.
    /// </summary>
    public static int StepQuantity(Package package, int item, int step, int period)
    {
        var steps = CreditRules.Of(package.CreditRule);
        var place = package.Progress.Done[period] * package.Items.Count * steps.Count;
        var share = Math.Clamp(place - ((item * steps.Count) + step), 0, 1);
        var quantity = package.Items[item].Quantity;
        return package.Progress.IsFinishedAt(period) ? quantity : (int)(quantity * share);
    }

    private static double ItemShare(Package package, int period)
    {
        double earned = 0;
        var steps = CreditRules.Of(package.CreditRule);
        for (var item = 0; item < package.Items.Count; item++)
        {
            for (var step = 0; step < steps.Count; step++)
            {
                var done =
                    (double)StepQuantity(package, item, step, period)
                    / package.Items[item].Quantity;
                earned += package.Items[item].Hours * steps[step].Percent / 100.0 * done;
            }
        }
        return earned / package.Items.Sum(item => item.Hours);
    }
}

/// <summary>Rules of credit: by which steps bulk work earns.</summary>
internal static class CreditRules
{
    public static IReadOnlyDictionary<
        string,
        IReadOnlyList<(string Step, int Percent)>
    > All { get; } =
        new SortedDictionary<string, IReadOnlyList<(string, int)>>(StringComparer.Ordinal)
        {
            ["cable"] = [("pulled", 60), ("terminated", 30), ("tested", 10)],
            ["drawing"] = [("drafted", 50), ("checked", 30), ("issued", 20)],
            ["loop"] = [("wired", 30), ("simulated", 50), ("signed", 20)],
            ["pipe"] = [("erected", 40), ("welded", 40), ("tested", 20)],
        };

    public static IReadOnlyList<(string Step, int Percent)> Of(string rule) => All[rule];
}
