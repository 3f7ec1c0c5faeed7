using System.Globalization;
using Plenum.Core;

namespace Plenum.Workbench.Maps;

/// <summary>
/// What the levels of the breakdown are called: as the project says (<c>level_names</c>), else "Project" for the root,
/// "Work package" for a level on which nothing but packages stand, and "Level 3" for the others.
/// </summary>
internal static class LevelNames
{
    public static string[] Of(Project project)
    {
        var tree = project.Tree;
        var given = project.Settings.LevelNames;
        var names = new string[tree.Depth];
        var isOfPackages = new bool[tree.Depth + 1];
        isOfPackages.AsSpan().Fill(true);
        for (var row = 0; row < tree.Count; row++)
        {
            isOfPackages[tree.Level[row]] &= tree.PackageOfRow[row] >= 0;
        }

        for (var level = 1; level <= names.Length; level++)
        {
            names[level - 1] =
                level <= given.Count ? given[level - 1]
                : level == 1 ? "Project"
                : isOfPackages[level] ? "Work package"
                : "Level " + level.ToString(CultureInfo.InvariantCulture);
        }

        return names;
    }
}
