using Plenum.Core;
using Plenum.Core.Estimate;

namespace Plenum.Workbench.Maps;

/// <summary>The lens of the estimate: how well defined each package's estimate is, as a mix.</summary>
internal static class EstimateLens
{
    private static readonly LensClass[] Classes =
    [
        new("class1", "class 1", "ink"),
        new("class2", "class 2", "ink2"),
        new("class3", "class 3", "ink3"),
        new("class4", "class 4", "edge"),
        new("class5", "class 5", "rule"),
        new("no_class", "no class named", "neu"),
        new("no_estimate", "no estimate", "unf2"),
    ];

    private const byte NoEstimate = 6;

    public static Lens Of(Project project)
    {
        var tree = project.Tree;
        var estimate = project.Estimate;
        var classOf = new byte[tree.Count];
        for (var row = 0; row < classOf.Length; row++)
        {
            var package = tree.PackageOfRow[row];
            classOf[row] =
                package < 0 ? NoEstimate
                : estimate.ClassOf[package] is var known and not EstimateSums.NoLines
                    ? (byte)(known - 1)
                : NoEstimate;
        }

        return new Lens(
            project,
            new LensHead(
                new LensText("Estimate", "How well the estimate is defined, as a mix", null),
                new LensLegend("Estimate", Classes, Outlines: false)
            ),
            classOf
        )
        {
            IsMix = true,
        };
    }
}
