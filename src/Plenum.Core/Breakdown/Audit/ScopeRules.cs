using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Scope;

namespace Plenum.Core.Breakdown.Audit;

/// <summary>A rule that is asked at every scope item.</summary>
public abstract class ScopeRule(ScopeCoverage coverage) : PlaceRule
{
    public sealed override int Places => coverage.HasTraces ? coverage.Scope.Count : 0;

    protected ScopeCoverage Coverage => coverage;

    public sealed override IEnumerable<Finding> At(int place) =>
        !coverage.IsWithdrawn(place) && Message(place) is { } message
            ? [Found(coverage.Scope.Codes[place]!, message)]
            : Nothing;

    protected abstract string? Message(int item);

    protected string Text(int item)
    {
        var text = coverage.Scope.Texts(ScopeTable.Text)[item] ?? "";
        const int Most = 80;
        return text.Length <= Most ? text : string.Concat(text.AsSpan(0, Most - 1), "…");
    }

    protected bool Is(int item, string kind) =>
        coverage.Scope.Ints(ScopeTable.Kind)[item] is var number
        && Cell.IsGiven(number)
        && ScopeTable.Kinds.Format(number) == kind;
}

/// <summary>A deliverable or a requirement that no element answers.</summary>
public sealed class NotCoveredRule(ScopeCoverage coverage, string kind) : ScopeRule(coverage)
{
    public override string Name => kind + "_not_covered";

    public override Severity Severity => kind == "deliverable" ? Severity.Warning : Severity.Note;

    public override string Explanation =>
        $"Every {kind} of the scope statement is answered by an element, or by elements for all of its sub-items. One that "
        + "is not will be missing, or be done without budget.";

    public override string Remedy => "Name the element that answers it, or add one.";

    public override string Source => "MIL-STD-881F section 1, GAO-20-195G step 4 (100 % rule)";

    protected override string? Message(int item) =>
        Is(item, kind) && Coverage.OfItem(item) == Breakdown.Coverage.None
            ? $"No element answers the {kind} \"{Text(item)}\""
            : null;
}

/// <summary>Of a deliverable's wording one phrase only is answered, or one that has to be answered is not.</summary>
public sealed class PartlyCoveredRule(ScopeCoverage coverage) : ScopeRule(coverage)
{
    public override string Name => "deliverable_partly_covered";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "A deliverable of which a single phrase is traced to elements, or not every phrase that has to be answered, leaves the "
        + "rest of its wording to nobody.";

    public override string Remedy => "Trace the other phrases, or the whole.";

    public override string Source =>
        "MIL-STD-881F section 1, GAO-20-195G step 4 (100 % rule); definition of our own";

    protected override string? Message(int item) =>
        (Is(item, "deliverable") || Is(item, "requirement"))
        && Coverage.OfItem(item) == Breakdown.Coverage.Partly
            ? Open(item)
            : null;

    private string Open(int item) =>
        Coverage.Unanswered(item) switch
        {
            [] => $"Only a phrase of \"{Text(item)}\" is answered by elements.",
            [var phrase] => $"Nothing answers \"{phrase}\" of \"{Text(item)}\"",
            var phrases =>
                $"Nothing answers {string.Join(", ", phrases.Select(phrase => $"\"{phrase}\""))} of \"{Text(item)}\"",
        };
}

/// <summary>An element answers what the scope statement excludes.</summary>
public sealed class ExclusionRule(ScopeCoverage coverage) : ScopeRule(coverage)
{
    public override string Name => "exclusion_answered";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "What the scope statement excludes is not part of the work; an element that answers it does work for nothing.";

    public override string Remedy =>
        "Take the element out, or have the scope statement changed and paid for.";

    public override string Source => "common practice";

    protected override string? Message(int item) =>
        Is(item, "exclusion") && Coverage.Answers[item].Length > 0
            ? $"An element answers \"{Text(item)}\", which is excluded."
            : null;
}

/// <summary>No scope item asks for an element.</summary>
public sealed class NobodyAskedRule(ElementTree tree, ScopeCoverage coverage) : ElementRule(tree)
{
    public override string Name => "nobody_asked";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "Work for which no item of the scope statement asks, on the element, above it or below it, costs money that nobody "
        + "has promised to pay. The topmost such element is named.";

    public override string Remedy => "Trace it to the item that it serves, or take it out.";

    public override string Source =>
        "GAO-20-195G and MIL-STD-881F (children hold all of the work and nothing else)";

    protected override string? Message(int row) =>
        coverage.HasTraces
        && !coverage.IsAsked(row)
        && (row == 0 || coverage.IsAsked(Tree.Parent[row]))
            ? $"No scope item asks for {Tree.Name(row)}."
            : null;
}
