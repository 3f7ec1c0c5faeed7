using Plenum.Samples.Demo.Plant;
using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo.Tables;

/// <summary>units, people, accounts.</summary>
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
    }
}
