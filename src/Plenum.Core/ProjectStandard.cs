using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Breakdown.Splits;
using Plenum.Core.Estimate;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core;

/// <summary>
/// A standard breakdown: a project that holds what can be used again. Parts with their order, split logic, part types,
/// dictionary and hazards; work sets; what is not needed and what was left out, with reasons; techniques with the
/// weights of milestones; norms (unit and hours per unit). No person, unit of an organisation, account, amount of money,
/// hours of a part, quantity, date, status or register entry, and none of a project's own <c>x_</c> fields.
/// </summary>
public static class ProjectStandard
{
    private static readonly Dictionary<TableDefinition, ColumnDefinition[]> Kept = new()
    {
        [ProjectTable.Definition] = [ProjectTable.Key, ProjectTable.Value],
        [PartTypeTable.Definition] = [PartTypeTable.PartType, PartTypeTable.Name],
        [WorkSetTable.Definition] = [.. WorkSetTable.Definition.Columns],
        [ElementTable.Definition] =
        [
            ElementTable.Code,
            ElementTable.Parent,
            ElementTable.Order,
            ElementTable.Name,
            ElementTable.Kind,
            ElementTable.Split,
            ElementTable.PartType,
            ElementTable.Activity,
            ElementTable.Description,
            ElementTable.Output,
            ElementTable.Included,
            ElementTable.Excluded,
            ElementTable.Acceptance,
            ElementTable.Assumptions,
            ElementTable.QuantityUnit,
            ElementTable.Hazards,
        ],
        [SplitWordTable.Definition] = [.. SplitWordTable.Definition.Columns],
        [NotNeededTable.Definition] = [.. NotNeededTable.Definition.Columns],
        [LeftOutTable.Definition] = [.. LeftOutTable.Definition.Columns],
        [PackageTable.Definition] =
        [
            PackageTable.Package,
            PackageTable.Technique,
            PackageTable.Spread,
        ],
        [MilestoneTable.Definition] =
        [
            MilestoneTable.Package,
            MilestoneTable.Milestone,
            MilestoneTable.Weight,
        ],
        [EstimateTable.Definition] =
        [
            EstimateTable.Package,
            EstimateTable.CostElement,
            EstimateTable.Line,
            EstimateTable.Unit,
            EstimateTable.HoursPerUnit,
        ],
    };

    /// <summary>Settings of a project that its standard keeps; the mask of codes and names of levels of a whole only.</summary>
    private static readonly string[] KeptSettings = ["language"];

    private static readonly string[] KeptSettingsOfTheWhole = ["code_mask", "level_names"];

    /// <summary>The columns of a table that a standard breakdown holds; none for most tables.</summary>
    public static IReadOnlyList<ColumnDefinition> Columns(TableDefinition table) =>
        Kept.GetValueOrDefault(table) ?? [];

    /// <summary>An element of a project and all below it, as a standard breakdown.</summary>
    /// <param name="project">The project.</param>
    /// <param name="root">Position of the element that becomes the root; it must have children.</param>
    public static Project Of(Project project, int root)
    {
        var tree = project.Tree;
        if (!tree.HasChildren(root))
        {
            throw new ArgumentException("A standard breakdown needs parts.", nameof(root));
        }

        var elements = tree
            .Elements.Ids.AsSpan(root, tree.SubtreeEnd[root] - root)
            .ToArray()
            .ToHashSet();
        HashSet<int> types = [];
        foreach (var type in tree.Elements.Ints(ElementTable.PartType)[root..tree.SubtreeEnd[root]])
        {
            types.Add(type);
        }

        List<Table> tables =
        [
            Settings(project, root),
            Rows(project, PartTypeTable.Definition, null, types),
            Rows(project, WorkSetTable.Definition, WorkSetTable.PartType, types),
            Elements(project, elements),
            Rows(project, SplitWordTable.Definition, null, null),
            Rows(project, NotNeededTable.Definition, NotNeededTable.Element, elements),
            Rows(project, LeftOutTable.Definition, LeftOutTable.Element, elements),
            Packages(project, elements),
            Rows(project, MilestoneTable.Definition, MilestoneTable.Package, elements),
            Norms(project, elements),
        ];
        return Project.Empty.With(tables);
    }

    private static Table Settings(Project project, int root)
    {
        var tree = project.Tree;
        var settings = project[ProjectTable.Definition];
        List<(string Key, string Value)> rows =
        [
            ("code", tree.Code(root)),
            ("name", tree.Name(root)),
        ];
        foreach (var key in root == 0 ? [.. KeptSettings, .. KeptSettingsOfTheWhole] : KeptSettings)
        {
            if (settings.RowOfCode(key) is var row and >= 0)
            {
                rows.Add((key, settings.Texts(ProjectTable.Value)[row]!));
            }
        }

        return new Table(
            ProjectTable.Definition,
            [.. Enumerable.Range(1, rows.Count)],
            [
                new TextColumn([.. rows.Select(row => row.Key)]),
                new TextColumn([.. rows.Select(row => row.Value)]),
            ]
        );
    }

    private static Table Elements(Project project, HashSet<int> elements)
    {
        var table = Rows(project, ElementTable.Definition, null, elements);
        var parents = table.Ints(ElementTable.Parent).ToArray();
        var kinds = table.Ints(ElementTable.Kind).ToArray();
        var orders = table.Ints(ElementTable.Order).ToArray();
        parents[0] = kinds[0] = orders[0] = Cell.NoInt;
        return table
            .With(ElementTable.Parent, new NumberColumn<int>(parents))
            .With(ElementTable.Kind, new NumberColumn<int>(kinds))
            .With(ElementTable.Order, new NumberColumn<int>(orders));
    }

    /// <summary>Techniques. Apportioned effort follows a package with a budget, so it is decided when there is money.</summary>
    private static Table Packages(Project project, HashSet<int> elements)
    {
        var table = project[PackageTable.Definition];
        var bases = table.Ints(PackageTable.Base);
        var packages = table.Ints(PackageTable.Package);
        List<int> kept = [];
        for (var row = 0; row < table.Count; row++)
        {
            if (!Cell.IsGiven(bases[row]) && elements.Contains(packages[row]))
            {
                kept.Add(row);
            }
        }

        return Picked(table, kept);
    }

    private static Table Norms(Project project, HashSet<int> elements)
    {
        var table = Rows(project, EstimateTable.Definition, EstimateTable.Package, elements);
        return Picked(
            table,
            [
                .. Enumerable
                    .Range(0, table.Count)
                    .Where(row => !table[EstimateTable.HoursPerUnit].IsMissing(row)),
            ]
        );
    }

    /// <summary>The rows whose id, or whose reference in a column, is in a set; all of them without a set.</summary>
    private static Table Rows(
        Project project,
        TableDefinition definition,
        ColumnDefinition? reference,
        HashSet<int>? ids
    )
    {
        var table = project[definition];
        List<int> rows = [];
        for (var row = 0; row < table.Count; row++)
        {
            if (
                ids?.Contains(reference is null ? table.Ids[row] : table.Ints(reference)[row])
                != false
            )
            {
                rows.Add(row);
            }
        }

        return Picked(table, rows);
    }

    private static Table Picked(Table table, List<int> rows)
    {
        int[] picked = [.. rows];
        var kept = Kept[table.Definition];
        return new Table(
            table.Definition,
            Array.ConvertAll(picked, row => table.Ids[row]),
            [
                .. table.Definition.Columns.Select(column =>
                    kept.Contains(column)
                        ? table[column].Pick(picked)
                        : Missing(column, picked.Length)
                ),
            ]
        );
    }

    private static Column Missing(ColumnDefinition column, int count)
    {
        var builder = column.NewBuilder();
        for (var row = 0; row < count; row++)
        {
            builder.AddMissing();
        }

        return builder.Build();
    }
}
