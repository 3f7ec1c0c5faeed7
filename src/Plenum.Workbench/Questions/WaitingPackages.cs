using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Questions;

/// <summary>
/// The packages that are in no control account, by the element on which an account for them would stand: the nearest
/// above that has accounts, else the one on the level on which most accounts stand.
/// </summary>
internal sealed class WaitingPackages
{
    private const int UsualLevel = 3;

    private readonly Project project;
    private readonly Dictionary<int, List<int>> byRow = [];
    private readonly HashSet<int> units = [];
    private readonly int level;

    public WaitingPackages(Project project)
    {
        this.project = project;
        var tree = project.Tree;
        level = LevelOfAccounts(project);
        var account = project.Placement.AccountOfPackage;
        int[]? inherited = null;
        for (var package = 0; package < account.Length; package++)
        {
            if (account[package] >= 0)
            {
                continue;
            }

            var row = Place(tree.PackageRows[package]);
            if (!byRow.TryGetValue(row, out var packages))
            {
                byRow[row] = packages = [];
            }

            packages.Add(package);
            inherited ??= tree.Inherited(ElementTable.Unit);
            if (inherited[tree.PackageRows[package]] is var unit && unit != Cell.NoInt)
            {
                units.Add(unit);
            }
        }
    }

    /// <summary>Ids of the units that they belong to.</summary>
    public IReadOnlySet<int> Units => units;

    /// <summary>Numbers of the packages that wait on an element, by its position; null for none.</summary>
    public IReadOnlyList<int>? At(int row) => byRow.GetValueOrDefault(row);

    /// <summary>An account could stand on the element: it is on that level, or a package above it.</summary>
    public bool CouldCarry(int row) =>
        row > 0
        && (
            project.Tree.Level[row] == level
            || (project.Tree.Level[row] < level && !project.Tree.HasChildren(row))
        );

    private int Place(int package)
    {
        var tree = project.Tree;
        var place = package;
        for (var row = package; row >= 0; row = tree.Parent[row])
        {
            if (project.Placement.AccountsOfElement[row].Length > 0)
            {
                return row;
            }

            if (tree.Level[row] >= level)
            {
                place = row;
            }
        }

        return place;
    }

    private static int LevelOfAccounts(Project project)
    {
        var rows = project.Placement.ElementRow;
        var count = new int[project.Tree.Depth + 1];
        foreach (var row in rows)
        {
            count[project.Tree.Level[row]]++;
        }

        return rows.Length == 0
            ? Math.Min(UsualLevel, Math.Max(1, project.Tree.Depth - 1))
            : Array.IndexOf(count, count.Max());
    }
}
