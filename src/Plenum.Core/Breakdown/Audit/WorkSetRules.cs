using Plenum.Core.Foundation;

namespace Plenum.Core.Breakdown.Audit;

/// <summary>A part lacks activities that any part of its type needs.</summary>
public sealed class MissingActivityRule(ElementTree tree, PartActivities activities)
    : ElementRule(tree)
{
    public override string Name => "missing_activity";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "Any part of this type needs these activities. One that is neither planned below the part nor ruled out with a "
        + "reason has been forgotten.";

    public override string Remedy =>
        "Add a package that carries it out, or say why it is not needed.";

    public override string Source =>
        "ISO 19008 and NORSOK Z-014 (parts by activities); definition of our own";

    protected override string? Message(int row)
    {
        var needed = activities.Needed(row);
        if (needed.Count == 0)
        {
            return null;
        }

        var planned = activities.Planned(row);
        var missing = needed
            .Where(activity => !planned.Contains(activity) && !activities.IsRuledOut(row, activity))
            .ToList();
        return missing.Count == 0
            ? null
            : $"{Tree.Name(row)} has no package for {string.Join(", ", missing)}, and nobody has ruled "
                + (missing.Count == 1 ? "it out." : "them out.");
    }
}

/// <summary>An activity is planned below a part and ruled out for it.</summary>
public sealed class PlannedNotNeededRule(ElementTree tree, PartActivities activities)
    : ElementRule(tree)
{
    public override string Name => "planned_and_not_needed";

    public override Severity Severity => Severity.Error;

    public override string Explanation =>
        "An activity cannot be planned and ruled out for the same part; one of the two is wrong.";

    public override string Remedy => "Take out the package, or the line that rules it out.";

    public override string Source => "definition of our own";

    protected override string? Message(int row)
    {
        var ruledOut = activities.RuledOut(row);
        if (ruledOut.Count == 0)
        {
            return null;
        }

        var both = ruledOut.Where(activities.Planned(row).Contains).ToList();
        return both.Count == 0
            ? null
            : $"{string.Join(", ", both)} of {Tree.Name(row)} is planned and is ruled out as not needed.";
    }
}
