namespace Plenum.Workbench.Words;

/// <summary>Words for the rules of the audit.</summary>
public static class RuleWords
{
    /// <summary>The rule's name as the title of a finding: <c>package_without_account</c> is "Package without account".</summary>
    public static string Title(string rule) =>
        rule.Length == 0
            ? ""
            : string.Concat(
                char.ToUpperInvariant(rule[0]).ToString(),
                rule.AsSpan(1).ToString().Replace('_', ' ')
            );
}
