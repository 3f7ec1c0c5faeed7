using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;

namespace Plenum.Core;

/// <summary>What one rule of the audit has found, with what stands behind the rule.</summary>
public sealed class RuleFindings
{
    private readonly IReadOnlyDictionary<int, Finding[]>? byPlace;
    private readonly ElementTree tree;
    private IReadOnlyList<Finding>? inOrder;

    internal RuleFindings(AuditRule rule, ElementTree tree, IReadOnlyList<Finding> found)
        : this(RuleText.Of(rule), tree, null) => inOrder = found;

    /// <param name="byPlace">By the id of the element; or by the row of the cut by account.</param>
    internal RuleFindings(
        RuleText rule,
        ElementTree tree,
        IReadOnlyDictionary<int, Finding[]>? byPlace
    )
    {
        Rule = rule;
        this.tree = tree;
        this.byPlace = byPlace;
    }

    public RuleText Rule { get; }

    /// <summary>All findings, in the order of the breakdown or of the accounts.</summary>
    public IReadOnlyList<Finding> Findings => inOrder ??= InOrder();

    internal IReadOnlyDictionary<int, Finding[]> ByPlace => byPlace!;

    /// <summary>Places are elements, whose order is that of the tree; else rows.</summary>
    internal bool AtElements { get; init; }

    /// <summary>The same findings over another tree, whose elements may stand in another order.</summary>
    internal RuleFindings Over(ElementTree other)
    {
        if (byPlace is null || !AtElements || ReferenceEquals(other, tree))
        {
            return this;
        }

        return new RuleFindings(Rule, other, byPlace)
        {
            AtElements = true,
            inOrder = other.Elements.Ids.AsSpan().SequenceEqual(tree.Elements.Ids) ? inOrder : null,
        };
    }

    private List<Finding> InOrder() =>
        [
            .. byPlace!
                .OrderBy(pair => AtElements ? tree.Elements.RowOf(pair.Key) : pair.Key)
                .SelectMany(pair => pair.Value),
        ];
}

/// <summary>What stands behind a rule of the audit.</summary>
/// <param name="Name">Its stable name.</param>
/// <param name="Severity">How much its findings weigh.</param>
/// <param name="Explanation">What it asks and why.</param>
/// <param name="Remedy">What to do about a finding.</param>
/// <param name="Source">The published source, or "common practice".</param>
/// <param name="Chapter">The chapter of the job that it belongs to.</param>
public sealed record RuleText(
    string Name,
    Severity Severity,
    string Explanation,
    string Remedy,
    string Source,
    string Chapter
)
{
    public static RuleText Of(AuditRule rule) =>
        new(
            rule.Name,
            rule.Severity,
            rule.Explanation,
            rule.Remedy,
            rule.Source,
            // a rule stands in the folder of its chapter, and so does its namespace
            rule.GetType().Namespace?.Split('.')
                is [_, _, var chapter, ..]
                ? chapter
                : ""
        );
}
