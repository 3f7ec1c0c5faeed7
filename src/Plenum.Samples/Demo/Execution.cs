using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo;

/// <summary>
/// Lets the work happen: packages start late and take longer, more so in some accounts, until each account has earned
/// at the status date what the plant's tables say.
/// </summary>
internal static class Execution
{
    /// <summary>Least and most that an account's own delays are multiplied with.</summary>
    private const double LeastDelay = -2.5;
    private const double MostDelay = 12;

    /// <summary>Who works first: what comes later waits for the actual dates of what comes earlier.</summary>
    private static readonly string[] _rank =
    [
        "SIT",
        "CIV",
        "MAR",
        "ELE",
        "MEC",
        "PRO",
        "PIP",
        "INS",
    ];

    public static void Run(DemoPlan plan, ulong seed)
    {
        var order = Schedule.InOrder(plan).ToLookup(package => package.Component.Account);
        var holders = plan.Holders.OrderBy(account => Array.IndexOf(_rank, account.Unit)).ToList();
        var listed = holders.Sum(account => account.Earned ?? 0);
        var open = holders.Where(account => account.Earned is null).Sum(Budgets.PlannedValue);
        var left = (double)(DemoProject.EarnedValue - listed);
        foreach (var account in holders)
        {
            var random = new SeededRandom(seed, "execution " + account.Code);
            var planned = Budgets.PlannedValue(account);
            var isListed = account.Earned is not null;
            account.Earned ??= (long)(planned * (left / open) * random.Between(0.955, 1.045));
            var packages = order[account].ToList();
            var delays = packages.ConvertAll(_ =>
                (random.Between(-1.0, 5.0), random.Between(-0.12, 0.3))
            );
            var wobbles = packages.ConvertAll(_ => random.Between(-0.4, 0.4));
            packages.ForEach(package => Prepare(package, random));
            Reach(account, packages, delays, wobbles);
            Trim(account);
            if (!isListed)
            {
                open -= planned;
                left -= EarnedNow(account);
            }
        }
    }

    /// <summary>Earned value of an account at the status date, minor units.</summary>
    public static double EarnedNow(Account account) =>
        account.Packages.Sum(package =>
            package.Budget * Progress.EarnedShare(package, DemoTime.Closed - 1)
        );

    private static void Prepare(Package package, SeededRandom random)
    {
        package.Progress.IsAssumed = package.Technique == "percent" && random.Chance(9);
        package.Progress.LastReport = DemoProject.StaleStatus.Contains(package.Code) ? 13 : null;
        if (package.Progress.LastReport is not null)
        {
            package.Progress.IsAssumed = false;
        }
        package.Progress.IsQuantityRevised =
            package.Technique == "units" && package.Progress.LastReport is null && random.Chance(8);
    }

    /// <summary>Halves the range of the account's delay until what is earned is what is wanted.</summary>
    private static void Reach(
        Account account,
        List<Package> packages,
        List<(double Start, double Stretch)> delays,
        List<double> wobbles
    )
    {
        var low = LeastDelay;
        var high = MostDelay;
        for (var round = 0; round < 30; round++)
        {
            var middle = (low + high) / 2;
            for (var i = 0; i < packages.Count; i++)
            {
                Work(packages[i], middle * delays[i].Start, 1 + (middle * delays[i].Stretch));
                Report(packages[i], wobbles[i]);
            }
            if (EarnedNow(account) > account.Earned)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }
    }

    private static void Work(Package package, double delay, double stretch)
    {
        var progress = package.Progress;
        var days = Math.Max(1, (int)(package.Days * Math.Max(0.5, stretch)));
        var start = Math.Max(0, package.Start + (int)delay);
        foreach (var link in package.Into.Where(link => link.From.Progress.Start != int.MaxValue))
        {
            var from = link.From.Progress;
            start = Math.Max(start, Schedule.StartAllowed(link, from.Start, from.Finish, days));
        }
        if (DemoProject.OpenAtStatus.Contains(package.Code))
        {
            start = Math.Min(start, DemoTime.Periods[12].LastWorkDay - 3);
            days = Math.Max(days, DemoTime.StatusWorkDay - start + 25);
        }
        if (DemoProject.LateChain.TryGetValue(package.Code, out var late))
        {
            start = Math.Min(start, DemoTime.StatusWorkDay - 20);
            days = package.Finish + late - start + 1;
        }
        progress.Start = start;
        progress.Finish = start + days - 1;
    }

    private static void Report(Package package, double wobble)
    {
        var progress = package.Progress;
        progress.Done = new double[DemoTime.Closed];
        progress.Percent = new int[DemoTime.Closed];
        for (var period = 0; period < DemoTime.Closed; period++)
        {
            progress.Done[period] = DoneAt(package, period, wobble);
            progress.Percent[period] = PercentAt(package, period);
        }
    }

    private static double DoneAt(Package package, int period, double wobble)
    {
        var day = DemoTime.Periods[period].LastWorkDay;
        if (package.Base is { } followed)
        {
            return followed.Progress.Done[period];
        }
        return package.Technique == "loe" && package.Progress.Start <= day
            ? Techniques.PlannedShare(package, day)
            : package.Progress.DoneShare(day, wobble);
    }

    private static int PercentAt(Package package, int period)
    {
        var progress = package.Progress;
        var day = DemoTime.Periods[period].LastWorkDay;
        if (progress.Start > day)
        {
            return -1;
        }
        if (progress.Finish <= day)
        {
            return 100;
        }
        if (progress.LastReport < period)
        {
            return progress.Percent[progress.LastReport.Value];
        }
        var done =
            progress.IsAssumed && period == DemoTime.Closed - 1
                ? Techniques.PlannedShare(package, day)
                : progress.Done[period];
        return Math.Clamp((int)(done * 100), 0, 97);
    }

    /// <summary>The last difference goes into the percentages of the last period, a few points each.</summary>
    private static void Trim(Account account)
    {
        const int Most = 9;
        const int Last = DemoTime.Closed - 1;
        var left = account.Earned!.Value - EarnedNow(account);
        var open = account.Packages.Where(package =>
            package is { Technique: "percent", Budget: > 0 }
            && package.Progress is { IsAssumed: false, LastReport: null }
            && package.Progress.Percent[Last] is >= 0 and < 100
        );
        foreach (
            var package in open.OrderByDescending(package => package.Budget)
                .ThenBy(package => package.Index)
        )
        {
            var percent = package.Progress.Percent;
            var step = Math.Clamp((int)(left * 100 / package.Budget), -Most, Most);
            var before = Math.Max(1, percent[Last - 1]);
            var after = Math.Clamp(percent[Last] + step, Math.Min(before, percent[Last]), 97);
            left -= (after - percent[Last]) * package.Budget / 100.0;
            percent[Last] = after;
        }
    }
}
