using Plenum.Core;

namespace Plenum.Workbench.Maps;

/// <summary>
/// The lens of the matrix of parts by activities: parts with every activity decided, or not yet. An element above parts
/// says whether something is missing below it.
/// </summary>
internal static class PartsLens
{
    private const byte Decided = 0;
    private const byte Below = 1;
    private const byte Missing = 2;
    private const byte Package = 3;
    private const byte NoPart = 4;

    public static Lens Of(Project project)
    {
        var tree = project.Tree;
        var matrix = project.ActivityMatrix;
        var classOf = new byte[tree.Count];
        var undecided = new int[tree.Count];
        for (var row = 0; row < classOf.Length; row++)
        {
            var (first, end) = matrix.PartsIn(row, tree.SubtreeEnd[row]);
            var (decided, cells) = matrix.Count(first, end);
            var own = first < end && matrix.PartRows[first] == row;
            var (ownDecided, ownCells) = own ? matrix.Count(first, first + 1) : (0, 0);
            undecided[row] = cells - decided;
            classOf[row] =
                ownDecided < ownCells ? Missing
                : decided < cells ? Below
                : first < end ? Decided
                : tree.PackageOfRow[row] >= 0 ? Package
                : NoPart;
        }

        LensClass[] classes =
        [
            new("decided", "every activity decided", "neu"),
            new("missing_below", "something missing below", "unf1", "ruled"),
            new("missing", "activity missing", "unf3", "ruled"),
            new("package", "work package", "none"),
            new("no_part", "no part type", "raised"),
        ];
        return new Lens(
            project,
            new LensHead(
                new LensText("Breakdown", "Parts with every activity decided, or not yet", null),
                new LensLegend("Parts and activities", classes, Outlines: false)
            ),
            classOf,
            row =>
                undecided[row] switch
                {
                    0 => "",
                    1 => "1 cell undecided",
                    var count => $"{Words.Amounts.Count(count)} cells undecided",
                }
        );
    }
}
