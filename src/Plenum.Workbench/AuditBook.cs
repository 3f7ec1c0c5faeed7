using System.Runtime.CompilerServices;
using Plenum.Core;

namespace Plenum.Workbench;

/// <summary>
/// Keeps the audit of each value of a project for as long as the value. The audit of a value that a command made is taken
/// from that of the last value before it that was audited: only what can have changed is asked again.
/// </summary>
public static class AuditBook
{
    private static readonly ConditionalWeakTable<Project, Page> Pages = [];

    /// <summary>The audit of a value; computed when it is first asked for, by whoever asks first.</summary>
    public static AuditedProject Of(Project project) =>
        Pages.GetValue(project, _ => new Page(null)).Audit(project);

    /// <summary>Notes that a command has made one value of another.</summary>
    public static void Follow(Project before, Project after)
    {
        var last = Pages.TryGetValue(before, out var page) ? page.Last : null;
        if (last is not null)
        {
            Pages.TryAdd(after, new Page(last));
        }
    }

    private sealed class Page(AuditedProject? before)
    {
        private readonly Lock asking = new();
        private AuditedProject? from = before;
        private AuditedProject? own;

        /// <summary>The own audit; or, as long as nobody has asked for it, the one that it will be taken from.</summary>
        public AuditedProject? Last => own ?? from;

        public AuditedProject Audit(Project project)
        {
            lock (asking)
            {
                own ??= from is null ? AuditedProject.Of(project) : from.After(project);
                from = null;
                return own;
            }
        }
    }
}
