using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;
using Plenum.Core.Status;

namespace Plenum.Core;

/// <summary>
/// In what two values of a project differ: which columns, which settings, and of the elements and packages which, in
/// which columns. What is said of a package in other tables (budget, status, cost ...) counts as its own.
/// </summary>
public sealed class ProjectChange
{
    /// <summary>Tables whose rows belong to an element or a package, by the column that says to which.</summary>
    private static readonly IReadOnlyList<ColumnDefinition> Owners =
    [
        NotNeededTable.Element,
        PackageTable.Package,
        DelegationTable.Package,
        BudgetTable.Package,
        BudgetPeriodTable.Package,
        MilestoneTable.Package,
        ItemTable.Package,
        StatusTable.Package,
        MilestoneStatusTable.Package,
        ItemStepTable.Package,
        ActualTable.Charge,
        CommitmentTable.Package,
    ];

    private readonly Project before;
    private readonly Project after;
    private readonly HashSet<ColumnDefinition> columns = [];
    private readonly HashSet<string> settings = new(StringComparer.Ordinal);
    private readonly Dictionary<int, ElementChange> elements = [];

    private ProjectChange(Project before, Project after)
    {
        this.before = before;
        this.after = after;
    }

    /// <summary>Columns of any table in which a cell, or a row, has changed.</summary>
    public IReadOnlySet<ColumnDefinition> Columns => columns;

    /// <summary>Keys of the project table that were given, changed or taken out.</summary>
    public IReadOnlySet<string> Settings => settings;

    /// <summary>Elements that have changed, come or gone, themselves or in what is said of them, by id.</summary>
    public IReadOnlyDictionary<int, ElementChange> Elements => elements;

    /// <summary>By comparing all tables that are not the same object. Time: their cells.</summary>
    public static ProjectChange Between(Project before, Project after) => Of(before, after, null);

    /// <summary>From what a command says that it has changed; all other rows must be the same.</summary>
    /// <param name="before">The value before.</param>
    /// <param name="after">The value after.</param>
    /// <param name="changes">Which rows of which tables have changed; null if it is not known.</param>
    public static ProjectChange Of(Project before, Project after, IEnumerable<TableChange>? changes)
    {
        var change = new ProjectChange(before, after);
        if (changes is null)
        {
            foreach (var definition in ProjectLayout.Tables)
            {
                if (!ReferenceEquals(before[definition], after[definition]))
                {
                    change.Read(TableDifference.Between(before[definition], after[definition]));
                }
            }
        }
        else
        {
            foreach (var table in changes)
            {
                change.Read(
                    TableDifference.At(before[table.Definition], after[table.Definition], table)
                );
            }
        }

        return change;
    }

    /// <summary>Position that an element had before, by its id; −1 if it was not there.</summary>
    public int RowBefore(int id) => before[ElementTable.Definition].RowOf(id);

    /// <summary>The element at a position of the value before was a package.</summary>
    public bool WasPackage(int rowBefore) => before.Tree.PackageOfRow[rowBefore] >= 0;

    private void Read(TableDifference table)
    {
        foreach (var row in table.Rows)
        {
            columns.UnionWith(row.Columns);
            if (table.Definition == ProjectTable.Definition)
            {
                settings.Add(
                    (
                        row.After >= 0
                            ? table.After.Codes[row.After]
                            : table.Before.Codes[row.Before]
                    )!
                );
            }
            else if (table.Definition == ElementTable.Definition)
            {
                ReadElement(table, row);
            }
        }

        foreach (var owner in Owners)
        {
            if (owner.Table == table.Definition)
            {
                ReadOwners(table, owner);
            }
        }
    }

    private void ReadElement(TableDifference table, in RowDifference row)
    {
        var id = row.After >= 0 ? table.After.Ids[row.After] : table.Before.Ids[row.Before];
        Element(id).Columns.UnionWith(row.Columns);
    }

    private void ReadOwners(TableDifference table, ColumnDefinition owner)
    {
        foreach (var row in table.Rows)
        {
            Note(table.Before, row.Before, owner, row.Columns);
            Note(table.After, row.After, owner, row.Columns);
        }
    }

    private void Note(
        Table table,
        int row,
        ColumnDefinition owner,
        IReadOnlyCollection<ColumnDefinition> changed
    )
    {
        if (row < 0 || !Cell.IsGiven(table.Ints(owner)[row]))
        {
            return;
        }

        var (target, id) = owner.DecodeReference(table.Ints(owner)[row]);
        if (target >= 0 && owner.Targets[target] == ElementTable.Definition.Name)
        {
            Element(id).Columns.UnionWith(changed);
        }
    }

    private ElementChange Element(int id)
    {
        if (!elements.TryGetValue(id, out var element))
        {
            elements[id] = element = new ElementChange(
                before[ElementTable.Definition].RowOf(id),
                after[ElementTable.Definition].RowOf(id),
                new HashSet<ColumnDefinition>()
            );
        }

        return element;
    }
}

/// <summary>What has changed of an element.</summary>
/// <param name="Before">Its position before; −1 for one that has come.</param>
/// <param name="After">Its position after; −1 for one that has gone.</param>
/// <param name="Columns">Its own columns, and those of tables that say something of it.</param>
public sealed record ElementChange(int Before, int After, ISet<ColumnDefinition> Columns);
