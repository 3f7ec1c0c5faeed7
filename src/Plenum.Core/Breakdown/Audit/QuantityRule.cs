using System.Globalization;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown.Audit;

/// <summary>Children in the same unit have less quantity together than their parent, or more.</summary>
public sealed class QuantityRule(ElementTree tree, bool more) : ElementRule(tree)
{
    public override string Name => more ? "more_than_the_whole_in_quantity" : "gap_in_quantity";

    public override Severity Severity => more ? Severity.Error : Severity.Warning;

    public override string Explanation =>
        "Children hold all of their parent's work and nothing else. Where parent and children are all counted in the same "
        + "unit, their quantities add up to the parent's.";

    public override string Remedy => "Correct the quantities, or add the part that is missing.";

    public override string Source => "MIL-STD-881F section 1, GAO-20-195G step 4 (100 % rule)";

    protected override string? Message(int row)
    {
        var quantities = Tree.Elements.Decimals(ElementTable.Quantity);
        var unit = Tree.Elements.Texts(ElementTable.QuantityUnit)[row];
        var whole = quantities[row];
        if (!Tree.HasChildren(row) || unit is null || !Cell.IsGiven(whole))
        {
            return null;
        }

        var sum = 0m;
        foreach (var child in Children(row))
        {
            var quantity = Tree.Elements.Decimals(ElementTable.Quantity)[child];
            if (
                !Cell.IsGiven(quantity)
                || Tree.Elements.Texts(ElementTable.QuantityUnit)[child] != unit
            )
            {
                return null;
            }

            sum += quantity;
        }

        if (more ? sum <= whole : sum >= whole)
        {
            return null;
        }

        return string.Create(
            CultureInfo.InvariantCulture,
            $"The parts of {Tree.Name(row)} have {sum:0.####} {unit} together, and it has {whole:0.####} {unit}."
        );
    }
}
