using Plenum.Core.Foundation;

namespace Plenum.Core.Breakdown.Audit;

/// <summary>An element is split into exactly one.</summary>
public sealed class SingleChildRule(ElementTree tree) : ElementRule(tree)
{
    public override string Name => "single_child";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "A split that splits nothing adds a level and no knowledge.";

    public override string Remedy => "Add the parts that are missing, or take the level out.";

    public override string Source =>
        "PMI Practice Standard for Work Breakdown Structures, 3rd ed. 2019 (from memory)";

    protected override string? Message(int row) =>
        Tree.HasChildren(row) && Tree.SubtreeEnd[row + 1] == Tree.SubtreeEnd[row]
            ? $"{Tree.Name(row)} is split into one part only, {Tree.Code(row + 1)} {Tree.Name(row + 1)}."
            : null;
}

/// <summary>A branch that has no children and is no package.</summary>
public sealed class NotBrokenDownRule(ElementTree tree, ElementTotals totals) : ElementRule(tree)
{
    public override string Name => "not_broken_down";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "A branch without children is work of which nobody has said what it takes.";

    public override string Remedy =>
        "Break it down, or make it a planning package if its time has not come.";

    public override string Source => "GAO-20-195G step 4 (100 % rule)";

    // one with an allotted amount is a gap of that amount already
    protected override string? Message(int row) =>
        !Tree.HasChildren(row) && Tree.Kind(row) == ElementTable.Branch && totals.Gap[row] <= 0
            ? $"{Tree.Name(row)} is not broken down; its size is unknown."
            : null;
}

/// <summary>Equal names under one parent.</summary>
public sealed class DuplicateNameRule(ElementTree tree) : ElementRule(tree)
{
    private const int SmallFamily = 24;

    private readonly Dictionary<int, Dictionary<string, int>> names = [];

    public override string Name => "duplicate_name";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "Each piece of work is in exactly one element; two sisters of one name make people book to either.";

    public override string Remedy => "Name what makes them different, or make them one.";

    public override string Source => "GAO-20-195G step 4 (each piece of work in one element)";

    protected override string? Message(int row)
    {
        var parent = Tree.Parent[row];
        return parent >= 0 && FirstWithName(parent, row) is var other && other != row
            ? $"{Tree.Code(row)} and {Tree.Code(other)} have the same name, \"{Tree.Name(row)}\", under one parent."
            : null;
    }

    /// <summary>The first child of the name; of a large family all names are kept, a small one is looked through.</summary>
    private int FirstWithName(int parent, int row)
    {
        var name = Tree.Name(row);
        var looked = 0;
        for (var child = parent + 1; child < row; child = Tree.SubtreeEnd[child])
        {
            if (looked++ > SmallFamily)
            {
                names.TryAdd(parent, FirstOfName(parent));
                return names[parent][name];
            }

            if (string.Equals(Tree.Name(child), name, StringComparison.Ordinal))
            {
                return child;
            }
        }

        return row;
    }

    private Dictionary<string, int> FirstOfName(int parent)
    {
        Dictionary<string, int> first = new(StringComparer.Ordinal);
        foreach (var child in Children(parent))
        {
            first.TryAdd(Tree.Name(child), child);
        }

        return first;
    }
}

/// <summary>Too few or too many levels.</summary>
public sealed class DepthRule(ElementTree tree, AuditThresholds thresholds) : AuditRule
{
    public override string Name => "levels";

    public override Severity Severity => Severity.Note;

    public override string Explanation =>
        "Fewer than three levels seldom tell who does what; more than six rarely pay for their upkeep.";

    public override string Remedy =>
        "Break down further where the risk is, or take out levels that only repeat.";

    public override string Source =>
        "GAO-20-195G (at least three levels); common practice (at most six)";

    public override IEnumerable<Finding> Run()
    {
        if (
            tree.Count > 0
            && (tree.Depth < thresholds.FewestLevels || tree.Depth > thresholds.MostLevels)
        )
        {
            yield return Found(tree.Code(0), $"The breakdown has {tree.Depth} levels.");
        }
    }
}
