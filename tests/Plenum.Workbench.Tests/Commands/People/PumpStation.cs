using Plenum.Core;
using Plenum.Core.People;
using Plenum.Oracle.Tables;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Tests.Oracle;

namespace Plenum.Workbench.Tests.Commands.People;

/// <summary>An invented pumping station: two halls with a pump and a pipe each, three units, two accounts in each hall.</summary>
internal static class PumpStation
{
    public static EditDesk Desk(Action<TextProject>? change = null)
    {
        var text = new TextProject();
        text.Add("project", ("key", "name"), ("value", "Pumping station"));
        text.Add("project", ("key", "start"), ("value", "2026-01-01"));
        text.Add("project", ("key", "status_date"), ("value", "2026-01-31"));
        text.Add("periods", ("period", "P1"), ("end", "2026-01-31"));
        text.Add("periods", ("period", "P2"), ("end", "2026-02-28"));
        text.Add("units", ("unit", "ENG"), ("name", "Engineering"));
        text.Add("units", ("unit", "MEC"), ("name", "Mechanical"), ("parent", "ENG"));
        text.Add("units", ("unit", "PIP"), ("name", "Piping"), ("parent", "ENG"));
        text.Add("people", ("person", "ann"), ("name", "Ann Dorn"), ("unit", "MEC"));
        text.Add("people", ("person", "bo"), ("name", "Bo Kern"), ("unit", "PIP"));
        text.Add("elements", ("code", "0"), ("name", "Pumping station"), ("person", "ann"));
        foreach (var hall in (string[])["1", "2"])
        {
            text.Add("elements", ("code", hall), ("parent", "0"), ("name", $"Hall {hall}"));
            foreach (
                var (part, unit) in ((string, string)[])[("1", "MEC"), ("2", "PIP"), ("3", "MEC")]
            )
            {
                var code = $"{hall}.{part}";
                text.Add(
                    "elements",
                    ("code", code),
                    ("parent", hall),
                    ("name", $"Part {code}"),
                    ("unit", unit)
                );
                text.Add(
                    "budget",
                    ("package", code),
                    ("cost_element", "labour"),
                    ("amount", $"100{part}.37")
                );
            }

            text.Add(
                "accounts",
                ("account", $"{hall}-MEC"),
                ("element", hall),
                ("unit", "MEC"),
                ("manager", "ann")
            );
            text.Add(
                "accounts",
                ("account", $"{hall}-PIP"),
                ("element", hall),
                ("unit", "PIP"),
                ("manager", "bo")
            );
        }

        change?.Invoke(text);
        return Commands.Desk.Of(Answers.Import(text));
    }

    public static int Account(this EditDesk desk, string code) =>
        IdOf(desk.Current, AccountTable.Definition, code);

    public static int Person(this EditDesk desk, string code) =>
        IdOf(desk.Current, PersonTable.Definition, code);

    public static int Unit(this EditDesk desk, string code) =>
        IdOf(desk.Current, UnitTable.Definition, code);

    /// <summary>Each account with its packages: "1-MEC on 1 by ann: 1.1 1.3".</summary>
    public static string[] Accounts(this EditDesk desk)
    {
        var project = desk.Current;
        var placement = project.Placement;
        var people = project[PersonTable.Definition];
        return
        [
            .. Enumerable
                .Range(0, placement.Accounts.Count)
                .Select(account =>
                    $"{placement.Accounts.Codes[account]} on {project.Tree.Code(placement.ElementRow[account])} by "
                    + $"{people.Codes[people.RowOf(placement.Accounts.Ints(AccountTable.Manager)[account])]}:"
                    + string.Concat(
                        Enumerable
                            .Range(0, project.Tree.PackageCount)
                            .Where(package => placement.AccountOfPackage[package] == account)
                            .Select(package =>
                                " " + project.Tree.Code(project.Tree.PackageRows[package])
                            )
                    )
                ),
        ];
    }

    private static int IdOf(
        Project project,
        Core.Foundation.Tables.TableDefinition table,
        string code
    )
    {
        var row = project[table].RowOfCode(code);
        Assert.True(row >= 0, $"no {code} in {table.Name}");
        return project[table].Ids[row];
    }
}
