using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Commands.Parts;

/// <summary>
/// Writes the hours of a cell: those that its package is allotted. A cell that is missing or ruled out is planned with
/// them. Hours of a budget are not written here, since the baseline says them.
/// </summary>
/// <param name="At">The cell.</param>
/// <param name="Hours">The hours as they were typed, in whole or hundredths.</param>
public sealed record WriteCellHoursCommand(PartCell At, string Hours) : EditCommand
{
    public override string Tell(Project before) =>
        $"write {Commands.Cells.Short(Hours)} hours into {PartWords.Say(before, [At])}";

    protected internal override void Apply(EditDraft draft)
    {
        var work = new PartWork(draft);
        work.Need(At);
        var packages = work.PackagesOf(At);
        switch (packages.Count)
        {
            case 0:
                draft.Set(
                    ElementTable.AllottedHours,
                    work.Plan(At, Cell.NoLong, MoneyOf(draft, work)),
                    Hours.Trim()
                );
                break;
            case 1:
                NeedNoBudget(draft, work, packages[0]);
                draft.Set(ElementTable.AllottedHours, packages[0], Hours.Trim());
                break;
            default:
                throw work.Refused(
                    At.Part,
                    $"{At.Activity} of {work.Say(At.Part)} is carried out by {packages.Count} packages: write the hours of each in the outline.",
                    "a cell that one package carries out"
                );
        }
    }

    private long MoneyOf(EditDraft draft, PartWork work) =>
        new CellHours(draft).Shares(At.Part, [work.Need(At)]).Money[0];

    private void NeedNoBudget(EditDraft draft, PartWork work, int package)
    {
        var budget = draft[BudgetTable.Definition];
        if (
            DraftRows
                .Of(draft, BudgetTable.Definition)
                .Any(row =>
                    draft.Reference(BudgetTable.Package, row) == package
                    && Cell.IsGiven(budget.Long(BudgetTable.Hours, row))
                )
        )
        {
            throw work.Refused(
                At.Part,
                $"{work.Say(package)} has a budget with hours: they come from the baseline, or from an estimate by the step to the budget.",
                "a package without hours in its budget"
            );
        }
    }
}
