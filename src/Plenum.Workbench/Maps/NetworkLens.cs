using Plenum.Core;
using Plenum.Core.Network;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Maps;

/// <summary>
/// The lens of the network: total float of each package in working days, the least of its activities. A branch shows
/// the tightest below it. Negative float counts as none.
/// </summary>
internal static class NetworkLens
{
    private const byte None = 0;
    private const byte Over = 4;
    private const byte Finished = 5;

    private static readonly int[] Steps = [0, 10, 30, 60];

    private static readonly LensClass[] Classes =
    [
        new("none", "no float", "ink"),
        new("to_10", "1 to 10 days", "ink2"),
        new("to_30", "11 to 30", "rule"),
        new("to_60", "31 to 60", "neu"),
        new("over_60", "more", "none"),
        new("finished", "finished", "none", "dotted"),
    ];

    /// <exception cref="QuestionException">The network cannot be computed.</exception>
    public static Lens Of(Project project)
    {
        var tree = project.Tree;
        var floats = LeastFloats(project);
        var classOf = new byte[tree.Count];
        classOf.AsSpan().Fill(Finished);
        for (var row = classOf.Length - 1; row >= 0; row--)
        {
            if (tree.PackageOfRow[row] is var package and >= 0)
            {
                classOf[row] = ClassOf(floats[package]);
            }

            // classes stand from tight to loose, so that the tightest is the least
            if (tree.Parent[row] is var parent and >= 0)
            {
                classOf[parent] = Math.Min(classOf[parent], classOf[row]);
            }
        }

        return new Lens(
            project,
            new LensHead(
                new LensText(
                    "Network",
                    "Total float in working days, tightest inside",
                    project.Settings.StatusDate
                ),
                new LensLegend("Total float", Classes)
            ),
            classOf,
            row =>
                tree.PackageOfRow[row] is var package and >= 0 && floats[package] is { } days
                    ? FormattableString.Invariant($"{days} working days")
                    : ""
        );
    }

    private static byte ClassOf(int? days)
    {
        if (days is null)
        {
            return Finished;
        }

        for (var step = None; step < Over; step++)
        {
            if (days <= Steps[step])
            {
                return step;
            }
        }

        return Over;
    }

    /// <summary>For each package the least total float of its activities; null when all are finished.</summary>
    private static int?[] LeastFloats(Project project)
    {
        try
        {
            var network = project.Network;
            var floats = new int?[project.Tree.PackageCount];
            for (var activity = 0; activity < network.Dates.Count; activity++)
            {
                if (network.Dates.TotalFloat(activity) is { } days)
                {
                    var package = network.Package[activity];
                    floats[package] = Math.Min(floats[package] ?? int.MaxValue, days);
                }
            }

            return floats;
        }
        catch (NetworkException wrong)
        {
            throw new QuestionException(wrong.Message);
        }
    }
}
