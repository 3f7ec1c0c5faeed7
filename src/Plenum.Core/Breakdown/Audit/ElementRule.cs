using Plenum.Core.Foundation;

namespace Plenum.Core.Breakdown.Audit;

/// <summary>A rule that is asked at every element, by its position.</summary>
public abstract class ElementRule(ElementTree tree) : PlaceRule
{
    public sealed override int Places => tree.Count;

    protected ElementTree Tree => tree;

    public sealed override IEnumerable<Finding> At(int place) =>
        Message(place) is { } message ? [Found(tree.Code(place), message)] : Nothing;

    /// <summary>What is wrong with the element; null if nothing is.</summary>
    protected abstract string? Message(int row);

    /// <summary>The name begins with the parent's: what is wrong with it is told there.</summary>
    protected bool HasNameOfParent(int row) =>
        tree.Parent[row] is var parent and >= 0
        && tree.Name(row).StartsWith(tree.Name(parent), StringComparison.OrdinalIgnoreCase);

    /// <summary>Positions of an element's children, in order.</summary>
    protected IEnumerable<int> Children(int row)
    {
        for (var child = row + 1; child < tree.SubtreeEnd[row]; child = tree.SubtreeEnd[child])
        {
            yield return child;
        }
    }
}
