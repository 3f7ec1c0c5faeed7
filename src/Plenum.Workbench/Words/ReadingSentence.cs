using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Words;

/// <summary>The main reading of an answer as one plain sentence.</summary>
public static class ReadingSentence
{
    public static string Of(MeasureRow total, Amounts amounts)
    {
        var name = total.Name.Length == 0 ? "The project" : total.Name;
        var sentence =
            $"{name} has earned {amounts.Amount(total.EarnedValue)} of the {amounts.Amount(total.PlannedValue)} planned "
            + $"and spent {amounts.Amount(total.ActualCost)} for it.";
        if (total.EstimateAtCostIndex is not { } end)
        {
            return sentence;
        }

        var over = end - total.BudgetAtCompletion;
        if (amounts.Amount(over) == amounts.Amount(0))
        {
            return sentence
                + $" At this efficiency it ends at its budget of {amounts.Amount(total.BudgetAtCompletion)}.";
        }

        return sentence
            + $" At this efficiency it ends at {amounts.Amount(end)}, which is {amounts.Amount(Math.Abs(over))} "
            + (over > 0 ? "over" : "under")
            + $" the budget of {amounts.Amount(total.BudgetAtCompletion)}.";
    }
}
