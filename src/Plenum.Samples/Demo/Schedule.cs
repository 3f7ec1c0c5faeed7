using Plenum.Samples.Demo.Plant;
using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo;

/// <summary>Links the packages and dates them: the baseline is the early dates of a forward pass.</summary>
internal static class Schedule
{
    /// <summary>Length of one lot and what all of them take together, when work is done in 1, 2, 3 ... lots.</summary>
    private static readonly double[] _lotLength = [1, 0.62, 0.48, 0.4, 0.36, 0.33];

    /// <summary>The baseline finish of the project; the test run is made as long as it allows.</summary>
    private static readonly DateOnly _finish = new(2028, 12, 12);
    private const int ShortestRun = 15;
    private const int LongestRun = 80;

    public static void Make(DemoPlan plan, ulong seed)
    {
        foreach (var component in plan.Components)
        {
            LinkComponent(component);
        }
        LinkComponents(plan);
        LinkTrains(plan);
        LinkEnd(plan);
        foreach (var subsystem in plan.Subsystems)
        {
            SetConditions(subsystem, new SeededRandom(seed, "conditions " + subsystem.Code));
        }
        // Durations that miss the finish by more than the test run can give are thrown again.
        var durations = new SeededRandom(seed, "durations");
        bool fits;
        do
        {
            fits = TryDate(plan, plan.Packages.ConvertAll(package => DaysOf(package, durations)));
        } while (!fits);
        foreach (var component in plan.Components)
        {
            DateFollowers(component);
        }
    }

    private static bool TryDate(DemoPlan plan, List<int> days)
    {
        var wanted = DemoTime.Site.OnOrBefore(_finish);
        var run = plan.Package("09.4.02", "Run").Index;
        ForwardPass(plan, days);
        days[run] = Math.Clamp(
            days[run] + wanted - plan.Packages.Max(p => p.Finish),
            ShortestRun,
            LongestRun
        );
        ForwardPass(plan, days);
        return plan.Packages.Max(package => package.Finish) == wanted;
    }

    private static int DaysOf(Package package, SeededRandom random) =>
        Math.Max(2, (int)(package.Step.Days * random.Between(0.85, 1.15) * LotLength(package)));

    private static double LotLength(Package package) =>
        _lotLength[Math.Min(package.Lots, _lotLength.Length) - 1];

    /// <summary>Every package after all its predecessors; throws when links form a ring.</summary>
    public static List<Package> InOrder(DemoPlan plan)
    {
        var waiting = plan.Packages.ConvertAll(package => package.Into.Count);
        var successors = plan
            .Packages.SelectMany(package => package.Into)
            .ToLookup(link => link.From);
        var ready = new Queue<Package>(plan.Packages.Where(package => package.Into.Count == 0));
        var order = new List<Package>();
        while (ready.TryDequeue(out var package))
        {
            order.Add(package);
            foreach (var link in successors[package])
            {
                if (--waiting[link.To.Index] == 0)
                {
                    ready.Enqueue(link.To);
                }
            }
        }
        return order.Count == plan.Packages.Count
            ? order
            : throw new InvalidOperationException("The links of the demo form a ring");
    }

    /// <summary>The first day on which the link lets its successor, of so many days, start.</summary>
    public static int StartAllowed(Link link, int fromStart, int fromFinish, int days) =>
        link.Type switch
        {
            "SS" => fromStart + link.Lag,
            "FF" => fromFinish + link.Lag - days + 1,
            "SF" => fromStart + link.Lag - days,
            _ => fromFinish + 1 + link.Lag,
        };

    private static void LinkComponent(Component component)
    {
        foreach (var package in component.Packages)
        {
            if (package.Lot > 1)
            {
                var lag = (int)(package.Step.Days * (1 - LotLength(package)) / (package.Lots - 1));
                Add(
                    component.Packages[component.Packages.IndexOf(package) - 1],
                    package,
                    "SS",
                    Math.Max(1, lag)
                );
            }
            foreach (var before in package.Lot == 1 ? Before(component, package.Step) : [])
            {
                foreach (var lot in component.Packages.Where(other => other.Activity == before))
                {
                    Add(lot, package, "FS", 0);
                }
            }
        }
    }

    /// <summary>The planned activities before a step; one that is not planned passes on to those before it.</summary>
    private static IEnumerable<string> Before(Component component, WorkStep step)
    {
        foreach (var name in step.After)
        {
            if (component.FirstOf(name) is not null)
            {
                yield return name;
                continue;
            }
            foreach (
                var earlier in Before(
                    component,
                    component.Type.Steps.First(other => other.Name == name)
                )
            )
            {
                yield return earlier;
            }
        }
    }

    private static void LinkComponents(DemoPlan plan)
    {
        foreach (var line in PlantText.Lines(LinkText.Links))
        {
            var cells = PlantText.Cells(line, 6);
            Connect(
                plan,
                cells[0],
                cells[1],
                cells[2],
                cells[3],
                cells[4],
                PlantText.Whole(cells[5])
            );
        }
        // Plant stands on the foundations and in the basins of its own subsystem.
        foreach (var subsystem in plan.Subsystems.Where(subsystem => subsystem.Accounts.Count > 1))
        {
            var ground = subsystem.Components.Find(component => component.Account.Unit == "CIV");
            foreach (
                var component in subsystem.Components.Where(c =>
                    c.Account.Unit is "MEC" or "PRO" or "ELE"
                )
            )
            {
                if (
                    ground?.LastOf("Construction") is { } built
                    && component.FirstOf("Erection") is { } erected
                )
                {
                    Add(built, erected, "FS", 0);
                }
            }
        }
    }

    private static void LinkTrains(DemoPlan plan)
    {
        for (var t = 0; t < LinkText.Trains.Length; t++)
        {
            var train = LinkText.Trains[t];
            foreach (var line in PlantText.Lines(LinkText.InTrain))
            {
                var cells = PlantText.Cells(line, 6);
                var (from, to) = ($"{train}.{cells[0]}", $"{train}.{cells[2]}");
                if (plan.Component(from).FirstOf(cells[1]) is not null)
                {
                    Connect(
                        plan,
                        from,
                        cells[1],
                        to,
                        cells[3],
                        cells[4],
                        PlantText.Whole(cells[5])
                    );
                }
            }
            foreach (var line in t == 0 ? [] : PlantText.Lines(LinkText.NextTrain))
            {
                var cells = PlantText.Cells(line, 4);
                var (from, to) = ($"{LinkText.Trains[t - 1]}.{cells[0]}", $"{train}.{cells[0]}");
                Connect(plan, from, cells[1], to, cells[1], cells[2], PlantText.Whole(cells[3]));
            }
        }
    }

    /// <summary>The plant's test run waits for what makes water, its hand-over for everything.</summary>
    private static void LinkEnd(DemoPlan plan)
    {
        var run = plan.Package("09.4.02", "Run");
        var end = plan.Package("09.4.02", "Hand-over");
        foreach (var component in plan.Components.Where(component => component.Code != "09.4.02"))
        {
            var isWater =
                component.Code[0] == '0'
                && !component.Code.StartsWith("09.4", StringComparison.Ordinal);
            if (isWater && component.LastOf("Commissioning") is { } commissioned)
            {
                Add(commissioned, run, "FS", 0);
            }
            var last = component.Packages.FindLast(package => package.Activity.Length > 0)!;
            Add(last, end, "FS", 0);
        }
    }

    private static void SetConditions(Subsystem subsystem, SeededRandom random)
    {
        if (subsystem.DesignStarts is not { } design || subsystem.SiteOpens is not { } site)
        {
            return;
        }
        var designDay = DemoTime.Site.OnOrAfter(design);
        var siteDay = DemoTime.Site.OnOrAfter(site);
        foreach (var component in subsystem.Components)
        {
            foreach (
                var package in component.Packages.Where(package => package.Activity.Length > 0)
            )
            {
                if (package.Into.Count == 0)
                {
                    package.NotBefore = designDay;
                }
                else if (
                    package.Lot == 1
                    && OpensSite(package)
                    && !package.Into.Exists(IsFromOutside)
                )
                {
                    package.NotBefore = siteDay;
                }
            }
            designDay += random.Between(2, 9);
            siteDay += random.Between(2, 12);
        }
    }

    /// <summary>The first work of the component on site.</summary>
    private static bool OpensSite(Package package) =>
        package.Step.Facet == "construction"
        && !package.Component.Packages.Exists(other =>
            other.Index < package.Index
            && other.Step.Facet == "construction"
            && other.Activity != "Civil works"
        );

    private static bool IsFromOutside(Link link) => link.From.Component != link.To.Component;

    private static void ForwardPass(DemoPlan plan, List<int> days)
    {
        foreach (var package in InOrder(plan))
        {
            var length = days[package.Index];
            var start = package.NotBefore ?? 0;
            foreach (var link in package.Into)
            {
                start = Math.Max(
                    start,
                    StartAllowed(link, link.From.Start, link.From.Finish, length)
                );
            }
            package.Start = start;
            package.Finish = start + length - 1;
        }
    }

    /// <summary>Supervision runs as long as the work on site, inspection as long as the making.</summary>
    private static void DateFollowers(Component component)
    {
        foreach (var package in component.Packages.Where(package => package.Activity.Length == 0))
        {
            var made = component.Packages.FindAll(other =>
                package.Technique == "apportioned" || package.Step.Technique == "apportioned"
                    ? other.Activity == "Manufacture" && other.Lot == 1
                    : other.Step.Facet == "construction" && other.Activity.Length > 0
            );
            package.Start = made.Min(other => other.Start);
            package.Finish = made.Max(other => other.Finish);
            package.Base = package.Step.Technique == "apportioned" ? made[0] : null;
            package.Into.Add(new Link(made.MinBy(other => other.Start)!, package, "SS", 0));
        }
    }

    private static void Connect(
        DemoPlan plan,
        string from,
        string activity,
        string to,
        string toActivity,
        string type,
        int lag
    )
    {
        var first = plan.Component(from);
        var pred = (type is "FS" or "FF" ? first.LastOf(activity) : first.FirstOf(activity))!;
        var succ = type is "FF"
            ? plan.Component(to).LastOf(toActivity)!
            : plan.Package(to, toActivity);
        Add(pred, succ, type, lag);
    }

    private static void Add(Package from, Package to, string type, int lag)
    {
        if (!to.Into.Exists(link => link.From == from && link.Type == type))
        {
            to.Into.Add(new Link(from, to, type, lag));
        }
    }
}
