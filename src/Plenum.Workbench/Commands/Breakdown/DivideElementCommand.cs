using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Network;

namespace Plenum.Workbench.Commands.Breakdown;

/// <summary>
/// Divides a package into several: its budget and what is allotted to it are shared out to the last minor unit, dates and
/// technique are those of the whole, everything else goes to the first of them. Links to it lead to the first, links
/// from it come from the last. A package that was reported on is not divided.
/// </summary>
/// <param name="Id">The package.</param>
/// <param name="Names">Names of the parts, at least two.</param>
/// <param name="Shares">How much of it each part takes, as whole numbers; null for equal shares.</param>
public sealed record DivideElementCommand(
    int Id,
    IReadOnlyList<string> Names,
    IReadOnlyList<int>? Shares = null
) : EditCommand
{
    public override string Tell(Project before) =>
        $"divide {Elements.Say(before, Id)} into {Names.Count}";

    protected internal override void Apply(EditDraft draft)
    {
        Elements.Need(draft, Id);
        Check(draft);
        var users = PackageWork.Users(draft, ElementTable.Definition, Id).ToList();
        NeedNothingReported(draft, users);
        int[] parts = [.. Names.Select(name => AddPart(draft, name))];
        ShareCells(draft, parts);
        foreach (var (column, row) in users)
        {
            Pass(draft, column, row, parts);
        }

        draft.Set(ElementTable.Kind, Id, null);
        draft.Set(ElementTable.Activity, Id, null);
    }

    private void Check(EditDraft draft)
    {
        if (draft.Breakdown.Children(Id).Count > 0 || draft.Breakdown.Parent(Id) == 0)
        {
            throw new EditException(
                $"{draft.Breakdown.Say(Id)} has parts already.",
                "an element without parts"
            );
        }

        if (Names.Count < 2 || Names.Any(string.IsNullOrWhiteSpace))
        {
            throw new EditException(
                "Give each part a name; there are at least two.",
                "two names or more, none of them empty"
            );
        }

        if (Shares is not null && (Shares.Count != Names.Count || Shares.Any(share => share < 1)))
        {
            throw new EditException(
                "Give each part a share.",
                "as many whole numbers as names, each at least 1"
            );
        }
    }

    internal static void NeedNothingReported(
        EditDraft draft,
        IEnumerable<(ColumnDefinition Column, int Id)> users
    )
    {
        foreach (var (column, row) in users)
        {
            if (PackageWork.IsRecord(column.Table) || column.Table == BudgetPeriodTable.Definition)
            {
                throw new EditException([
                    new EditFault(
                        column.Table.Name,
                        draft.Key(column.Table, row),
                        column.Name,
                        draft.Text(column, row),
                        "a package that nothing was reported, charged or ordered for, with a spread that follows its dates",
                        $"{draft.Text(column, row)} has rows in {column.Table.Name}. What has happened, and what was spread "
                            + "by hand, stays with the package that it was written for."
                    ),
                ]);
            }
        }
    }

    private int AddPart(EditDraft draft, string name)
    {
        var part = draft.Breakdown.Add(
            Id,
            draft.Breakdown.Children(Id).Count,
            name,
            mayHaveWork: true
        );
        draft[ElementTable.Definition].Copy(ElementTable.Hazards, Id, part);
        return part;
    }

    private void ShareCells(EditDraft draft, int[] parts)
    {
        var elements = draft[ElementTable.Definition];
        foreach (
            var column in (ColumnDefinition[])[ElementTable.Allotted, ElementTable.AllottedHours]
        )
        {
            var whole = elements.Long(column, Id);
            if (Cell.IsGiven(whole))
            {
                var shared = Shared(whole);
                for (var part = 0; part < parts.Length; part++)
                {
                    elements.Set(column, parts[part], shared[part]);
                }
            }
        }

        elements.Copy(ElementTable.Activity, Id, parts[0]);
    }

    private void Pass(EditDraft draft, ColumnDefinition column, int row, int[] parts)
    {
        if (column == BudgetTable.Package)
        {
            ShareBudget(draft, row, parts);
        }
        else if (column == PackageTable.Package)
        {
            SharePlan(draft, row, parts);
        }
        else if (column == LinkTable.From)
        {
            Repoint(draft, column, row, parts[^1]);
        }
        else if (column.IsPackageReference || column == LinkTable.To)
        {
            Repoint(draft, column, row, parts[0]);
        }
    }

    /// <summary>An amount in another currency is converted once, as a whole: in parts it would come to another sum.</summary>
    internal static void NeedOwnCurrency(EditDraft draft, int row)
    {
        if (
            draft.Text(BudgetTable.Currency, row) is { } currency
            && currency != draft.ProjectCurrency.Code
        )
        {
            throw new EditException(
                $"The budget of {draft.Key(BudgetTable.Definition, row)} is in {currency}; converted in other parts it would "
                    + "come to another sum.",
                $"a budget in {draft.ProjectCurrency.Code}"
            );
        }
    }

    private void ShareBudget(EditDraft draft, int row, int[] parts)
    {
        NeedOwnCurrency(draft, row);
        var budget = draft[BudgetTable.Definition];
        var amount = Shared(budget.Long(BudgetTable.Amount, row));
        var given = budget.Long(BudgetTable.Hours, row);
        var hours = Cell.IsGiven(given) ? Shared(given) : null;
        for (var part = 0; part < parts.Length; part++)
        {
            var id = part == 0 ? row : budget.Add();
            if (part > 0)
            {
                foreach (var column in BudgetTable.Definition.Columns)
                {
                    budget.Copy(column, row, id);
                }
            }

            draft.SetReference(BudgetTable.Package, id, parts[part]);
            budget.Set(BudgetTable.Amount, id, amount[part]);
            if (hours is not null)
            {
                budget.Set(BudgetTable.Hours, id, hours[part]);
            }
        }
    }

    private static void SharePlan(EditDraft draft, int row, int[] parts)
    {
        var packages = draft[PackageTable.Definition];
        for (var part = 0; part < parts.Length; part++)
        {
            var id = part == 0 ? row : packages.Add();
            if (part > 0)
            {
                foreach (var column in PackageTable.Definition.Columns)
                {
                    packages.Copy(column, row, id);
                }
            }

            draft.SetReference(PackageTable.Package, id, parts[part]);
        }
    }

    internal static void Repoint(EditDraft draft, ColumnDefinition column, int row, int to)
    {
        var (target, _) = column.DecodeReference(draft[column.Table].Int(column, row));
        draft[column.Table].Set(column, row, column.EncodeReference(target, to));
    }

    /// <summary>The whole in parts that add up to it: each running total rounded, less the one before.</summary>
    private long[] Shared(long whole)
    {
        var shares = Shares ?? [.. Names.Select(_ => 1)];
        var sum = (decimal)shares.Sum(share => (long)share);
        var shared = new long[shares.Count];
        var (before, running) = (0L, 0L);
        for (var part = 0; part < shared.Length; part++)
        {
            running += shares[part];
            var total = (long)Math.Round(whole * running / sum, MidpointRounding.AwayFromZero);
            shared[part] = total - before;
            before = total;
        }

        return shared;
    }
}
