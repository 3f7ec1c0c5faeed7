using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown;

/// <summary>
/// The work breakdown structure as positions in depth-first order: position 0 is the root, a subtree is the range
/// from an element's position to its <see cref="SubtreeEnd"/>. Packages are numbered in the same order.
/// </summary>
public sealed class ElementTree
{
    private readonly int[] parent;
    private readonly int[] level;
    private readonly int[] subtreeEnd;
    private readonly byte[] kind;
    private readonly int[] packageRows;
    private readonly int[] packageOfRow;

    /// <param name="elements">The elements, in depth-first order.</param>
    public ElementTree(Table elements)
    {
        Elements = elements;
        var count = elements.Count;
        parent = new int[count];
        level = new int[count];
        subtreeEnd = new int[count];
        kind = new byte[count];
        packageOfRow = new int[count];
        var parentIds = elements.Ints(ElementTable.Parent);
        var rowOfId = elements.RowOfId;
        for (var row = 0; row < count; row++)
        {
            parent[row] = parentIds[row] == Cell.NoInt ? -1 : rowOfId[parentIds[row]];
            level[row] = parent[row] < 0 ? 1 : level[parent[row]] + 1;
            Depth = Math.Max(Depth, level[row]);
        }

        for (var row = count - 1; row >= 0; row--)
        {
            subtreeEnd[row] = Math.Max(subtreeEnd[row], row + 1);
            if (parent[row] >= 0)
            {
                subtreeEnd[parent[row]] = Math.Max(subtreeEnd[parent[row]], subtreeEnd[row]);
            }
        }

        packageRows = NumberPackages(elements.Ints(ElementTable.Kind));
    }

    /// <summary>The same tree with other names and other cells that do not shape it.</summary>
    private ElementTree(Table elements, ElementTree shape)
    {
        Elements = elements;
        Depth = shape.Depth;
        parent = shape.parent;
        level = shape.level;
        subtreeEnd = shape.subtreeEnd;
        kind = shape.kind;
        packageRows = shape.packageRows;
        packageOfRow = shape.packageOfRow;
    }

    public Table Elements { get; }

    public int Count => parent.Length;

    /// <summary>The greatest level; the root has level 1.</summary>
    public int Depth { get; }

    /// <summary>Positions of the packages, in depth-first order.</summary>
    public ReadOnlySpan<int> PackageRows => packageRows;

    public int PackageCount => packageRows.Length;

    /// <summary>Position of each element's parent; −1 for the root.</summary>
    public ReadOnlySpan<int> Parent => parent;

    /// <summary>Level of each element; 1 for the root.</summary>
    public ReadOnlySpan<int> Level => level;

    /// <summary>Position after the last element of each subtree.</summary>
    public ReadOnlySpan<int> SubtreeEnd => subtreeEnd;

    /// <summary>Number of the package at a position; −1 for an element that is none.</summary>
    public ReadOnlySpan<int> PackageOfRow => packageOfRow;

    /// <summary>True if two tables hold the same elements in the same order, under the same parents and of the same kinds.</summary>
    public static bool HaveOneShape(Table one, Table other) =>
        one.Ids.AsSpan().SequenceEqual(other.Ids)
        && one.Ints(ElementTable.Parent).SequenceEqual(other.Ints(ElementTable.Parent))
        && one.Ints(ElementTable.Kind).SequenceEqual(other.Ints(ElementTable.Kind));

    /// <summary>The same tree over a table of the same shape; nothing is computed anew.</summary>
    public ElementTree Over(Table elements) => new(elements, this);

    /// <summary>The kind that an element has, named or by its position; a number of <see cref="ElementTable.Kinds"/>.</summary>
    public int Kind(int row) => kind[row];

    public bool HasChildren(int row) => subtreeEnd[row] > row + 1;

    /// <summary>The number of the package that an element id means; −1 for an element that is no package.</summary>
    public int PackageOfId(int elementId)
    {
        var row = Elements.RowOf(elementId);
        return row < 0 ? -1 : packageOfRow[row];
    }

    public string Code(int row) => Elements.Codes[row]!;

    public string Name(int row) => Elements.Texts(ElementTable.Name)[row] ?? "";

    /// <summary>
    /// For each element the value of the nearest element on the way to the root, itself included, that has one.
    /// </summary>
    public int[] Inherited(ColumnDefinition column)
    {
        var own = Elements.Ints(column);
        var inherited = new int[own.Length];
        for (var row = 0; row < own.Length; row++)
        {
            inherited[row] =
                own[row] != Cell.NoInt ? own[row]
                : parent[row] < 0 ? Cell.NoInt
                : inherited[parent[row]];
        }

        return inherited;
    }

    private int[] NumberPackages(ReadOnlySpan<int> named)
    {
        List<int> rows = [];
        for (var row = 0; row < named.Length; row++)
        {
            kind[row] = (byte)(
                named[row] != Cell.NoInt ? named[row]
                : parent[row] < 0 ? ElementTable.Project
                : HasChildren(row) ? ElementTable.Branch
                : ElementTable.WorkPackage
            );
            var isPackage = kind[row] is ElementTable.WorkPackage or ElementTable.PlanningPackage;
            packageOfRow[row] = isPackage ? rows.Count : -1;
            if (isPackage)
            {
                rows.Add(row);
            }
        }

        return [.. rows];
    }
}
