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

    public static readonly ColumnDefinition Finding = Layout.Text(
        "finding",
        "What it said when it was accepted: once it says something else it is no longer accepted. Empty: whatever it says.",
        key: true
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
        Finding,
        Reason,
        By
    );

    /// <summary>
    /// The findings, those that somebody has accepted with the reason. One that was accepted and says something else now
    /// is not: what it was accepted for has changed.
    /// </summary>
    public static IEnumerable<Finding> Mark(IEnumerable<Finding> findings, Table accepted)
    {
        if (accepted.Count == 0)
        {
            return findings;
        }

        Dictionary<(string, string, string?), int> rows = [];
        for (var row = 0; row < accepted.Count; row++)
        {
            rows[
                (
                    accepted.Texts(Rule)[row]!,
                    accepted.Texts(Code)[row]!,
                    accepted.Texts(Finding)[row]
                )
            ] = row;
        }

        return findings.Select(finding =>
            RowOf(rows, finding) is var row and >= 0
                ? finding with
                {
                    AcceptedBecause = accepted.Texts(Reason)[row],
                    AcceptedBy = accepted.Texts(By)[row],
                }
                : finding
        );
    }

    /// <summary>The row that accepts a finding: the one that holds what it says, else one that accepts whatever it says; −1 for none.</summary>
    public static int RowOf(Table accepted, Finding finding)
    {
        var any = -1;
        for (var row = 0; row < accepted.Count; row++)
        {
            if (
                accepted.Texts(Rule)[row] != finding.Rule
                || accepted.Texts(Code)[row] != finding.Code
            )
            {
                continue;
            }

            if (accepted.Texts(Finding)[row] == finding.Message)
            {
                return row;
            }

            any = accepted.Texts(Finding)[row] is null ? row : any;
        }

        return any;
    }

    private static int RowOf(Dictionary<(string, string, string?), int> rows, Finding finding) =>
        rows.TryGetValue((finding.Rule, finding.Code, finding.Message), out var row)
        || rows.TryGetValue((finding.Rule, finding.Code, null), out row)
            ? row
            : -1;
}
