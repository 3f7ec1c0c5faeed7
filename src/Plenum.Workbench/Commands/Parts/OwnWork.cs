using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Network;
using Plenum.Workbench.Commands.Breakdown;

namespace Plenum.Workbench.Commands.Parts;

/// <summary>
/// What a package holds beyond what a work set has given it. Technique, duration and links come from the set and go
/// with the package; a budget, an estimate, dates, reports, charges and all else are work of its own.
/// </summary>
internal static class OwnWork
{
    private static readonly HashSet<TableDefinition> OfTheSet =
    [
        PackageTable.Definition,
        ActivityTable.Definition,
        LinkTable.Definition,
        AcceptedFindingTable.Definition,
    ];

    private static readonly ColumnDefinition[] Dates = [PackageTable.Start, PackageTable.Finish];

    /// <exception cref="EditException">A package holds work of its own, or is broken down; all of them are named.</exception>
    public static void NeedNone(EditDraft draft, IReadOnlyList<int> packages)
    {
        List<EditFault> faults = [];
        HashSet<int> named = [];
        foreach (var package in packages)
        {
            if (draft.Breakdown.Children(package).Count > 0 && named.Add(package))
            {
                faults.Add(Fault(draft, package, "is broken down further"));
            }
        }

        HashSet<int> asked = [.. packages];
        foreach (
            var (column, id, package) in PackageWork.Users(
                draft,
                ElementTable.Definition,
                asked,
                _ => true
            )
        )
        {
            if (column.Table == ElementTable.Definition)
            {
                continue;
            }

            var dated =
                column == PackageTable.Package
                && Dates.Any(date => draft.Text(date, id) is not null);
            if ((dated || !OfTheSet.Contains(column.Table)) && named.Add(package))
            {
                faults.Add(
                    Fault(
                        draft,
                        package,
                        dated ? "has baseline dates" : $"has rows in {column.Table.Name}"
                    )
                );
            }
        }

        if (faults.Count > 0)
        {
            throw new EditException(faults);
        }
    }

    private static EditFault Fault(EditDraft draft, int package, string why) =>
        new(
            ElementTable.Definition.Name,
            draft.Key(ElementTable.Definition, package),
            null,
            null,
            "a package without work of its own",
            $"{draft.Breakdown.Say(package)} {why} and stays. Take that out first, or remove the package in the outline."
        );
}
