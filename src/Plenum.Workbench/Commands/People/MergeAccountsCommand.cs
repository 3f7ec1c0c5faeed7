using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;
using Plenum.Core.People;
using Plenum.Core.Status;
using Plenum.Workbench.Commands.Breakdown;

namespace Plenum.Workbench.Commands.People;

/// <summary>
/// Merges two accounts into one. What belonged to either belongs to the one that stays: packages, what was posted, and
/// what was charged in an open period. What was charged in a closed period stays where it is, so that account must be the
/// one that stays.
/// </summary>
/// <param name="Into">The account that stays, with its code, unit and manager.</param>
/// <param name="Other">The account that goes.</param>
/// <param name="Element">The element on which it stands afterwards; 0 for the nearest that both have in common.</param>
/// <param name="Anyway">Also above or below another account.</param>
public sealed record MergeAccountsCommand(
    [RowOf("accounts")] int Into,
    [RowOf("accounts")] int Other,
    int Element = 0,
    bool Anyway = false
) : EditCommand
{
    public override string Tell(Project before) =>
        $"merge account {Organisation.Code(before, AccountTable.Definition, Other)} into "
        + Organisation.Code(before, AccountTable.Definition, Into);

    protected internal override void Apply(EditDraft draft)
    {
        DraftAccounts.Need(draft, AccountTable.Definition, "account", Into, Other);
        if (Into == Other)
        {
            throw new EditException("An account cannot be merged with itself.", "two accounts");
        }

        var accounts = new DraftAccounts(draft);
        var element =
            Element != 0
                ? Element
                : accounts.Common(accounts.ElementOf(Into), accounts.ElementOf(Other));
        Elements.Need(draft, element);
        MoveCharges(draft, accounts);
        MovePostings(draft, accounts);
        draft.SetReference(AccountTable.Element, Into, element);
        foreach (var package in accounts.Naming(Other).ToList())
        {
            accounts.Name(package, Into);
        }

        draft.Remove(AccountTable.Definition, Other);
        accounts.NeedClear(Into, Anyway);
        accounts.Settle(
            (_, old, now) =>
                old == Into || old == Other ? Into
                : old != 0 ? old
                : now
        );
    }

    private void MoveCharges(EditDraft draft, DraftAccounts accounts)
    {
        var closedBy = draft.Before.Settings.StatusDate;
        var periods = draft.Before[PeriodTable.Definition];
        foreach (var (column, id) in Users(draft, ActualTable.Definition))
        {
            var period = periods.RowOf(draft.Reference(ActualTable.Period, id));
            var end = period < 0 ? int.MaxValue : periods.Ints(PeriodTable.End)[period];
            if (closedBy is { } date && end <= date.DayNumber)
            {
                throw new EditException([
                    new EditFault(
                        ActualTable.Definition.Name,
                        draft.Key(ActualTable.Definition, id),
                        column.Name,
                        accounts.Code(Other),
                        "the account that goes without charges in closed periods",
                        $"Cost was charged to {accounts.Code(Other)} in a closed period "
                            + $"({draft.Key(ActualTable.Definition, id)}), and what is closed stays. Merge "
                            + $"{accounts.Code(Into)} into {accounts.Code(Other)} instead."
                    ),
                ]);
            }

            draft[ActualTable.Definition].Set(
                column,
                id,
                column.EncodeReference(ActualTable.ChargedAccount, Into)
            );
        }
    }

    private void MovePostings(EditDraft draft, DraftAccounts accounts)
    {
        foreach (var (column, id) in Users(draft, PostingTable.Definition))
        {
            var end = column == PostingTable.From ? PostingTable.To : PostingTable.From;
            if (draft.Reference(end, id) == Into)
            {
                throw new EditException(
                    $"Posting {draft.Key(PostingTable.Definition, id)} moves budget between {accounts.Code(Into)} and "
                        + $"{accounts.Code(Other)}: merged, it would move it from an account to itself.",
                    "two accounts that no posting lies between"
                );
            }

            draft.SetReference(column, id, Into);
        }
    }

    private List<(ColumnDefinition Column, int Id)> Users(EditDraft draft, TableDefinition table) =>
        [
            .. PackageWork
                .Users(
                    draft,
                    AccountTable.Definition,
                    new HashSet<int> { Other },
                    column => column.Table == table
                )
                .Select(user => (user.Column, user.Id)),
        ];
}
