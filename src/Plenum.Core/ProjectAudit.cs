using Plenum.Core.Foundation;

namespace Plenum.Core;

/// <summary>The audit of a project: every rule, made for its present value.</summary>
public static class ProjectAudit
{
    internal static readonly IReadOnlyList<GroundedRule> Entries =
    [
        .. GroundedRules.OfScope,
        .. GroundedRules.OfBreakdown,
        .. GroundedRules.OfPeople,
        .. GroundedRules.OfNetwork,
        .. GroundedRules.OfBaseline,
        .. GroundedRules.OfStatus,
        .. GroundedRules.OfForecast,
    ];

    /// <summary>All rules in the order of the job; none for a project without elements.</summary>
    public static IReadOnlyList<AuditRule> Rules(Project project)
    {
        if (project.Tree.Count == 0)
        {
            return [];
        }

        var data = new AuditData(project);
        return [.. Entries.Select(entry => entry.Make(data))];
    }
}
