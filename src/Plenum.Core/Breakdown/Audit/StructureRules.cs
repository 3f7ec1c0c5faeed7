using Plenum.Core.Foundation;

namespace Plenum.Core.Breakdown.Audit;

/// <summary>An element is split into exactly one.</summary>
public sealed class SingleChildRule(ElementTree tree) : AuditRule
{
    public override string Name => "single_child";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "A split that splits nothing adds a level and no knowledge.";

    public override string Remedy => "Add the parts that are missing, or take the level out.";

    public override string Source =>
        "PMI Practice Standard for Work Breakdown Structures, 3rd ed. 2019 (from memory)";

    public override IEnumerable<Finding> Run()
    {
        for (var row = 0; row < tree.Count; row++)
        {
            if (tree.HasChildren(row) && tree.SubtreeEnd[row + 1] == tree.SubtreeEnd[row])
            {
                yield return Found(
                    tree.Code(row),
                    $"{tree.Name(row)} is split into one part only, {tree.Code(row + 1)} {tree.Name(row + 1)}."
                );
            }
        }
    }
}

/// <summary>A branch that has no children and is no package.</summary>
public sealed class NotBrokenDownRule(ElementTree tree, ElementTotals totals) : AuditRule
{
    public override string Name => "not_broken_down";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "A branch without children is work of which nobody has said what it takes.";

    public override string Remedy =>
        "Break it down, or make it a planning package if its time has not come.";

    public override string Source => "GAO-20-195G step 4 (100 % rule)";

    public override IEnumerable<Finding> Run()
    {
        for (var row = 0; row < tree.Count; row++)
        {
            // one with an allotted amount is a gap of that amount already
            if (
                !tree.HasChildren(row)
                && tree.Kind(row) == ElementTable.Branch
                && totals.Gap[row] <= 0
            )
            {
                yield return Found(
                    tree.Code(row),
                    $"{tree.Name(row)} is not broken down; its size is unknown."
                );
            }
        }
    }
}

/// <summary>Equal names under one parent.</summary>
public sealed class DuplicateNameRule(ElementTree tree) : AuditRule
{
    public override string Name => "duplicate_name";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "Each piece of work is in exactly one element; two sisters of one name make people book to either.";

    public override string Remedy => "Name what makes them different, or make them one.";

    public override string Source => "GAO-20-195G step 4 (each piece of work in one element)";

    public override IEnumerable<Finding> Run()
    {
        Dictionary<(int, string), int> seen = [];
        for (var row = 1; row < tree.Count; row++)
        {
            if (!seen.TryAdd((tree.Parent[row], tree.Name(row)), row))
            {
                var other = seen[(tree.Parent[row], tree.Name(row))];
                yield return Found(
                    tree.Code(row),
                    $"{tree.Code(row)} and {tree.Code(other)} have the same name, \"{tree.Name(row)}\", under one parent."
                );
            }
        }
    }
}

/// <summary>Too few or too many levels.</summary>
public sealed class DepthRule(ElementTree tree) : AuditRule
{
    private const int FewestLevels = 3;
    private const int MostLevels = 6;

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
        if (tree.Count > 0 && tree.Depth is < FewestLevels or > MostLevels)
        {
            yield return Found(tree.Code(0), $"The breakdown has {tree.Depth} levels.");
        }
    }
}
