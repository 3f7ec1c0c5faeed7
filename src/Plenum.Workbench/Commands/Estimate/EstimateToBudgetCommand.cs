using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Foundation;
using Plenum.Workbench.Commands.Breakdown;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Commands.Estimate;

/// <summary>
/// The step from estimate to budget: for each package, the budget of each cost element becomes the sum of its estimate
/// lines, hours the sum of quantity × hours per unit. A cost element of the budget without lines is taken out. Packages
/// without lines stay as they are. <see cref="BudgetStepQuestion"/> says beforehand what it will change.
/// </summary>
/// <param name="Packages">Ids of the packages.</param>
public sealed record EstimateToBudgetCommand(IReadOnlyList<int> Packages) : EditCommand
{
    public override string Tell(Project before) =>
        $"take the estimate of {Elements.Say(before, Packages)} as budget";

    protected internal override void Apply(EditDraft draft)
    {
        foreach (var package in Packages)
        {
            Elements.Need(draft, package);
        }

        var step = new BudgetStepQuestion(Packages).Ask(draft.Before);
        if (step.Troubles.Count > 0)
        {
            throw new EditException([
                .. step.Troubles.Select(trouble => new EditFault(
                    "estimate",
                    trouble.Line,
                    trouble.Column,
                    null,
                    trouble.Expected,
                    trouble.Message
                )),
            ]);
        }

        foreach (var change in step.Changes)
        {
            Write(draft, change);
        }
    }

    private static void Write(EditDraft draft, BudgetChange change)
    {
        var id = change.Id;
        if (change.After is not { } after)
        {
            draft.Remove(BudgetTable.Definition, id);
            return;
        }

        if (id == 0)
        {
            id = draft.Add(BudgetTable.Definition);
            draft.SetReference(BudgetTable.Package, id, change.Package);
            draft.Set(BudgetTable.CostElement, id, change.CostElement);
        }
        else
        {
            draft.Set(BudgetTable.Currency, id, null);
            draft.Set(BudgetTable.Rate, id, null);
        }

        draft.Set(BudgetTable.Amount, id, Text(after));
        draft.Set(BudgetTable.Hours, id, change.Hours is { } hours ? Text(hours) : null);
    }

    private static string Text(decimal value) =>
        Ratio.Normal(value).ToString(System.Globalization.CultureInfo.InvariantCulture);
}
