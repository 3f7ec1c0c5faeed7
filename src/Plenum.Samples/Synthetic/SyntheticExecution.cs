using System.Globalization;
using Plenum.Samples.Foundation;
using static Plenum.Samples.Synthetic.SyntheticWords;

namespace Plenum.Samples.Synthetic;

/// <summary>status, activity_status, milestone_status, item_steps, actuals, commitments.</summary>
internal sealed class SyntheticExecution(TableFolder tables)
{
    private const int Last = SyntheticTime.Closed - 1;

    private readonly TableWriter _status = tables.Open(
        "status",
        "package",
        "period",
        "started",
        "finished",
        "percent",
        "units_done",
        "etc",
        "remaining"
    );
    private readonly TableWriter _activityStatus = tables.Open(
        "activity_status",
        "activity",
        "period",
        "started",
        "finished",
        "remaining"
    );
    private readonly TableWriter _milestoneStatus = tables.Open(
        "milestone_status",
        "package",
        "milestone",
        "period",
        "done"
    );
    private readonly TableWriter _itemSteps = tables.Open(
        "item_steps",
        "item",
        "package",
        "step",
        "period",
        "quantity"
    );
    private readonly TableWriter _actuals = tables.Open(
        "actuals",
        "document",
        "line",
        "charge",
        "period",
        "cost_element",
        "amount",
        "hours",
        "kind"
    );
    private readonly TableWriter _commitments = tables.Open(
        "commitments",
        "order",
        "line",
        "package",
        "cost_element",
        "amount",
        "supplier",
        "date"
    );
    private readonly int[] _documents = new int[SyntheticTime.Closed];

    public void Write(
        List<string> parts,
        ReadOnlySpan<SyntheticPackage> packages,
        SeededRandom random
    )
    {
        for (var i = 0; i < packages.Length; i++)
        {
            var package = packages[i];
            if (!package.IsStarted)
            {
                continue;
            }
            var code = SyntheticTree.PartCode(
                parts[i / SyntheticTree.PackagesPerPart],
                package.Step
            );
            WriteStatus(code, package, random);
            WriteMilestones(code, package);
            if (package.Technique == "items")
            {
                WriteItems(code, package);
            }
            WriteCost(code, package, package.Kind.MainCost, package.MainBudget, random);
            if (package.OtherBudget > 0)
            {
                WriteCost(code, package, package.Kind.OtherCost, package.OtherBudget, random);
            }
            WriteOrder(code, package, random);
        }
    }

    private static int FirstPeriod(SyntheticPackage package) =>
        SyntheticTime.PeriodOf(package.ActualStart);

    private static int LastPeriod(SyntheticPackage package) =>
        package.IsFinished ? SyntheticTime.PeriodOf(package.ActualFinish) : Last;

    private void WriteStatus(string code, SyntheticPackage package, SeededRandom random)
    {
        var first = FirstPeriod(package);
        var last = LastPeriod(package);
        var isCounted = package.Technique is "percent" or "units";
        for (var period = first; period <= last; period++)
        {
            if (!isCounted && period != first && period != last)
            {
                continue;
            }
            var day = SyntheticTime.LastWorkDay[period];
            var isFinish = package.IsFinished && period == last;
            var done = package.Done(day);
            long? toCome = null;
            if (!isFinish && !package.IsFollowing && period == Last && random.Chance(60))
            {
                toCome = (long)(package.Budget * (1 - done) * random.Between(0.9, 1.25));
            }
            var remaining = Math.Max(1, package.ActualFinish - day);
            _status
                .Text(code)
                .Text(SyntheticTime.Names[period])
                .DateOrEmpty(period == first ? SyntheticTime.Site[package.ActualStart] : null)
                .DateOrEmpty(isFinish ? SyntheticTime.Site[package.ActualFinish] : null)
                .WholeOrEmpty(package.Technique == "percent" ? (int)(done * 100) : null)
                .WholeOrEmpty(package.Technique == "units" ? package.UnitsDone(day) : null)
                .HundredthsOrEmpty(toCome)
                .WholeOrEmpty(isFinish ? null : remaining)
                .EndRow();
            if (package.Step == Design && (period == first || period == last))
            {
                _activityStatus
                    .Text(SyntheticPlan.ActivityCode(code))
                    .Text(SyntheticTime.Names[period])
                    .DateOrEmpty(period == first ? SyntheticTime.Site[package.ActualStart] : null)
                    .DateOrEmpty(isFinish ? SyntheticTime.Site[package.ActualFinish] : null)
                    .WholeOrEmpty(isFinish ? null : remaining)
                    .EndRow();
            }
        }
    }

    private void WriteMilestones(string code, SyntheticPackage package)
    {
        if (package.Technique != "milestones")
        {
            return;
        }
        var reached = 0;
        foreach (var (name, weight) in SyntheticPlan.MilestonesOf(package.Step))
        {
            reached += weight;
            var day = package.DayOf(reached);
            if (day <= SyntheticTime.StatusWorkDay)
            {
                _milestoneStatus
                    .Text(code)
                    .Text(name)
                    .Text(SyntheticTime.Names[SyntheticTime.PeriodOf(day)])
                    .Date(SyntheticTime.Site[day])
                    .EndRow();
            }
        }
    }

    /// <summary>The items one after another, of each its steps one after another; a row where a step is done.</summary>
    private void WriteItems(string code, SyntheticPackage package)
    {
        var steps = SyntheticFrame.CreditRules[SyntheticPlan.RuleOf(package.Step)].Steps;
        var all = SyntheticPlan.Items * steps.Length;
        for (var place = 0; place < all; place++)
        {
            var day = package.DayOf((place + 1) * 100 / all);
            if (day > SyntheticTime.StatusWorkDay)
            {
                return;
            }
            _itemSteps
                .Text(SyntheticPlan.ItemCode(code, place / steps.Length))
                .Text(code)
                .Text(steps[place % steps.Length].Step)
                .Text(SyntheticTime.Names[SyntheticTime.PeriodOf(day)])
                .WholeOrEmpty(package.Step == Design ? null : package.Quantity)
                .EndRow();
        }
    }

    private void WriteCost(
        string code,
        SyntheticPackage package,
        string element,
        long budget,
        SeededRandom random
    )
    {
        const int HourlyRate = 75_00;
        long before = 0;
        var last = LastPeriod(package);
        // Labour is booked every month, all else every second; small things come on one invoice, at the end.
        var first = element == "other" ? last : FirstPeriod(package);
        for (var period = first; period <= last; period++)
        {
            if (element != "labour" && period != last && (period - first) % 2 == 0)
            {
                continue;
            }
            var total = (long)(
                budget * package.CostFactor * package.Done(SyntheticTime.LastWorkDay[period])
            );
            var amount = total - before;
            before = total;
            if (amount <= 0)
            {
                continue;
            }
            long? hours = element == "labour" ? amount * 100 / HourlyRate : null;
            var isAccrual = element != "labour" && random.Chance(4);
            if (isAccrual)
            {
                WriteRow(code, period, element, amount, hours, "accrual");
            }
            if (!isAccrual || period < Last)
            {
                WriteRow(code, isAccrual ? period + 1 : period, element, amount, hours, "invoiced");
            }
        }
    }

    private void WriteRow(
        string code,
        int period,
        string element,
        long amount,
        long? hours,
        string kind
    )
    {
        var document = string.Create(
            CultureInfo.InvariantCulture,
            $"D{period + 1:00}-{_documents[period] / 10:000000}"
        );
        _actuals
            .Text(document)
            .Whole((_documents[period]++ % 10) + 1)
            .Text(code)
            .Text(SyntheticTime.Names[period])
            .Text(element)
            .Hundredths(amount)
            .HundredthsOrEmpty(hours)
            .Text(kind)
            .EndRow();
    }

    private void WriteOrder(string code, SyntheticPackage package, SeededRandom random)
    {
        if (package.Step is not (Manufacture or CivilWorks or Delivery))
        {
            return;
        }
        var supplier = random.Below(90) + 10;
        var done = package.Done(SyntheticTime.StatusWorkDay);
        WriteLine(1, package.Kind.MainCost, package.MainBudget);
        if (package.OtherBudget > 0)
        {
            WriteLine(2, package.Kind.OtherCost, package.OtherBudget);
        }

        void WriteLine(int line, string element, long budget)
        {
            // What is spent, and most of what is still to come.
            var spent = (long)(budget * package.CostFactor * done);
            var amount = spent + (long)(budget * (1 - done) * 0.85);
            _commitments
                .Text("PO-" + code)
                .Whole(line)
                .Text(code)
                .Text(element)
                .Hundredths(amount)
                .Text(string.Create(CultureInfo.InvariantCulture, $"Supplier {supplier}"))
                .Date(SyntheticTime.Site[Math.Max(0, package.ActualStart - 15)])
                .EndRow();
        }
    }
}
