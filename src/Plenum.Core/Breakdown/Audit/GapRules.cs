using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown.Audit;

/// <summary>Part of what an element was given belongs to no child.</summary>
public sealed class GapRule(
    ElementTree tree,
    ElementTotals totals,
    Func<long, string> amount,
    string what
) : ElementRule(tree)
{
    public override string Name => what == "money" ? "gap" : "gap_in_" + what;

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "Children hold all of their parent's work and nothing else. What was given to an element from above and is in "
        + "none of its children is work that nobody has.";

    public override string Remedy =>
        "Add the part that is missing, or give the rest to the parts that are there.";

    public override string Source => "MIL-STD-881F section 1, GAO-20-195G step 4 (100 % rule)";

    protected override string? Message(int row)
    {
        var gap = totals.Gap[row];
        if (gap <= 0)
        {
            return null;
        }

        return Tree.HasChildren(row)
            ? $"{Tree.Name(row)}: {MoneyText.Percent(gap, totals.Allotted[row])} of it ({amount(gap)}) belongs to no part."
            : $"{Tree.Name(row)} is not broken down: {amount(gap)} belong to no part.";
    }
}

/// <summary>The children of an element hold more than it was given.</summary>
public sealed class MoreThanTheWholeRule(
    ElementTree tree,
    ElementTotals totals,
    Func<long, string> amount,
    string what
) : ElementRule(tree)
{
    public override string Name =>
        what == "money" ? "more_than_the_whole" : "more_than_the_whole_in_" + what;

    public override Severity Severity => Severity.Error;

    public override string Explanation =>
        "Children hold all of their parent's work and nothing else. Together they must not have more than it was given.";

    public override string Remedy =>
        "Take the excess from the parts, or have more allotted from above.";

    public override string Source => "MIL-STD-881F section 1, GAO-20-195G step 4 (100 % rule)";

    protected override string? Message(int row) =>
        totals.Gap[row] < 0 && totals.Gap[row] != Cell.NoLong
            ? $"The parts of {Tree.Name(row)} have {amount(-totals.Gap[row])} more than it was given "
                + $"({amount(totals.Allotted[row])})."
            : null;
}
