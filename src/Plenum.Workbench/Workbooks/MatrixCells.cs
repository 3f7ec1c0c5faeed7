using Plenum.Core;
using Plenum.Core.Breakdown;

namespace Plenum.Workbench.Workbooks;

internal enum MatrixState
{
    OutOfSet,
    Planned,
    NotNeeded,
    Missing,
}

/// <summary>The cells of the matrix of parts by activities, as the workbook shows them.</summary>
internal sealed class MatrixCells
{
    private const string Separator = "; ";

    private readonly ElementTree tree;
    private readonly PartActivities parts;
    private readonly Dictionary<(int Element, string Activity), (int Id, string Reason)> reasons =
    [];

    public MatrixCells(Project project)
    {
        tree = project.Tree;
        var notNeeded = project[NotNeededTable.Definition];
        parts = new PartActivities(tree, project[WorkSetTable.Definition], notNeeded);
        for (var row = 0; row < notNeeded.Count; row++)
        {
            reasons[
                (
                    notNeeded.Ints(NotNeededTable.Element)[row],
                    notNeeded.Texts(NotNeededTable.Activity)[row]!
                )
            ] = (notNeeded.Ids[row], notNeeded.Texts(NotNeededTable.Reason)[row]!);
        }
    }

    /// <summary>The element needs activities by its type, or some are ruled out for it.</summary>
    public bool IsPart(int row) => parts.Needed(row).Count > 0 || parts.RuledOut(row).Count > 0;

    /// <summary>What a cell says: codes of packages, a reason, or nothing.</summary>
    public (MatrixState State, string? Text) At(int row, string activity)
    {
        var packages = PackagesOf(row, activity);
        if (packages.Count > 0)
        {
            return (MatrixState.Planned, string.Join(Separator, packages));
        }

        return reasons.TryGetValue((tree.Elements.Ids[row], activity), out var reason)
                ? (MatrixState.NotNeeded, reason.Reason)
            : parts.Needed(row).Contains(activity, StringComparer.Ordinal)
                ? (MatrixState.Missing, null)
            : (MatrixState.OutOfSet, WorkbookLayout.OutOfSet);
    }

    /// <summary>The row of the table that rules an activity out; 0 for none.</summary>
    public int IdOf(int element, string activity) =>
        reasons.GetValueOrDefault((element, activity)).Id;

    private List<string> PackagesOf(int part, string activity)
    {
        List<string> packages = [];
        var activities = tree.Elements.Texts(ElementTable.Activity);
        for (var row = part; row < tree.SubtreeEnd[part]; row++)
        {
            if (activities[row] == activity)
            {
                packages.Add(tree.Code(row));
            }
        }

        return packages;
    }
}
