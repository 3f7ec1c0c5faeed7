using Plenum.Core.Foundation;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Words;

/// <summary>What the estimate says, in words.</summary>
public static class EstimateSentence
{
    /// <summary>The unit of money of a sheet about the estimate.</summary>
    public static Amounts Unit(EstimateAnswer answer, Currency currency) =>
        new(currency.ToMajorUnits(Math.Max(answer.Sum.Amount, answer.Budget)), currency);

    public static string Of(EstimateAnswer answer, Amounts amounts)
    {
        var sum = answer.Sum;
        if (sum.Packages == 0)
        {
            return $"{answer.Name} has no packages yet.";
        }

        if (sum.Estimated == 0)
        {
            return $"None of the {Amounts.Count(sum.Packages)} packages of {answer.Name} has an estimate yet.";
        }

        var difference = sum.Amount - answer.Budget;
        var beside = difference switch
        {
            0 => "as much as its budget",
            > 0 => $"{Amount(difference)} more than its budget",
            _ => $"{Amount(-difference)} less than its budget",
        };
        List<string> open = [];
        Add(sum.Packages - sum.Estimated, "package has no estimate", "packages have no estimate");
        Add(sum.Unpriced, "line has no amount", "lines have no amount");
        Add(sum.Foreign, "line is in another currency", "lines are in another currency");
        return $"{answer.Name} is estimated at {Amount(sum.Amount)}, {beside}"
            + (open.Count == 0 ? "." : $"; {string.Join(", ", open)}.");

        string Amount(long minor) => amounts.Amount(answer.Currency.ToMajorUnits(minor));

        void Add(int count, string one, string many)
        {
            if (count > 0)
            {
                open.Add($"{Amounts.Count(count)} {(count == 1 ? one : many)}");
            }
        }
    }
}
