using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown;

/// <summary>What must hold for the breakdown before anything can be computed from it.</summary>
public static class BreakdownRules
{
    /// <summary>
    /// One root and no ring of parents. Source: MIL-STD-881F (one level-1 element) and IPMDAR CPD (single root).
    /// </summary>
    /// <returns>True if the rows form one tree.</returns>
    public static bool CheckTree(Table elements, IRowFaults faults)
    {
        var parents = ParentRules.ParentRows(elements, ElementTable.Parent);
        var sound = ParentRules.ReportRings(
            elements,
            ElementTable.Parent,
            parents,
            elements.Codes,
            faults
        );
        var root = -1;
        for (var row = 0; row < parents.Length; row++)
        {
            if (parents[row] >= 0)
            {
                continue;
            }

            if (root < 0)
            {
                root = row;
                continue;
            }

            sound = false;
            faults.Add(
                elements,
                row,
                ElementTable.Parent,
                "a parent for every element but one",
                $"{elements.Codes[row]} has no parent, but {elements.Codes[root]} is the root already"
            );
        }

        return sound;
    }

    /// <summary>Kinds fit positions: the root is the project, a package has no children.</summary>
    public static void CheckKinds(ElementTree tree, IRowFaults faults)
    {
        var kinds = tree.Elements.Ints(ElementTable.Kind);
        for (var row = 0; row < tree.Count; row++)
        {
            var kind = kinds[row];
            var isRoot = tree.Parent[row] < 0;
            if (kind == ElementTable.Project && !isRoot)
            {
                Refuse(
                    row,
                    "branch, work_package or planning_package",
                    "only the root is the project"
                );
            }
            else if (isRoot && kind is ElementTable.WorkPackage or ElementTable.PlanningPackage)
            {
                Refuse(row, "the kind project, or none", "the root is the project and no package");
            }
            else if (
                kind is ElementTable.WorkPackage or ElementTable.PlanningPackage
                && tree.HasChildren(row)
            )
            {
                Refuse(
                    row,
                    "the kind branch, or none, for an element with children",
                    "a package has no children"
                );
            }
        }

        void Refuse(int row, string expected, string why) =>
            faults.Add(tree.Elements, row, ElementTable.Kind, expected, $"{tree.Code(row)}: {why}");
    }

    /// <summary>Groups name parents of their own grouping without rings; packages are in groups that exist.</summary>
    public static void CheckGroups(Table groups, Table members, IRowFaults faults)
    {
        var groupings = groups.Texts(GroupTable.Grouping);
        var codes = groups.Texts(GroupTable.Group);
        var named = groups.Texts(GroupTable.Parent);
        Dictionary<(string, string), int> rowOf = [];
        for (var row = 0; row < groups.Count; row++)
        {
            rowOf[(groupings[row]!, codes[row]!)] = row;
        }

        var parents = new int[groups.Count];
        for (var row = 0; row < parents.Length; row++)
        {
            parents[row] = named[row] is { } parent
                ? rowOf.GetValueOrDefault((groupings[row]!, parent), -1)
                : -1;
            if (named[row] is not null && parents[row] < 0)
            {
                faults.Add(
                    groups,
                    row,
                    GroupTable.Parent,
                    "a group of the same grouping",
                    $"\"{named[row]}\" is no group of {groupings[row]}"
                );
            }
        }

        ParentRules.ReportRings(groups, GroupTable.Parent, parents, codes, faults);
        var memberGroupings = members.Texts(GroupMemberTable.Grouping);
        var memberGroups = members.Texts(GroupMemberTable.Group);
        for (var row = 0; row < members.Count; row++)
        {
            if (
                memberGroups[row] is { } group
                && !rowOf.ContainsKey((memberGroupings[row]!, group))
            )
            {
                faults.Add(
                    members,
                    row,
                    GroupMemberTable.Group,
                    "a group of the grouping",
                    $"\"{group}\" is no group of {memberGroupings[row]}"
                );
            }
        }
    }

    /// <summary>What comes before an activity of a work set is an activity of the same set.</summary>
    public static void CheckWorkSets(Table workSets, IRowFaults faults)
    {
        var types = workSets.Ints(WorkSetTable.PartType);
        var activities = workSets.Texts(WorkSetTable.Activity);
        var after = workSets.Texts(WorkSetTable.After);
        HashSet<(int, string)> known = [];
        for (var row = 0; row < workSets.Count; row++)
        {
            known.Add((types[row], activities[row]!));
        }

        for (var row = 0; row < workSets.Count; row++)
        {
            foreach (
                var name in (after[row] ?? "").Split(
                    ';',
                    StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries
                )
            )
            {
                if (!known.Contains((types[row], name)))
                {
                    faults.Add(
                        workSets,
                        row,
                        WorkSetTable.After,
                        "activities of the same work set, separated by semicolons",
                        $"\"{name}\" is no activity of this work set"
                    );
                }
            }
        }
    }
}
