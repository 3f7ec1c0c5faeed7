namespace Plenum.Bench.Data;

/// <summary>A breakdown as levels in depth-first order, with four measures of its own at every element.</summary>
internal sealed class Breakdown
{
    public const int Measures = 4;
    private const int DeepestLevel = 9;

    public Breakdown(int elements, ulong seed)
    {
        var draw = new Draw(seed);
        Level = new int[elements];
        SubtreeEnd = new int[elements];
        Parent = new int[elements];
        Own = [.. Enumerable.Range(0, Measures).Select(_ => new long[elements])];
        Span<int> open = stackalloc int[DeepestLevel + 1];
        for (var row = 0; row < elements; row++)
        {
            // mostly leaves near the bottom, now and then back up: some 7 children to a branch
            var above = row == 0 ? 0 : Level[row - 1];
            var level =
                row == 0 ? 1
                : draw.Below(7) > 0 ? Math.Max(2, above)
                : draw.Between(2, Math.Min(DeepestLevel, above + 1));
            if (row > 0 && draw.Below(7) == 0)
            {
                level = Math.Min(DeepestLevel, above + 1);
            }

            Level[row] = level;
            Parent[row] = level == 1 ? -1 : open[level - 1];
            open[level] = row;
            for (var measure = 0; measure < Measures; measure++)
            {
                Own[measure][row] = draw.Below(1_000_000);
            }
        }

        for (var row = elements - 1; row >= 0; row--)
        {
            SubtreeEnd[row] = Math.Max(SubtreeEnd[row], row + 1);
            if (Parent[row] >= 0)
            {
                SubtreeEnd[Parent[row]] = Math.Max(SubtreeEnd[Parent[row]], SubtreeEnd[row]);
            }
        }

        Depth = Level.Max();
    }

    public int Count => Level.Length;

    /// <summary>Level of each element, 1 for the root.</summary>
    public int[] Level { get; }

    public int[] Parent { get; }

    /// <summary>Place after the last element of each subtree.</summary>
    public int[] SubtreeEnd { get; }

    public int Depth { get; }

    public long[][] Own { get; }
}
