using Plenum.Samples.Demo.Plant;
using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo.Tables;

/// <summary>units, people, accounts, delegations.</summary>
internal static class PeopleTables
{
    public static void Write(DemoPlan plan, TableFolder tables)
    {
        var units = tables.Open("units", "unit", "name", "parent");
        foreach (var line in PlantText.Lines(PeopleText.Units))
        {
            var cells = PlantText.Cells(line, 3);
            units.Text(cells[0]).Text(cells[1]).Text(cells[2]).EndRow();
        }
        var people = tables.Open("people", "person", "name", "unit", "email");
        foreach (var line in PlantText.Lines(PeopleText.People))
        {
            var cells = PlantText.Cells(line, 3);
            people
                .Text(cells[0])
                .Text(cells[1])
                .Text(cells[2])
                .Text(cells[0] + "@kestrelbay.example")
                .EndRow();
        }
        var accounts = tables.Open("accounts", "account", "element", "unit", "manager", "name");
        foreach (var account in plan.Accounts)
        {
            accounts
                .Text(account.Code)
                .Text(account.Subsystem.Code)
                .Text(account.Unit)
                .Text(account.Manager)
                .Text(account.Subsystem.Name)
                .EndRow();
        }
        WriteDelegations(plan, tables);
    }

    /// <summary>The packages of one manager's accounts, each as far as its work has come.</summary>
    private static void WriteDelegations(DemoPlan plan, TableFolder tables)
    {
        var delegations = tables.Open(
            "delegations",
            "package",
            "person",
            "state",
            "offered",
            "accepted",
            "opened",
            "closed",
            "work_accepted",
            "note"
        );
        foreach (var package in plan.Packages)
        {
            var person = package.Person ?? package.Component.Person;
            var steps = Steps(package);
            if (
                package.Component.Account.Manager != Delegating
                || person is null
                || steps.Count == 0
            )
            {
                continue;
            }

            delegations.Text(package.Code).Text(person).Text(States[steps.Count - 1]);
            for (var step = 0; step < States.Length; step++)
            {
                delegations.DateOrEmpty(step < steps.Count ? DemoTime.Date(steps[step]) : null);
            }

            delegations.Text("").EndRow();
        }
    }

    /// <summary>Working days of the steps that were taken by the status date.</summary>
    private static List<int> Steps(Package package)
    {
        var starts = Math.Min(package.Start, package.Progress.Start);
        var ends = package.Progress.IsFinished ? package.Progress.Finish : int.MaxValue;
        List<int> days = [Math.Max(0, starts - 40), Math.Max(0, starts - 30), Math.Max(0, starts - 1)];
        if (ends < int.MaxValue)
        {
            days.Add(Math.Max(ends, days[^1]));
            days.Add(days[^1] + 15);
        }

        return [.. days.TakeWhile(day => day <= DemoTime.StatusWorkDay)];
    }

    private const string Delegating = "r.velde";

    private static readonly string[] States =
    [
        "offered",
        "accepted",
        "open",
        "closed",
        "work_accepted",
    ];
}
