namespace Plenum.Web.Parts;

/// <summary>A block of cells: the active one and the one at the other end.</summary>
public sealed record CellBlock(int Row, int Col, int ToRow, int ToCol)
{
    public int Top => Math.Min(Row, ToRow);

    public int Bottom => Math.Max(Row, ToRow);

    public int Left => Math.Max(0, Math.Min(Col, ToCol));

    public int Right => Math.Max(Col, ToCol);
}
