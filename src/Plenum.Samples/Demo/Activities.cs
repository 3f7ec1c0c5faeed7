using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo;

/// <summary>
/// Gives activities to packages that need more than their own dates: one with a date condition, long work on site in
/// steps, and milestones. All other packages are one activity under their own code.
/// </summary>
internal static class Activities
{
    /// <summary>Working days from which on work on site is planned in steps.</summary>
    private const int LongWork = 40;

    private static readonly string[] _steps = ["preparation", "main work", "completion"];

    /// <summary>component | activity | milestone | contract date</summary>
    private static readonly (
        string Component,
        string Activity,
        string Name,
        string? Required
    )[] _milestones =
    [
        ("11.1.02", "Construction", "Site levelled", "2026-11-30"),
        ("10.1.01", "Construction", "RO hall, foundations ready for steel", null),
        ("10.1.03", "Construction", "RO hall, floor ready for racks", "2027-09-30"),
        ("10.1.04", "Finishing", "RO hall weathertight", null),
        ("08.1.02", "Commissioning", "Power on", "2028-05-15"),
        ("01.3.01", "Commissioning", "First seawater", "2028-06-30"),
        ("03.9.02", "Commissioning", "Headers flushed", null),
        ("03.1.04", "Commissioning", "Train A makes water", "2028-07-31"),
        ("03.6.04", "Commissioning", "Train F makes water", "2028-10-13"),
        ("09.4.02", "Run", "Test run passed", "2028-11-30"),
        ("09.4.02", "Hand-over", "Plant handed over", "2028-12-15"),
    ];

    public static IReadOnlyDictionary<string, WorkDays> Calendars { get; } = MakeCalendars();

    public static void Make(DemoPlan plan)
    {
        foreach (var package in plan.Packages)
        {
            AddSteps(package);
        }
        foreach (var (component, activity, name, required) in _milestones)
        {
            var package = plan.Component(component).LastOf(activity)!;
            if (package.Activities.Count == 0)
            {
                package.Activities.Add(
                    Step(package, "A", package.Name, package.Start, package.Finish, "")
                );
            }
            package.Milestone = new PlannedMilestone(
                package.Code + "-M",
                name,
                required is null ? null : Plant.PlantText.Date(required)
            );
        }
    }

    /// <summary>The code by which a link names the package: its own, or one of its activities'.</summary>
    public static string LinkCode(Package package, bool last) =>
        package.Activities.Count == 0 ? package.Code : package.Activities[last ? ^1 : 0].Code;

    /// <summary>Working days of a calendar from one date to another, both included.</summary>
    public static int DaysOf(string calendar, DateOnly from, DateOnly to)
    {
        var days = Calendars[calendar];
        return days.OnOrBefore(to) - days.OnOrAfter(from) + 1;
    }

    /// <summary>First and last day of an activity as it turns out: the package's days in proportion to the plan.</summary>
    public static (int Start, int Finish) Actual(Package package, int activity)
    {
        var progress = package.Progress;
        var days = progress.Finish - progress.Start + 1;
        var count = package.Activities.Count;
        var start = progress.Start + (days * activity / count);
        return (start, Math.Max(start, progress.Start + (days * (activity + 1) / count) - 1));
    }

    private static void AddSteps(Package package)
    {
        var onSite = package.Step.Facet == "construction" && package.Activity.Length > 0;
        if (onSite && package.Days >= LongWork)
        {
            var calendar = package.Component.Account.Unit switch
            {
                "CIV" or "SIT" => "six",
                "MAR" => "marine",
                _ => "",
            };
            for (var i = 0; i < _steps.Length; i++)
            {
                var start = package.Start + (package.Days * i / _steps.Length);
                var finish = package.Start + (package.Days * (i + 1) / _steps.Length) - 1;
                var name = $"{package.Name}, {_steps[i]}";
                package.Activities.Add(
                    Step(package, "ABC"[i].ToString(), name, start, finish, calendar)
                );
            }
        }
        else if (package.NotBefore is not null)
        {
            package.Activities.Add(
                Step(package, "A", package.Name, package.Start, package.Finish, "")
            );
        }
    }

    private static PlannedActivity Step(
        Package package,
        string letter,
        string name,
        int start,
        int finish,
        string calendar
    )
    {
        var days = Math.Max(1, DaysOf(calendar, DemoTime.Date(start), DemoTime.Date(finish)));
        return new PlannedActivity($"{package.Code}-{letter}", name, start, finish, days, calendar);
    }

    private static Dictionary<string, WorkDays> MakeCalendars()
    {
        var last = new DateOnly(2030, 12, 31);
        var holidays = DemoTime
            .SiteDays.Where(day => !day.Value.Working)
            .ToDictionary(day => day.Key, _ => false);
        var marine = new Dictionary<DateOnly, bool>(holidays);
        foreach (var day in DemoTime.WinterStop)
        {
            marine[day] = false;
        }
        return new Dictionary<string, WorkDays>(StringComparer.Ordinal)
        {
            [""] = DemoTime.Site,
            ["six"] = new(DemoTime.Start, last, "1111110", holidays),
            ["marine"] = new(DemoTime.Start, last, "1111110", marine),
        };
    }
}
