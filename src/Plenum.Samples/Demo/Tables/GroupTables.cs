using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo.Tables;

/// <summary>groups, group_members: construction areas, commissioning systems and contracts.</summary>
internal static class GroupTables
{
    private const string Area = "construction area";
    private const string System = "commissioning system";
    private const string Contract = "contract";

    private static readonly (string Group, string Name, string Parent)[] _areas =
    [
        ("SEA", "Works at sea", ""),
        ("LAND", "Works on land", ""),
        ("A", "Intake, offshore", "SEA"),
        ("B", "Outfall, offshore", "SEA"),
        ("C", "Shore and pumping station", "LAND"),
        ("D", "Pre-treatment", "LAND"),
        ("E", "RO hall", "LAND"),
        ("F", "Tanks and chemicals", "LAND"),
        ("G", "Substation", "LAND"),
        ("H", "Administration and yard", "LAND"),
        ("J", "Main to Harrow Hill", "LAND"),
    ];

    private static readonly (string Group, string Name)[] _contracts =
    [
        ("K1", "Marine works"),
        ("K2", "Civil works"),
        ("K3", "Mechanical supply"),
        ("K4", "Piping supply"),
        ("K5", "Electrical supply"),
        ("K6", "Control supply"),
        ("K7", "Chemical plant supply"),
        ("K8", "Site services"),
    ];

    public static void Write(DemoPlan plan, TableFolder tables)
    {
        var groups = tables.Open("groups", "grouping", "group", "name", "parent");
        foreach (var (group, name, parent) in _areas)
        {
            groups.Text(Area).Text(group).Text(name).Text(parent).EndRow();
        }
        foreach (var system in plan.Systems)
        {
            groups.Text(System).Text("S" + system.Code).Text(system.Name).Empty().EndRow();
            foreach (
                var subsystem in system.Subsystems.Where(subsystem =>
                    subsystem.Components.Count > 0
                )
            )
            {
                groups
                    .Text(System)
                    .Text("S" + subsystem.Code)
                    .Text(subsystem.Name)
                    .Text("S" + system.Code)
                    .EndRow();
            }
        }
        foreach (var (group, name) in _contracts)
        {
            groups.Text(Contract).Text(group).Text(name).Empty().EndRow();
        }
        var members = tables.Open("group_members", "grouping", "package", "group");
        foreach (var package in plan.Packages)
        {
            if (package.Step.Facet == "construction")
            {
                members.Text(Area).Text(package.Code).Text(AreaOf(package.Component.Code)).EndRow();
            }
            else if (package.Step.Facet == "commissioning")
            {
                members
                    .Text(System)
                    .Text(package.Code)
                    .Text("S" + package.Component.Account.Subsystem.Code)
                    .EndRow();
            }
            if (CostMix.IsOrdered(package))
            {
                members
                    .Text(Contract)
                    .Text(package.Code)
                    .Text(ContractOf(package.Component.Account.Unit))
                    .EndRow();
            }
        }
    }

    private static string AreaOf(string code) =>
        code[..2] switch
        {
            "01" => code[3] is '1' or '2' ? "A" : "C",
            "02" => "D",
            "03" or "04" or "09" => "E",
            "05" => "F",
            "06" => code[3] == '2' || code[3] == '3' ? "J" : "F",
            "07" => code[3] == '1' ? "C" : "B",
            "08" => "G",
            "10" => code[3] switch
            {
                '1' => "E",
                '2' => "D",
                '3' => "F",
                _ => "H",
            },
            _ => "H",
        };

    private static string ContractOf(string unit) =>
        unit switch
        {
            "MAR" => "K1",
            "CIV" => "K2",
            "MEC" => "K3",
            "PIP" => "K4",
            "ELE" => "K5",
            "INS" => "K6",
            "PRO" => "K7",
            _ => "K8",
        };
}
