namespace Plenum.Core.Foundation.Tables;

/// <summary>The cost elements, in the order in which amounts are divided among them.</summary>
public static class CostElements
{
    public const int Count = 5;
    public const int Other = 4;

    public static readonly WordCodec Words = new(
        "labour",
        "material",
        "equipment",
        "subcontract",
        "other"
    );
}
