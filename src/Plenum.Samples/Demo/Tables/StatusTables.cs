using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo.Tables;

/// <summary>status: for every package a row in each period in which it was open.</summary>
internal static class StatusTables
{
    private const int Last = DemoTime.Closed - 1;

    private static readonly string[] _remarks =
    [
        "Rain stopped work for two days",
        "Second shift from next week",
        "Waiting for drawings of the neighbour",
        "Scaffold late by three days",
        "Spare part ordered",
        "Works closed for stocktaking",
        "Crew shared with the next train",
    ];

    public static void Write(DemoPlan plan, TableFolder tables, ulong seed)
    {
        var status = tables.Open(
            "status",
            "package",
            "period",
            "started",
            "finished",
            "percent",
            "units_done",
            "quantity",
            "etc",
            "remaining",
            "assumed",
            "remark",
            "by"
        );
        foreach (var package in plan.Packages.Where(package => package.Progress.IsStarted))
        {
            var random = new SeededRandom(seed, "status " + package.Code);
            var progress = package.Progress;
            var first = DemoTime.PeriodOf(progress.Start);
            var last = progress.IsFinished
                ? DemoTime.PeriodOf(progress.Finish)
                : progress.LastReport ?? Last;
            // Reported as finished by mistake two periods before the end, taken back one period before it.
            var mistaken = package.Index % 97 == 5 && progress.IsFinished && last - first >= 3;
            for (var period = first; period <= last; period++)
            {
                if (package.IsFollowing && period != first && period != last)
                {
                    continue;
                }
                WriteRow(status, package, period, mistaken ? last - period : 0, random);
            }
        }
    }

    private static void WriteRow(
        TableWriter status,
        Package package,
        int period,
        int toMistake,
        SeededRandom random
    )
    {
        var progress = package.Progress;
        var isFirst = period == DemoTime.PeriodOf(progress.Start);
        var isFinish = progress.IsFinishedAt(period);
        status
            .Text(package.Code)
            .Text(DemoTime.Periods[period].Name)
            .DateOrEmpty(isFirst ? DemoTime.Date(progress.Start) : null);
        WriteFinished(status, progress, period, isFinish, toMistake);
        status
            .WholeOrEmpty(package.Technique == "percent" ? progress.Percent[period] : null)
            .WholeOrEmpty(
                package.Technique == "units" ? Progress.UnitsDone(package, period) : null
            );
        var isRevised = progress.IsQuantityRevised && period == Last && !isFinish;
        status
            .WholeOrEmpty(isRevised ? Progress.QuantityAt(package, period) : null)
            .HundredthsOrEmpty(progress.StillToCome[period]);
        var remaining = progress.Finish - DemoTime.Periods[period].LastWorkDay;
        status.WholeOrEmpty(isFinish || toMistake == 2 ? null : Math.Max(1, remaining));
        var isAssumed = period == Last && !isFinish && Progress.IsTakenFromPlan(package);
        status
            .WholeOrEmpty(isAssumed ? 1 : null)
            .Text(RemarkOf(package, period, toMistake, random))
            .Text(package.Person ?? package.Component.Person ?? package.Component.Account.Manager)
            .EndRow();
    }

    private static void WriteFinished(
        TableWriter status,
        Progress progress,
        int period,
        bool isFinish,
        int toMistake
    )
    {
        if (isFinish)
        {
            status.Date(DemoTime.Date(progress.Finish));
        }
        else if (toMistake == 2)
        {
            status.Date(DemoTime.Date(DemoTime.Periods[period].LastWorkDay));
        }
        else
        {
            status.Text(toMistake == 1 ? "-" : "");
        }
    }

    private static string RemarkOf(Package package, int period, int toMistake, SeededRandom random)
    {
        var percent = package.Progress.Percent;
        if (toMistake == 1)
        {
            return "Finish was reported by mistake";
        }
        if (package.Technique == "percent" && period > 0 && percent[period] < percent[period - 1])
        {
            return "Two of 14 pallets failed the conductivity test";
        }
        return random.Chance(4) ? random.Pick(_remarks) : "";
    }
}
