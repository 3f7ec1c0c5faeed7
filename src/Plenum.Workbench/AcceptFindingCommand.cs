using Plenum.Core;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench;

/// <summary>Accepts a finding of the audit as it stands, or takes that back.</summary>
/// <param name="Rule">The rule that found it.</param>
/// <param name="Code">What it is about.</param>
/// <param name="Message">What it says: the finding returns once it says something else.</param>
/// <param name="Reason">Why it stays; null to take back that it was accepted.</param>
/// <param name="Person">Who does it.</param>
public sealed record AcceptFindingCommand(
    string Rule,
    string Code,
    string Message,
    string? Reason,
    string Person
)
{
    /// <summary>The value with the finding accepted, or no longer; null if that changes nothing.</summary>
    /// <exception cref="QuestionException">There is no such finding, or the reason is empty.</exception>
    internal (Project Next, TableChange Change)? Apply(Project project)
    {
        if (Reason?.Trim().Length == 0)
        {
            throw new QuestionException("Say why the finding stays; it is accepted with a reason.");
        }

        var finding =
            AuditBook
                .Of(project)
                .Rules.Where(rule => rule.Rule.Name == Rule)
                .SelectMany(rule => rule.Findings)
                .FirstOrDefault(found => found.Code == Code && found.Message == Message)
            ?? throw new QuestionException(
                $"{Rule} no longer finds this on {Code}. Look at what it finds now."
            );
        var table = project[AcceptedFindingTable.Definition];
        var row = AcceptedFindingTable.RowOf(table, finding);
        return Reason is null ? TakeBack(project, table, row) : Put(project, table, finding, row);
    }

    private static (Project, TableChange)? TakeBack(Project project, Table table, int row)
    {
        if (row < 0)
        {
            return null;
        }

        int[] kept = [.. Enumerable.Range(0, table.Count).Where(other => other != row)];
        return (
            project.With([table.InOrder(kept)]),
            new TableChange(table.Definition, [], [], [table.Ids[row]])
        );
    }

    /// <summary>A row that accepts whatever the finding says is left as it is: only its reason changes.</summary>
    private (Project, TableChange)? Put(Project project, Table table, Finding finding, int row)
    {
        var incoming = new IncomingRows(table.Definition);
        foreach (var column in table.Definition.Columns)
        {
            ((TextColumnBuilder)incoming.Builders[column.Index]).Add(
                column == AcceptedFindingTable.Rule ? finding.Rule
                : column == AcceptedFindingTable.Code ? finding.Code
                : column == AcceptedFindingTable.Finding
                    ? row >= 0 ? table.Texts(AcceptedFindingTable.Finding)[row]
                        : finding.Message
                : column == AcceptedFindingTable.Reason ? Reason!.Trim()
                : Person
            );
        }

        incoming.AddSource(0, 1);
        var merged = TableMerge.Into(table, incoming, replace: false, new HashSet<int>());
        return merged.Change.Count == 0 ? null : (project.With([merged.Table]), merged.Change);
    }
}
