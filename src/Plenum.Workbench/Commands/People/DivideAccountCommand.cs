using System.Globalization;
using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Changes;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;
using Plenum.Core.Status;
using Plenum.Workbench.Commands.Breakdown;

namespace Plenum.Workbench.Commands.People;

/// <summary>By what an account is divided.</summary>
public enum DivideBy
{
    /// <summary>One account on each child of its element.</summary>
    Children,

    /// <summary>One account on its element for each unit that its packages belong to.</summary>
    Unit,
}

/// <summary>
/// Divides an account: each of its packages is in exactly one of the accounts afterwards. The first part keeps the
/// account itself with what was charged to it; it keeps its code once anything was charged or posted to it. Budget that
/// was posted goes along by postings of its own, which a change request must authorise.
/// </summary>
/// <param name="Account">The account.</param>
/// <param name="By">By what.</param>
/// <param name="Keeps">
/// The child, or unit, that keeps the account; 0 for the first. It must be named if cost was charged to the account itself.
/// </param>
/// <param name="Change">Number of the change request that authorises it; needed if budget was posted to the account.</param>
/// <param name="Anyway">Also above or below another account.</param>
public sealed record DivideAccountCommand(
    [RowOf("accounts")] int Account,
    DivideBy By,
    int Keeps = 0,
    string? Change = null,
    bool Anyway = false
) : EditCommand
{
    public override string Tell(Project before) =>
        $"divide account {Organisation.Code(before, AccountTable.Definition, Account)} by "
        + (By == DivideBy.Children ? "the parts of its element" : "unit");

    protected internal override void Apply(EditDraft draft)
    {
        DraftAccounts.Need(draft, AccountTable.Definition, "account", Account);
        var accounts = new DraftAccounts(draft);
        var element = accounts.ElementOf(Account);
        var unit = draft.Reference(AccountTable.Unit, Account);
        var packages = accounts.PackagesOf(Account).ToList();
        Dictionary<int, int> partOf = packages.ToDictionary(
            package => package,
            package =>
                By == DivideBy.Children
                    ? ChildAbove(draft, accounts, element, package)
                    : accounts.UnitOf(package) is var own and > 0
                        ? own
                        : unit
        );
        List<int> parts = InOrder(draft, element, partOf.Values);
        var (isCharged, isPosted) = Bound(draft);
        var first = First(draft, accounts, parts, unit, isCharged);
        if (isPosted)
        {
            NeedChange(draft, accounts);
        }

        Dictionary<int, int> accountOf = new() { [first] = Account };
        if (By == DivideBy.Children)
        {
            var follows = accounts.FollowsPattern(Account);
            draft.SetReference(AccountTable.Element, Account, first);
            if (!isCharged && !isPosted && follows)
            {
                draft.Set(AccountTable.Account, Account, accounts.CodeFor(first, unit));
                draft.Set(AccountTable.Name, Account, draft.Text(ElementTable.Name, first));
            }
        }
        else if (first != unit)
        {
            draft.SetReference(AccountTable.Unit, Account, first);
        }

        foreach (var part in parts.Where(part => part != first))
        {
            var (at, of) = By == DivideBy.Children ? (part, unit) : (element, part);
            accountOf[part] = PlaceAccountCommand.Add(
                draft,
                accounts.CodeFor(at, of),
                at,
                of,
                draft.Reference(AccountTable.Manager, Account),
                draft.Text(ElementTable.Name, at)
            );
        }

        foreach (var package in accounts.Naming(Account).ToList())
        {
            accounts.Name(package, partOf.TryGetValue(package, out var part) ? accountOf[part] : 0);
        }

        foreach (var account in accountOf.Values)
        {
            accounts.NeedClear(account, Anyway);
        }

        accounts.Settle(
            (package, old, now) =>
                old == Account ? accountOf[partOf[package]]
                : old != 0 ? old
                : now
        );
        if (isPosted)
        {
            Post(draft, packages, package => accountOf[partOf[package]]);
        }
    }

    private static int ChildAbove(
        EditDraft draft,
        DraftAccounts accounts,
        int element,
        int package
    )
    {
        var tree = draft.Before.Tree;
        var row = tree.PackageRows[package];
        if (tree.Elements.Ids[row] == element)
        {
            throw new EditException(
                $"{accounts.Say(package)} is a package and has no parts.",
                "an account on an element with parts"
            );
        }

        while (tree.Elements.Ids[tree.Parent[row]] != element)
        {
            row = tree.Parent[row];
        }

        return tree.Elements.Ids[row];
    }

    private List<int> InOrder(EditDraft draft, int element, IEnumerable<int> parts)
    {
        var distinct = parts.Distinct().ToList();
        if (distinct.Count < 2)
        {
            throw new EditException(
                By == DivideBy.Children
                    ? $"All its packages lie below one part of {Elements.Say(draft.Before, element)}."
                    : "All its packages belong to one unit.",
                "an account whose packages "
                    + (By == DivideBy.Children ? "lie in several parts" : "belong to several units")
            );
        }

        return By == DivideBy.Children
            ? [.. distinct.OrderBy(part => draft.Before.Tree.Elements.RowOf(part))]
            :
            [
                .. distinct.OrderBy(
                    part => draft.CodeOf(UnitTable.Definition, part),
                    NaturalOrder.Codes
                ),
            ];
    }

    private int First(
        EditDraft draft,
        DraftAccounts accounts,
        List<int> parts,
        int unit,
        bool isCharged
    )
    {
        if (Keeps != 0)
        {
            return parts.Contains(Keeps)
                ? Keeps
                : throw new EditException(
                    $"What is to keep {accounts.Code(Account)} holds none of its packages.",
                    "one of the parts"
                );
        }

        if (By == DivideBy.Unit && parts.Contains(unit))
        {
            return unit;
        }

        var table = By == DivideBy.Children ? ElementTable.Definition : UnitTable.Definition;
        return isCharged
            ? throw new EditException(
                $"Cost was charged to {accounts.Code(Account)} itself. Name the part that keeps it: "
                    + string.Join(", ", parts.Take(12).Select(part => draft.CodeOf(table, part)))
                    + ".",
                "the part that keeps what was charged"
            )
            : parts[0];
    }

    private (bool IsCharged, bool IsPosted) Bound(EditDraft draft)
    {
        var (isCharged, isPosted) = (false, false);
        foreach (var (column, _) in PackageWork.Users(draft, AccountTable.Definition, Account))
        {
            isCharged |= column.Table == ActualTable.Definition;
            isPosted |= column.Table == PostingTable.Definition;
        }

        return (isCharged, isPosted);
    }

    private void NeedChange(EditDraft draft, DraftAccounts accounts)
    {
        if (string.IsNullOrWhiteSpace(Change))
        {
            throw new EditException(
                $"Budget was posted to {accounts.Code(Account)}. Name the change request that authorises its division.",
                "the number of a change request"
            );
        }

        if (draft.IdOf(ChangeTable.Definition, Change) == 0)
        {
            throw new EditException([
                new EditFault(
                    ChangeTable.Definition.Name,
                    null,
                    ChangeTable.Change.Name,
                    Change,
                    "the number of a change request",
                    $"No change request has the number \"{InputErrors.Shorten(Change)}\"."
                ),
            ]);
        }
    }

    /// <summary>The budget of the packages that leave is posted to their accounts.</summary>
    private void Post(EditDraft draft, List<int> packages, Func<int, int> accountOf)
    {
        var change = draft.IdOf(ChangeTable.Definition, Change!);
        var postings = draft.Before[PostingTable.Definition];
        var number = 0;
        foreach (var id in postings.Ids)
        {
            if (draft.Reference(PostingTable.Change, id) == change)
            {
                number = Math.Max(
                    number,
                    CodeGiver.NumberOf(draft.Text(PostingTable.Posting, id) ?? "")
                );
            }
        }

        foreach (var part in packages.GroupBy(accountOf).Where(part => part.Key != Account))
        {
            var amount = part.Sum(package => draft.Before.Baseline.TotalBudget[package]);
            if (amount == 0)
            {
                continue;
            }

            var id = draft.Add(PostingTable.Definition);
            draft.SetReference(PostingTable.Change, id, change);
            draft.Set(
                PostingTable.Posting,
                id,
                (++number).ToString(CultureInfo.InvariantCulture)
            );
            draft.SetReference(PostingTable.From, id, Account);
            draft.SetReference(PostingTable.To, id, part.Key);
            draft[PostingTable.Definition].Set(PostingTable.Amount, id, amount);
        }
    }
}
