using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo;

/// <summary>What the work has cost up to the status date, package by package, and what managers say is still to come.</summary>
internal static class Costs
{
    private const int Last = DemoTime.Closed - 1;

    public static void Make(DemoPlan plan, ulong seed)
    {
        var listed = plan.Holders.Sum(account => account.CostVariance ?? 0);
        var left = DemoProject.EarnedValue - DemoProject.ActualCost - listed;
        var open = plan
            .Holders.Where(account => account.CostVariance is null)
            .Sum(Execution.EarnedNow);
        foreach (var account in plan.Holders)
        {
            var random = new SeededRandom(seed, "cost " + account.Code);
            var earned = Execution.EarnedNow(account);
            account.Charged =
                account.Exists && random.Chance(24) ? random.Between(900, 3600) * 1000L : 0;
            if (account.CostVariance is null)
            {
                var variance = earned * ((left / open) + random.Between(-0.085, 0.085));
                account.CostVariance = (long)variance;
                left -= account.CostVariance.Value;
                open -= earned;
            }
            if (account.Offset is { } offset)
            {
                account.Charged = 0;
                Offset(account, offset, random);
            }
            else
            {
                Spend(account, random);
            }
        }
        ReportStillToCome(plan, seed);
    }

    /// <summary>Earned value less actual cost of a package at the status date, minor units.</summary>
    public static double Variance(Package package) =>
        (package.Budget * Progress.EarnedShare(package, Last)) - package.ActualCost;

    /// <summary>Every package costs what was done of it, dearer or cheaper by the account's one factor.</summary>
    private static void Spend(Account account, SeededRandom random)
    {
        var weights = account.Packages.ConvertAll(package =>
            package.Budget * package.Progress.Done[Last] * random.Between(0.93, 1.07)
        );
        var sum = weights.Sum();
        var wanted = Execution.EarnedNow(account) - account.CostVariance!.Value - account.Charged;
        for (var i = 0; i < weights.Count && sum > 0; i++)
        {
            account.Packages[i].ActualCost = (long)(weights[i] * wanted / sum);
        }
    }

    /// <summary>
    /// Half of the account's packages gain the offset, the other half lose as much: the net shows nothing of it.
    /// </summary>
    private static void Offset(Account account, long offset, SeededRandom random)
    {
        var gaining = new List<Package>();
        var losing = new List<Package>();
        double gainingEarned = 0;
        double losingEarned = 0;
        double unearned = 0;
        var started = account.Packages.Where(package => package.Progress.Done[Last] > 0);
        foreach (var package in started.OrderByDescending(Earned).ThenBy(package => package.Index))
        {
            var earned = Earned(package);
            if (earned <= 0)
            {
                package.ActualCost = (long)(package.Budget * package.Progress.Done[Last] * 0.5);
                unearned += package.ActualCost;
            }
            else if (gainingEarned <= losingEarned)
            {
                gaining.Add(package);
                gainingEarned += earned;
            }
            else
            {
                losing.Add(package);
                losingEarned += earned;
            }
        }
        Share(gaining, offset, random);
        Share(losing, -(offset - account.CostVariance!.Value - unearned), random);
    }

    private static double Earned(Package package) =>
        package.Budget * Progress.EarnedShare(package, Last);

    private static void Share(List<Package> packages, double variance, SeededRandom random)
    {
        var weights = packages.ConvertAll(package => Earned(package) * random.Between(0.6, 1.4));
        var sum = weights.Sum();
        for (var i = 0; i < packages.Count; i++)
        {
            packages[i].ActualCost = (long)(Earned(packages[i]) - (variance * weights[i] / sum));
        }
    }

    /// <summary>
    /// Managers report cost still to come for most open packages, together so that the estimate at completion is
    /// <see cref="DemoProject.EstimateAtCompletion"/>.
    /// </summary>
    private static void ReportStillToCome(DemoPlan plan, ulong seed)
    {
        var random = new SeededRandom(seed, "still to come");
        var open = plan.Packages.FindAll(package =>
            package.Progress.IsOpen && !package.IsFollowing && package.Progress.LastReport is null
        );
        var reporting = open.FindAll(package =>
            random.Chance(70)
            && !DemoProject.StaleEstimates.Contains(package.Code)
            && !DemoProject.LowEstimates.Contains(package.Code)
        );
        foreach (
            var package in open.Where(package => DemoProject.LowEstimates.Contains(package.Code))
        )
        {
            package.Progress.StillToCome[Last] = (long)(Remaining(package, Last) * 0.35);
        }
        foreach (
            var package in open.Where(package => DemoProject.StaleEstimates.Contains(package.Code))
        )
        {
            var first = DemoTime.PeriodOf(package.Progress.Start);
            package.Progress.StillToCome[first] = (long)(Remaining(package, first) * 0.98);
        }
        var atBudget = plan.Packages.Sum(package =>
            package.ActualCost
            + (
                package.Progress.IsFinished
                    ? 0
                    : package.Budget * (1 - Progress.EarnedShare(package, Last))
            )
        );
        var unspent = DemoProject.BudgetAtCompletion - plan.Packages.Sum(package => package.Budget);
        var charged = plan.Accounts.Sum(account => account.Charged);
        var more = DemoProject.EstimateAtCompletion - unspent - charged - atBudget;
        var reported = reporting.Sum(package => Remaining(package, Last));
        foreach (var package in reporting)
        {
            var factor = 1 + (more / reported * random.Between(0.5, 1.5));
            for (var period = DemoTime.PeriodOf(package.Progress.Start); period < Last; period++)
            {
                if (random.Chance(30))
                {
                    var then = 1 + ((factor - 1) * random.Between(0.2, 0.8));
                    package.Progress.StillToCome[period] = (long)(
                        Remaining(package, period) * then
                    );
                }
            }
            package.Progress.StillToCome[Last] = (long)(Remaining(package, Last) * factor);
        }
    }

    private static double Remaining(Package package, int period) =>
        package.Budget * (1 - Progress.EarnedShare(package, period));
}
