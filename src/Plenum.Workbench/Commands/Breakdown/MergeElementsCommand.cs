using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Network;

namespace Plenum.Workbench.Commands.Breakdown;

/// <summary>
/// Merges sisters into one of them: children, budgets, estimates, activities, links and what is allotted come together;
/// the dictionary keeps the words of all. What was reported stays where it is: then nothing is merged.
/// </summary>
/// <param name="Keep">Id of the element that stays.</param>
/// <param name="Others">Ids of the sisters that go up in it.</param>
public sealed record MergeElementsCommand(int Keep, IReadOnlyList<int> Others) : EditCommand
{
    private static readonly ColumnDefinition[] Summed =
    [
        ElementTable.Allotted,
        ElementTable.AllottedHours,
    ];

    private static readonly ColumnDefinition[] Words =
    [
        ElementTable.Description,
        ElementTable.Output,
        ElementTable.Included,
        ElementTable.Excluded,
        ElementTable.Acceptance,
        ElementTable.Assumptions,
        ElementTable.Hazards,
    ];

    public override string Tell(Project before) =>
        $"merge {Elements.Say(before, Others)} into {Elements.Say(before, Keep)}";

    protected internal override void Apply(EditDraft draft)
    {
        Elements.Need(draft, [Keep, .. Others]);
        foreach (var other in Others.Distinct())
        {
            Check(draft, other);
            foreach (var child in draft.Breakdown.Children(other).ToList())
            {
                draft.Breakdown.Move(child, Keep, draft.Breakdown.Children(Keep).Count);
            }

            MergeCells(draft, other);
            foreach (
                var (column, row) in PackageWork
                    .Users(draft, ElementTable.Definition, other)
                    .ToList()
            )
            {
                if (draft.Has(column.Table, row))
                {
                    Take(draft, column, row);
                }
            }

            draft.Breakdown.Forget(other);
            draft.Remove(ElementTable.Definition, other);
        }
    }

    private void Check(EditDraft draft, int other)
    {
        var breakdown = draft.Breakdown;
        if (other == Keep || breakdown.Parent(other) != breakdown.Parent(Keep))
        {
            throw new EditException(
                $"{breakdown.Say(other)} is no sister of {breakdown.Say(Keep)}.",
                "elements with the same parent"
            );
        }

        if (
            breakdown.Children(other).Count > 0 != breakdown.Children(Keep).Count > 0
            && (PackageWork.First(draft, other) ?? PackageWork.First(draft, Keep)) is { } work
        )
        {
            throw new EditException(
                $"One of {breakdown.Say(Keep)} and {breakdown.Say(other)} has parts, and the other is a package with rows in "
                    + $"{work}.",
                "two packages, or two elements with parts"
            );
        }

        DivideElementCommand.NeedNothingReported(
            draft,
            PackageWork.Users(draft, ElementTable.Definition, other)
        );
    }

    private void MergeCells(EditDraft draft, int other)
    {
        var elements = draft[ElementTable.Definition];
        foreach (var column in Summed)
        {
            var (mine, theirs) = (elements.Long(column, Keep), elements.Long(column, other));
            if (Cell.IsGiven(theirs))
            {
                elements.Set(column, Keep, Cell.IsGiven(mine) ? checked(mine + theirs) : theirs);
            }
        }

        foreach (var column in Words)
        {
            var (mine, theirs) = (elements.Text(column, Keep), elements.Text(column, other));
            if (!string.IsNullOrEmpty(theirs) && theirs != mine)
            {
                var between = column == ElementTable.Hazards ? "; " : "\n";
                elements.Set(
                    column,
                    Keep,
                    string.IsNullOrEmpty(mine) ? theirs : mine + between + theirs
                );
            }
        }
    }

    private void Take(EditDraft draft, ColumnDefinition column, int row)
    {
        if (column == PackageTable.Package && SameOf(draft, column, row) is { } plan)
        {
            Widen(draft, plan, row);
            draft.Remove(column.Table, row);
            return;
        }

        if (column == BudgetTable.Package && SameOf(draft, column, row) is { } budget)
        {
            AddBudget(draft, budget, row);
            draft.Remove(column.Table, row);
            return;
        }

        DivideElementCommand.Repoint(draft, column, row, Keep);
        if (IsLinkToItself(draft, column.Table, row))
        {
            draft.Remove(column.Table, row);
        }
        else if (column.IsKey && HasTwin(draft, column, row))
        {
            Part(draft, column, row);
        }
    }

    /// <summary>The row of the element that stays whose other keys are the same.</summary>
    private int? SameOf(EditDraft draft, ColumnDefinition column, int row)
    {
        foreach (var (own, id) in PackageWork.Users(draft, ElementTable.Definition, Keep).ToList())
        {
            if (own == column && id != row && SameKeys(draft, column, id, row))
            {
                return id;
            }
        }

        return null;
    }

    private bool HasTwin(EditDraft draft, ColumnDefinition column, int row) =>
        SameOf(draft, column, row) is not null;

    private static bool SameKeys(EditDraft draft, ColumnDefinition owner, int one, int other) =>
        owner
            .Table.Keys.Where(key => key != owner)
            .All(key => draft.Text(key, one) == draft.Text(key, other));

    /// <summary>Two rows with one key: where a key can be written, a new one is; else they say the same.</summary>
    private void Part(EditDraft draft, ColumnDefinition owner, int row)
    {
        var free = owner.Table.Keys.LastOrDefault(key => key.Kind == CellKind.Code && key != owner);
        if (free is null)
        {
            draft.Remove(owner.Table, row);
            return;
        }

        var name = draft.Text(free, row) ?? "";
        for (var number = 2; HasTwin(draft, owner, row); number++)
        {
            draft.Set(free, row, name.Length == 0 ? $"{number}" : $"{name}-{number}");
        }
    }

    private static bool IsLinkToItself(EditDraft draft, TableDefinition table, int row) =>
        table == LinkTable.Definition
        && draft[table].Int(LinkTable.From, row) == draft[table].Int(LinkTable.To, row);

    private static void Widen(EditDraft draft, int keep, int other)
    {
        var packages = draft[PackageTable.Definition];
        var (start, finish) = (
            packages.Int(PackageTable.Start, other),
            packages.Int(PackageTable.Finish, other)
        );
        if (
            Cell.IsGiven(start)
            && (
                packages.Int(PackageTable.Start, keep) is var mine
                && (!Cell.IsGiven(mine) || start < mine)
            )
        )
        {
            packages.Set(PackageTable.Start, keep, start);
        }

        if (Cell.IsGiven(finish) && finish > packages.Int(PackageTable.Finish, keep))
        {
            packages.Set(PackageTable.Finish, keep, finish);
        }
    }

    private static void AddBudget(EditDraft draft, int keep, int other)
    {
        var budget = draft[BudgetTable.Definition];
        DivideElementCommand.NeedOwnCurrency(draft, keep);
        DivideElementCommand.NeedOwnCurrency(draft, other);
        budget.Set(
            BudgetTable.Amount,
            keep,
            checked(budget.Long(BudgetTable.Amount, keep) + budget.Long(BudgetTable.Amount, other))
        );
        var (mine, theirs) = (
            budget.Long(BudgetTable.Hours, keep),
            budget.Long(BudgetTable.Hours, other)
        );
        if (Cell.IsGiven(theirs))
        {
            budget.Set(
                BudgetTable.Hours,
                keep,
                Cell.IsGiven(mine) ? checked(mine + theirs) : theirs
            );
        }
    }
}
