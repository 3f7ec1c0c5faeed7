using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Estimate;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Questions;

/// <summary>What would change if the estimate of some packages became their budget?</summary>
/// <param name="Packages">Ids of the packages; those without estimate lines stay as they are.</param>
public sealed record BudgetStepQuestion(IReadOnlyList<int> Packages)
{
    /// <summary>Cost: a step for each estimate line and budget row of the packages.</summary>
    public BudgetStepAnswer Ask(Project project)
    {
        var tree = project.Tree;
        var currency = project.Settings.Currency;
        var lines = project[EstimateTable.Definition];
        var budget = project[BudgetTable.Definition];
        Dictionary<(int Package, int CostElement), int> rows = [];
        HashSet<int> asked = [.. Packages];
        for (var row = 0; row < budget.Count; row++)
        {
            if (asked.Contains(budget.Ints(BudgetTable.Package)[row]))
            {
                rows[
                    (
                        budget.Ints(BudgetTable.Package)[row],
                        budget.Ints(BudgetTable.CostElement)[row]
                    )
                ] = row;
            }
        }

        List<BudgetChange> changes = [];
        List<BudgetTrouble> troubles = [];
        var (estimated, before, after) = (0, 0L, 0L);
        foreach (var id in Packages)
        {
            var package = tree.PackageOfId(id);
            if (package < 0 || project.Estimate.LinesOf[package].Length == 0)
            {
                continue;
            }

            estimated++;
            var sums = SumsOf(package);
            for (var element = 0; element < CostElements.Count; element++)
            {
                var row = rows.GetValueOrDefault((id, element), -1);
                var old = row < 0 ? (long?)null : budget.Longs(BudgetTable.Converted)[row];
                var oldHours = row < 0 ? Cell.NoLong : budget.Longs(BudgetTable.Hours)[row];
                var sum = sums[element];
                before += old ?? 0;
                after += sum?.Amount ?? 0;
                var hours = sum is { Hours: > 0 } ? sum.Value.Hours : Cell.NoLong;
                if (old != sum?.Amount || (sum is not null && hours != oldHours))
                {
                    changes.Add(
                        new BudgetChange(
                            id,
                            tree.Code(tree.PackageRows[package]),
                            tree.Name(tree.PackageRows[package]),
                            CostElements.Words.Format(element),
                            row < 0 ? 0 : budget.Ids[row],
                            old is { } was ? currency.ToMajorUnits(was) : null,
                            sum is { } now ? currency.ToMajorUnits(now.Amount) : null,
                            Cell.IsGiven(hours) ? hours / 100m : null
                        )
                    );
                }
            }
        }

        return new BudgetStepAnswer(
            estimated,
            currency.ToMajorUnits(before),
            currency.ToMajorUnits(after),
            changes,
            troubles
        );

        (long Amount, long Hours)?[] SumsOf(int package)
        {
            var sums = new (long Amount, long Hours)?[CostElements.Count];
            foreach (var row in project.Estimate.LinesOf[package])
            {
                var element = lines.Ints(EstimateTable.CostElement)[row];
                var own = EstimateLines.CurrencyOf(lines, row, currency);
                var amount = EstimateLines.Amount(lines, row, currency);
                if (own != currency)
                {
                    Complain(
                        row,
                        EstimateTable.Currency,
                        $"an amount in {currency.Code}",
                        $"is in {own.Code} and cannot be added up in {currency.Code}"
                    );
                }
                else if (!Cell.IsGiven(amount))
                {
                    Complain(
                        row,
                        EstimateTable.Amount,
                        "an amount, or quantity and rate",
                        "has no amount; give one, or quantity and rate"
                    );
                }
                else
                {
                    var hours = EstimateLines.Hours(lines, row);
                    var known = sums[element] ?? (0, 0);
                    sums[element] = (
                        checked(known.Amount + amount),
                        checked(known.Hours + (Cell.IsGiven(hours) ? hours : 0))
                    );
                }
            }

            return sums;
        }

        void Complain(int row, ColumnDefinition column, string expected, string why)
        {
            var text = new ProjectText(project);
            var line = string.Join(
                ", ",
                EstimateTable
                    .Definition.Keys.Select(key => text.Of(lines, row, key))
                    .Where(part => part is not null)
            );
            troubles.Add(
                new BudgetTrouble(line, column.Name, expected, $"estimate line {line} {why}")
            );
        }
    }
}

/// <summary>What the step from estimate to budget would do.</summary>
/// <param name="Packages">Packages with an estimate.</param>
/// <param name="Before">Their budget now.</param>
/// <param name="After">Their budget afterwards.</param>
/// <param name="Changes">The budget rows that would change, in the order of the packages.</param>
/// <param name="Troubles">Lines that forbid it; nothing is done while there is one.</param>
public sealed record BudgetStepAnswer(
    int Packages,
    decimal Before,
    decimal After,
    IReadOnlyList<BudgetChange> Changes,
    IReadOnlyList<BudgetTrouble> Troubles
);

/// <param name="Package">Id of the package.</param>
/// <param name="Code">Its code.</param>
/// <param name="Name">Its name.</param>
/// <param name="CostElement">Cost element.</param>
/// <param name="Id">Id of the budget row; 0 for a new one.</param>
/// <param name="Before">Amount now; null for none.</param>
/// <param name="After">Amount afterwards; null if the row is taken out.</param>
/// <param name="Hours">Hours afterwards; null for none.</param>
public sealed record BudgetChange(
    int Package,
    string Code,
    string Name,
    string CostElement,
    int Id,
    decimal? Before,
    decimal? After,
    decimal? Hours
);

/// <param name="Line">Key of the estimate line.</param>
/// <param name="Column">The column that is wrong.</param>
/// <param name="Expected">What would have been right.</param>
/// <param name="Message">The complaint.</param>
public sealed record BudgetTrouble(string Line, string Column, string Expected, string Message);
