using Plenum.Samples.Foundation;
using static Plenum.Samples.Synthetic.SyntheticWords;

namespace Plenum.Samples.Synthetic;

/// <summary>packages, budget, budget_periods, milestones, items, estimate, activities, links, group_members.</summary>
internal sealed class SyntheticPlan(TableFolder tables)
{
    public const int Items = 3;
    public const int ItemHours = 40;

    private static readonly (string Name, int Weight)[] _design =
    [
        ("draft", 40),
        ("reviewed", 35),
        ("issued", 25),
    ];
    private static readonly (string Name, int Weight)[] _manufacture =
    [
        ("material", 20),
        ("machining", 40),
        ("assembly", 30),
        ("painted", 10),
    ];
    private static readonly (string Name, int Weight)[] _commissioning =
    [
        ("filled", 20),
        ("first run", 40),
        ("set values reached", 40),
    ];

    private readonly TableWriter _packages = tables.Open(
        "packages",
        "package",
        "technique",
        "base",
        "spread",
        "start",
        "finish"
    );
    private readonly TableWriter _budget = tables.Open(
        "budget",
        "package",
        "cost_element",
        "amount",
        "hours"
    );
    private readonly TableWriter _periods = tables.Open(
        "budget_periods",
        "package",
        "period",
        "amount"
    );
    private readonly TableWriter _milestones = tables.Open(
        "milestones",
        "package",
        "milestone",
        "weight",
        "planned"
    );
    private readonly TableWriter _items = tables.Open(
        "items",
        "package",
        "item",
        "name",
        "quantity",
        "hours",
        "rule"
    );
    private readonly TableWriter _estimate = tables.Open(
        "estimate",
        "package",
        "cost_element",
        "line",
        "quantity",
        "unit",
        "rate",
        "amount",
        "low",
        "likely",
        "high",
        "class",
        "basis",
        "base_date"
    );
    private readonly TableWriter _activities = tables.Open(
        "activities",
        "activity",
        "package",
        "name",
        "duration",
        "start_no_earlier"
    );
    private readonly TableWriter _links = tables.Open("links", "from", "to", "type", "lag");
    private readonly TableWriter _members = tables.Open(
        "group_members",
        "grouping",
        "package",
        "group"
    );

    public void Write(
        List<string> parts,
        ReadOnlySpan<SyntheticPackage> packages,
        SeededRandom random
    )
    {
        for (var i = 0; i < packages.Length; i++)
        {
            var package = packages[i];
            var part = parts[i / SyntheticTree.PackagesPerPart];
            var code = SyntheticTree.PartCode(part, package.Step);
            _packages
                .Text(code)
                .Text(package.Technique)
                .Text(package.Step == Inspection ? SyntheticTree.PartCode(part, Manufacture) : "")
                .Text(package.Spread)
                .Date(SyntheticTime.Site[package.Start])
                .Date(SyntheticTime.Site[package.Finish])
                .EndRow();
            WriteBudget(code, package);
            WriteDetail(code, package);
            WriteEstimate(code, package, random);
            WriteNetwork(parts, i, code, package);
            if (package.Step is Erection or CivilWorks)
            {
                var group = SyntheticFrame.GroupCode(random.Below(SyntheticFrame.Groups));
                _members.Text(SyntheticFrame.Grouping).Text(code).Text(group).EndRow();
            }
        }
    }

    public static (string Name, int Weight)[] MilestonesOf(int step) =>
        step switch
        {
            Design => _design,
            Manufacture => _manufacture,
            _ => _commissioning,
        };

    public static string ItemCode(string package, int item) => $"{package}-{(char)('A' + item)}";

    public static int RuleOf(int step) => step == Design ? 0 : 1;

    public static string ActivityCode(string package) => package + "-1";

    private void WriteBudget(string code, SyntheticPackage package)
    {
        const int HourlyRate = 75_00;
        long? hours =
            package.Kind.MainCost == "labour" ? package.MainBudget * 100 / HourlyRate : null;
        _budget
            .Text(code)
            .Text(package.Kind.MainCost)
            .Hundredths(package.MainBudget)
            .HundredthsOrEmpty(hours)
            .EndRow();
        if (package.OtherBudget > 0)
        {
            _budget
                .Text(code)
                .Text(package.Kind.OtherCost)
                .Hundredths(package.OtherBudget)
                .Empty()
                .EndRow();
        }
        if (package.Spread != "periods")
        {
            return;
        }
        long given = 0;
        var last = SyntheticTime.PeriodOf(package.Finish);
        for (var period = SyntheticTime.PeriodOf(package.Start); period <= last; period++)
        {
            var share = package.PlannedShare(SyntheticTime.LastWorkDay[period]);
            var upTo = period == last ? package.Budget : (long)(package.Budget * share);
            _periods.Text(code).Text(SyntheticTime.Names[period]).Hundredths(upTo - given).EndRow();
            given = upTo;
        }
    }

    private void WriteDetail(string code, SyntheticPackage package)
    {
        if (package.Technique == "milestones")
        {
            var reached = 0;
            foreach (var (name, weight) in MilestonesOf(package.Step))
            {
                reached += weight;
                var day = Math.Max(
                    package.Start,
                    package.Start + (package.Days * reached / 100) - 1
                );
                _milestones
                    .Text(code)
                    .Text(name)
                    .Whole(weight)
                    .Date(SyntheticTime.Site[day])
                    .EndRow();
            }
        }
        else if (package.Technique == "items")
        {
            for (var item = 0; item < Items; item++)
            {
                _items
                    .Text(code)
                    .Text(ItemCode(code, item))
                    .Text($"{(package.Step == Design ? "Drawing" : "Set")} {(char)('A' + item)}")
                    .WholeOrEmpty(package.Step == Design ? null : package.Quantity)
                    .Whole(ItemHours * (item + 1))
                    .Text(SyntheticFrame.CreditRules[RuleOf(package.Step)].Rule)
                    .EndRow();
            }
        }
    }

    private void WriteEstimate(string code, SyntheticPackage package, SeededRandom random)
    {
        var quantity = random.Between(1, 40);
        var rate = package.MainBudget * random.Between(92, 104) / 100 / quantity;
        var amount = rate * quantity;
        _estimate
            .Text(code)
            .Text(package.Kind.MainCost)
            .Whole(1)
            .Whole(quantity)
            .Text("pieces")
            .Hundredths(rate)
            .Hundredths(amount)
            .Hundredths(amount * 85 / 100)
            .Hundredths(amount)
            .Hundredths(amount * 130 / 100)
            .Whole(random.Between(2, 4))
            .Text("past project")
            .Date(SyntheticTime.Start.AddDays(random.Below(60)))
            .EndRow();
    }

    /// <summary>
    /// Design is an activity with a date before which it may not start, all else its package alone. The steps of a
    /// part follow each other; some start no earlier than those of the part before.
    /// </summary>
    private void WriteNetwork(List<string> parts, int i, string code, SyntheticPackage package)
    {
        var own = parts[i / SyntheticTree.PackagesPerPart];
        var step = package.Step;
        if (step == Design)
        {
            var start = SyntheticTime.Site[package.Start];
            _activities
                .Text(ActivityCode(code))
                .Text(code)
                .Text("Design")
                .Whole(package.Days)
                .Date(start)
                .EndRow();
        }
        var (first, second) = SyntheticAccount.Before(step);
        if (first >= 0)
        {
            _links.Text(End(own, first)).Text(code).Text("FS").Empty().EndRow();
        }
        if (second >= 0)
        {
            _links.Text(End(own, second)).Text(code).Text("FS").Empty().EndRow();
        }
        if (SyntheticAccount.Accompanies(step) is >= 0 and var other)
        {
            _links.Text(End(own, other)).Text(code).Text("SS").Empty().EndRow();
        }
        if (SyntheticAccount.PassesOn(step) && i >= SyntheticTree.PackagesPerPart)
        {
            var before = parts[(i / SyntheticTree.PackagesPerPart) - 1];
            _links.Text(End(before, step)).Text(End(own, step)).Text("SS").Empty().EndRow();
        }
    }

    private static string End(string part, int step)
    {
        var code = SyntheticTree.PartCode(part, step);
        return step == Design ? ActivityCode(code) : code;
    }
}
