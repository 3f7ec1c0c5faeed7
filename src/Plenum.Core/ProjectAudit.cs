using Plenum.Core.Foundation;

namespace Plenum.Core;

/// <summary>The audit of a project: every rule, made for its present value.</summary>
public static class ProjectAudit
{
    internal static readonly IReadOnlyList<AuditEntry> Entries =
    [
        .. AuditEntries.OfScope,
        .. AuditEntries.OfBreakdown,
        .. AuditEntries.OfPeople,
        .. AuditEntries.OfNetwork,
        .. AuditEntries.OfBaseline,
        .. AuditEntries.OfStatus,
        .. AuditEntries.OfForecast,
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
