using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Foundation;

/// <summary>Findings of the audit that stay, with the reason.</summary>
public static class AcceptedFindingTable
{
    public static readonly ColumnDefinition Rule = Layout.CodeKey("rule", "The rule.");

    public static readonly ColumnDefinition Code = Layout.CodeKey(
        "code",
        "Code of the element, account, scope item or entry that the finding is about."
    );

    public static readonly ColumnDefinition Reason = Layout.Text(
        "reason",
        "Why it stays.",
        required: true
    );

    public static readonly ColumnDefinition By = Layout.Text("by", "Who accepted it.");

    public static readonly TableDefinition Definition = new(
        "accepted_findings",
        "A finding of the audit that is accepted.",
        Rule,
        Code,
        Reason,
        By
    );

    /// <summary>The findings, those that somebody has accepted with the reason.</summary>
    public static IEnumerable<Finding> Mark(IEnumerable<Finding> findings, Table accepted)
    {
        Dictionary<(string, string), string> reasons = [];
        for (var row = 0; row < accepted.Count; row++)
        {
            reasons[(accepted.Texts(Rule)[row]!, accepted.Texts(Code)[row]!)] = accepted.Texts(
                Reason
            )[row]!;
        }

        return findings.Select(finding =>
            reasons.TryGetValue((finding.Rule, finding.Code), out var reason)
                ? finding with
                {
                    AcceptedBecause = reason,
                }
                : finding
        );
    }
}
