namespace Plenum.Core.Breakdown;

/// <summary>How near the parts stand that a cell is compared with.</summary>
public enum SisterCircle
{
    /// <summary>No other part has the type.</summary>
    None,

    /// <summary>The part of the same name and type in the sisters of its parent: pump of train A, pump of train B.</summary>
    SameNameBesideParent,

    /// <summary>Parts of the same type below the same parent.</summary>
    SameParent,

    /// <summary>All parts of the type in the project.</summary>
    SameType,
}

/// <summary>
/// What other parts of the same type have where a cell is to be decided: of the nearest circle in which at least one
/// has the activity planned; the cell's own part is among them.
/// </summary>
/// <param name="Circle">How near they stand.</param>
/// <param name="Parts">Numbers of the parts, in order.</param>
/// <param name="Cells">Their cells of the same activity.</param>
/// <param name="Median">
/// Median hours of the other parts that have hours planned, in hundredths, the mean of the two in the middle rounded
/// half up; null if none has.
/// </param>
public sealed record CellSisters(
    SisterCircle Circle,
    IReadOnlyList<int> Parts,
    IReadOnlyList<MatrixCell> Cells,
    long? Median
)
{
    /// <param name="matrix">The matrix.</param>
    /// <param name="part">Number of the part.</param>
    /// <param name="column">A column that the part's type needs.</param>
    public static CellSisters Of(ActivityMatrix matrix, int part, int column)
    {
        var tree = matrix.Tree;
        var row = matrix.PartRows[part];
        var parent = tree.Parent[row];
        var above = parent < 0 ? -1 : tree.Parent[parent];
        List<int> cousins = [];
        List<int> family = [];
        List<int> all = [];
        foreach (var other in matrix.PartsLike(part))
        {
            var otherRow = matrix.PartRows[other];
            var otherParent = tree.Parent[otherRow];
            all.Add(other);
            if (otherParent == parent)
            {
                family.Add(other);
            }

            if (
                above >= 0
                && otherParent >= 0
                && tree.Parent[otherParent] == above
                && (other == part || tree.Name(otherRow) == tree.Name(row))
            )
            {
                cousins.Add(other);
            }
        }

        foreach (
            var (circle, parts) in new[]
            {
                (SisterCircle.SameNameBesideParent, cousins),
                (SisterCircle.SameParent, family),
                (SisterCircle.SameType, all),
            }
        )
        {
            if (
                parts.Exists(other => other != part && IsPlanned(matrix.CellOf(other, column)))
                || (circle == SisterCircle.SameType && all.Count > 1)
            )
            {
                return Made(matrix, circle, parts, part, column);
            }
        }

        return Made(matrix, SisterCircle.None, [part], part, column);
    }

    private static CellSisters Made(
        ActivityMatrix matrix,
        SisterCircle circle,
        List<int> parts,
        int part,
        int column
    )
    {
        List<MatrixCell> cells = [.. parts.Select(other => matrix.CellOf(other, column)!.Value)];
        List<long> hours =
        [
            .. parts
                .Zip(cells)
                .Where(pair => pair.First != part && pair.Second.Hours > 0)
                .Select(pair => pair.Second.Hours)
                .Order(),
        ];
        return new CellSisters(circle, parts, cells, MedianOf(hours));
    }

    private static bool IsPlanned(MatrixCell? cell) => cell?.State is ActivityState.Planned;

    private static long? MedianOf(List<long> ordered)
    {
        if (ordered.Count == 0)
        {
            return null;
        }

        var middle = ordered.Count / 2;
        return ordered.Count % 2 == 1
            ? ordered[middle]
            : (ordered[middle - 1] + ordered[middle] + 1) / 2;
    }
}
