using System.Globalization;

namespace Plenum.Oracle.Generator;

/// <summary>Makes up the breakdown, the units, the people, the accounts and the groupings.</summary>
internal static class BreakdownGenerator
{
    private const int MostPackages = 40;
    private static readonly string[] GroupingNames = ["area", "system"];
    private static readonly string[] People = ["ann", "bo"];

    public static void AddTo(Draft draft)
    {
        AddUnits(draft);
        MakeElements(draft);
        WriteElements(draft);
        AddAccounts(draft);
    }

    public static void AddGroupings(Draft draft)
    {
        var dice = draft.Dice;
        foreach (var grouping in GroupingNames.Take(dice.Between(0, 2)))
        {
            var groups = new List<string>();
            for (var number = dice.Between(1, 6); number > 0; number--)
            {
                var parent = groups.Count > 0 && dice.Chance(40) ? dice.Pick<string>(groups) : "";
                groups.Add("G" + Text(number + 7));
                draft.Text.Add(
                    "groups",
                    ("grouping", grouping),
                    ("group", groups[^1]),
                    ("name", "Group; " + Text(number)),
                    ("parent", parent)
                );
            }

            foreach (var package in draft.Packages.Where(_ => dice.Chance(70)))
            {
                draft.Text.Add(
                    "group_members",
                    ("grouping", grouping),
                    ("package", package.Code),
                    ("group", dice.Pick<string>(groups))
                );
            }
        }
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static void AddUnits(Draft draft)
    {
        var dice = draft.Dice;
        for (var number = dice.Between(0, 6); number > 0; number--)
        {
            var parent =
                draft.Units.Count > 0 && dice.Chance(60) ? dice.Pick<string>(draft.Units) : "";
            draft.Units.Add("U" + Text(number + 6));
            draft.Text.Add(
                "units",
                ("unit", draft.Units[^1]),
                ("name", "Unit " + Text(number)),
                ("parent", parent)
            );
        }

        foreach (var person in People)
        {
            var unit = draft.Units.Count > 0 ? dice.Pick<string>(draft.Units) : "";
            draft.Text.Add(
                "people",
                ("person", person),
                ("name", "Person " + person),
                ("unit", unit)
            );
        }
    }

    /// <summary>A random tree of 5 to 60 elements; leaves are packages, apart from a few childless branches.</summary>
    private static void MakeElements(Draft draft)
    {
        var dice = draft.Dice;
        var structured = dice.Chance(60);
        Add(draft, null, structured ? "1" : "R");
        var count = dice.Between(5, 60);
        while (draft.Elements.Count < count)
        {
            var parent = dice.Pick<DraftElement>(draft.Elements);
            if (parent.Level > 5 || (parent.Level > 2 && dice.Chance(40)))
            {
                continue;
            }

            var code = structured
                ? parent.Code + "." + Text(parent.Children.Count + 1)
                : "E" + Text(draft.Elements.Count + dice.Pick(0, 100, 200) * 1000);
            Add(draft, parent, code);
        }

        foreach (var leaf in draft.Elements.Where(element => element.Children.Count == 0))
        {
            var packages = draft.Packages.Count;
            leaf.Kind =
                packages >= MostPackages || (packages > 0 && dice.Chance(8))
                    ? "branch"
                    : "work_package";
            if (leaf.IsPackage)
            {
                leaf.Kind = dice.Chance(12) ? "planning_package" : leaf.Kind;
                draft.Packages.Add(new DraftPackage { Element = leaf });
            }
        }
    }

    private static void Add(Draft draft, DraftElement? parent, string code)
    {
        var element = new DraftElement
        {
            Code = code,
            Parent = parent,
            Level = (parent?.Level ?? 0) + 1,
        };
        element.Unit =
            draft.Units.Count > 0 && draft.Dice.Chance(25)
                ? draft.Dice.Pick<string>(draft.Units)
                : "";
        parent?.Children.Add(element);
        draft.Elements.Add(element);
    }

    private static void WriteElements(Draft draft)
    {
        var dice = draft.Dice;
        foreach (var element in draft.Elements)
        {
            element.Quantity =
                element.IsPackage && dice.Chance(60)
                    ? draft.Decimal(dice.Between(1, 90000), 2)
                    : "";
        }

        var ordered = draft.Elements.Where(_ => dice.Chance(25)).ToHashSet();
        foreach (var element in draft.Elements)
        {
            // Kind is left to the position where that gives the same.
            var kindByPosition = element.Kind is "" or "work_package" && dice.Chance(60);
            draft.Text.Add(
                "elements",
                ("code", element.Code),
                ("parent", element.Parent?.Code ?? ""),
                ("order", Order(draft, element, ordered)),
                ("name", "Part, \"" + element.Code + "\""),
                ("kind", kindByPosition ? "" : Kind(element)),
                (
                    "split",
                    element.Children.Count > 0
                        ? dice.Pick("phase", "part", "discipline", "lot")
                        : ""
                ),
                ("unit", element.Unit),
                ("quantity", element.Quantity),
                ("quantity_unit", element.Quantity.Length > 0 ? "m" : ""),
                ("allotted", dice.Chance(30) ? draft.Money(dice.Between(0, 5_000_000)) : ""),
                ("allotted_hours", dice.Chance(15) ? draft.Hours(4000) : "")
            );
        }
    }

    private static string Kind(DraftElement element)
    {
        if (element.Kind.Length > 0)
        {
            return element.Kind;
        }

        return element.Parent is null ? "project" : "branch";
    }

    /// <summary>Either all sisters have an order of their own, different from that of their codes, or none.</summary>
    private static string Order(Draft draft, DraftElement element, HashSet<DraftElement> ordered)
    {
        if (element.Parent is not { } parent || !ordered.Contains(parent))
        {
            return "";
        }

        return Text(
            (parent.Children.Count - parent.Children.IndexOf(element))
                * (1 + (draft.Elements.IndexOf(parent) % 3))
        );
    }

    private static void AddAccounts(Draft draft)
    {
        var dice = draft.Dice;
        if (draft.Units.Count == 0)
        {
            return;
        }

        var mayBreach = dice.Chance(15);
        var taken = new HashSet<(string Element, string Unit)>();
        for (var tries = dice.Between(0, 14); tries > 0 && draft.Accounts.Count < 10; tries--)
        {
            var element = dice.Pick<DraftElement>(draft.Elements);
            var unit = dice.Chance(60) ? UnitOf(draft, element) : dice.Pick<string>(draft.Units);
            var breach = draft.Accounts.Exists(account =>
                account.Element != element
                && (
                    account.Element.SelfAndAncestors().Contains(element)
                    || element.SelfAndAncestors().Contains(account.Element)
                )
            );
            if (
                (breach && !mayBreach)
                || (element.Parent is null && dice.Chance(70))
                || !taken.Add((element.Code, unit))
            )
            {
                continue;
            }

            var code = "CA-" + Text(dice.Pick(0, 1, 2) * 50 + draft.Accounts.Count + 1);
            draft.Accounts.Add((code, element));
            draft.Text.Add(
                "accounts",
                ("account", code),
                ("element", element.Code),
                ("unit", unit),
                ("manager", dice.Pick("ann", "bo")),
                ("name", dice.Chance(50) ? "Account " + code : "")
            );
        }
    }

    private static string UnitOf(Draft draft, DraftElement element) =>
        element.SelfAndAncestors().FirstOrDefault(ancestor => ancestor.Unit.Length > 0)?.Unit
        ?? draft.Dice.Pick<string>(draft.Units);
}
