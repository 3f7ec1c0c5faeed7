using Plenum.Core;
using Plenum.Core.Foundation;

namespace Plenum.Workbench.Maps;

/// <summary>
/// The elements that the map marks for a finding: those that the audit names for how the work is broken down, given to
/// people and planned. What it finds about status, cost and forecast is shown by other lenses.
/// </summary>
public sealed class MapFindings
{
    private static readonly HashSet<string> Chapters = new(StringComparer.Ordinal)
    {
        "Scope",
        "Breakdown",
        "People",
        "Estimate",
        "Baseline",
    };

    /// <summary>Rules of these chapters whose findings name a control account.</summary>
    private static readonly HashSet<string> NamingAccounts = new(StringComparer.Ordinal)
    {
        "account_overlap",
        "ledger_differs_from_packages",
    };

    private readonly bool[] isMarked;

    private MapFindings(bool[] isMarked) => this.isMarked = isMarked;

    /// <summary>Nothing is marked.</summary>
    public static MapFindings None { get; } = new([]);

    /// <summary>What the rules of the chapters up to the baseline find and nobody has accepted.</summary>
    public static MapFindings Of(Project project) =>
        Of(
            project,
            AcceptedFindingTable
                .Mark(
                    AuditBook
                        .Of(project)
                        .Rules.Where(rule =>
                            Chapters.Contains(rule.Rule.Chapter)
                            && !NamingAccounts.Contains(rule.Rule.Name)
                        )
                        .SelectMany(rule => rule.Findings),
                    project[AcceptedFindingTable.Definition]
                )
                .Where(finding => !finding.IsAccepted)
        );

    /// <summary>Marks the elements that given findings name; a code that no element has is passed over.</summary>
    public static MapFindings Of(Project project, IEnumerable<Finding> findings)
    {
        var elements = project.Tree.Elements;
        var marks = new bool[elements.Count];
        foreach (var finding in findings)
        {
            if (elements.RowOfCode(finding.Code) is var row and >= 0)
            {
                marks[row] = true;
            }
        }

        return new MapFindings(marks);
    }

    /// <summary>True if the element at a position is marked.</summary>
    public bool At(int row) => row < isMarked.Length && isMarked[row];
}
