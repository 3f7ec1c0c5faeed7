using Plenum.Core;
using Plenum.Core.Foundation;

namespace Plenum.Workbench.Questions;

/// <summary>What does the audit find?</summary>
/// <param name="Rule">Only this rule; null for all.</param>
public sealed record CheckQuestion(string? Rule = null)
{
    /// <exception cref="QuestionException">There is no such rule.</exception>
    public CheckAnswer Ask(Project project)
    {
        var rules = AuditBook.Of(project).Rules;
        if (Rule is not null && rules.Count > 0 && rules.All(rule => rule.Rule.Name != Rule))
        {
            throw new QuestionException(
                $"There is no rule \"{Rule}\". Known are {string.Join(", ", rules.Select(rule => rule.Rule.Name))}."
            );
        }

        List<Finding> findings =
        [
            .. AcceptedFindingTable.Mark(
                rules
                    .Where(rule => Rule is null || rule.Rule.Name == Rule)
                    .SelectMany(rule => rule.Findings),
                project[AcceptedFindingTable.Definition]
            ),
        ];
        return new CheckAnswer(
            project.Revision,
            findings,
            rules.ToDictionary(rule => rule.Rule.Name, rule => rule.Rule, StringComparer.Ordinal)
        );
    }
}

/// <param name="Revision">Revision of the project.</param>
/// <param name="Findings">What was found, accepted or not.</param>
/// <param name="Rules">What stands behind each rule, by its name.</param>
public sealed record CheckAnswer(
    long Revision,
    IReadOnlyList<Finding> Findings,
    IReadOnlyDictionary<string, RuleText> Rules
)
{
    /// <summary>Findings of a severity that nobody has accepted.</summary>
    public int Count(Severity severity) =>
        Findings.Count(finding => finding.Severity == severity && !finding.IsAccepted);

    /// <summary>Findings that somebody has accepted with a reason.</summary>
    public int Accepted => Findings.Count(finding => finding.IsAccepted);
}
