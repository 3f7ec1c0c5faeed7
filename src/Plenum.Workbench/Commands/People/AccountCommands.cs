using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;
using Plenum.Core.Status;
using Plenum.Workbench.Commands.Breakdown;

namespace Plenum.Workbench.Commands.People;

/// <summary>
/// Places a control account where an element meets a unit. It takes in the packages of that unit, and those that were in
/// no account; all others stay where they are.
/// </summary>
/// <param name="Element">Id of the element.</param>
/// <param name="Unit">Id of the unit.</param>
/// <param name="Manager">Id of its manager.</param>
/// <param name="Code">Its code; null for one like those that are there.</param>
/// <param name="Name">Its name; null for that of the element.</param>
/// <param name="Anyway">Also above or below another account, which the audit reports.</param>
public sealed record PlaceAccountCommand(
    int Element,
    [RowOf("units")] int Unit,
    [RowOf("people")] int Manager,
    string? Code = null,
    string? Name = null,
    bool Anyway = false
) : EditCommand
{
    public override string Tell(Project before) =>
        $"place an account on {Elements.Say(before, Element)} for {Organisation.Say(before, UnitTable.Definition, Unit)}";

    protected internal override void Apply(EditDraft draft)
    {
        Elements.Need(draft, Element);
        DraftAccounts.Need(draft, UnitTable.Definition, "unit", Unit);
        DraftAccounts.Need(draft, PersonTable.Definition, "person", Manager);
        var accounts = new DraftAccounts(draft);
        var id = Add(
            draft,
            Code ?? accounts.CodeFor(Element, Unit),
            Element,
            Unit,
            Manager,
            Name ?? draft.Text(ElementTable.Name, Element)
        );
        accounts.NeedClear(id, Anyway);
        accounts.Settle(
            (package, old, now) =>
                now == id && (old == 0 || accounts.UnitOf(package) == Unit) ? id
                : old != 0 ? old
                : now
        );
    }

    internal static int Add(
        EditDraft draft,
        string code,
        int element,
        int unit,
        int manager,
        string? name
    )
    {
        var id = draft.Add(AccountTable.Definition, (AccountTable.Account, code));
        draft.SetReference(AccountTable.Element, id, element);
        draft.SetReference(AccountTable.Unit, id, unit);
        draft.SetReference(AccountTable.Manager, id, manager);
        draft.Set(AccountTable.Name, id, name);
        return id;
    }
}

/// <summary>
/// Moves an account to another crossing with all its packages; they must lie below the element. Its code stays: books
/// outside know it.
/// </summary>
/// <param name="Account">The account.</param>
/// <param name="Element">The element on which it is to stand.</param>
/// <param name="Unit">The unit that does the work from now on.</param>
/// <param name="Anyway">Also above or below another account.</param>
public sealed record MoveAccountCommand([RowOf("accounts")] int Account, int Element, [RowOf("units")] int Unit, bool Anyway = false)
    : EditCommand
{
    public override string Tell(Project before) =>
        $"move account {Organisation.Code(before, AccountTable.Definition, Account)} to {Elements.Say(before, Element)}, "
        + Organisation.Say(before, UnitTable.Definition, Unit);

    protected internal override void Apply(EditDraft draft)
    {
        DraftAccounts.Need(draft, AccountTable.Definition, "account", Account);
        DraftAccounts.Need(draft, UnitTable.Definition, "unit", Unit);
        Elements.Need(draft, Element);
        var accounts = new DraftAccounts(draft);
        foreach (var package in accounts.PackagesOf(Account))
        {
            if (!accounts.Covers(Element, package))
            {
                throw new EditException(
                    $"{accounts.Say(package)} is in {accounts.Code(Account)} and does not lie below "
                        + $"{Elements.Say(draft.Before, Element)}. Divide the account first.",
                    "an element above all its packages"
                );
            }
        }

        draft.SetReference(AccountTable.Element, Account, Element);
        draft.SetReference(AccountTable.Unit, Account, Unit);
        accounts.NeedClear(Account, Anyway);
        accounts.Settle((_, old, now) => old != 0 ? old : now);
    }
}

/// <summary>Takes an account away. Its packages fall to what the rule of placement says, or to none.</summary>
public sealed record RemoveAccountCommand([RowOf("accounts")] int Account) : EditCommand
{
    public override string Tell(Project before) =>
        $"take away account {Organisation.Code(before, AccountTable.Definition, Account)}";

    protected internal override void Apply(EditDraft draft)
    {
        DraftAccounts.Need(draft, AccountTable.Definition, "account", Account);
        var accounts = new DraftAccounts(draft);
        var code = accounts.Code(Account);
        foreach (
            var (column, id) in PackageWork.Users(draft, AccountTable.Definition, Account)
        )
        {
            if (column == PackageTable.Account)
            {
                continue;
            }

            var what =
                column == ActualTable.Charge
                    ? $"cost is charged to it ({draft.Key(column.Table, id)})"
                    : $"{column.Table.Name} refers to it ({draft.Key(column.Table, id)})";
            throw new EditException([
                new EditFault(
                    column.Table.Name,
                    draft.Key(column.Table, id),
                    column.Name,
                    code,
                    "an account that nothing is charged or posted to",
                    $"{code} cannot be taken away: {what}. Merge it into another account instead."
                ),
            ]);
        }

        foreach (var package in accounts.Naming(Account).ToList())
        {
            accounts.Name(package, 0);
        }

        draft.Remove(AccountTable.Definition, Account);
        accounts.Settle((_, old, now) => old == Account ? now : old);
    }
}

/// <summary>Lets packages name the account that they belong to.</summary>
/// <param name="Packages">Ids of their elements.</param>
/// <param name="Account">The account, which must stand on or above each; 0 to leave it to the rule of placement.</param>
public sealed record NameAccountCommand(IReadOnlyList<int> Packages, [RowOf("accounts")] int Account) : EditCommand
{
    public override string Tell(Project before) =>
        Account == 0
            ? $"leave the account of {Elements.Say(before, Packages)} to the rule"
            : $"put {Elements.Say(before, Packages)} into account {Organisation.Code(before, AccountTable.Definition, Account)}";

    protected internal override void Apply(EditDraft draft)
    {
        if (Account != 0)
        {
            DraftAccounts.Need(draft, AccountTable.Definition, "account", Account);
        }

        var accounts = new DraftAccounts(draft);
        foreach (var element in Packages)
        {
            Elements.Need(draft, element);
            var package = draft.Before.Tree.PackageOfId(element);
            if (package < 0)
            {
                throw new EditException(
                    $"{Elements.Say(draft.Before, element)} is no package: only packages are in accounts.",
                    "a package"
                );
            }

            if (Account != 0 && !accounts.Covers(accounts.ElementOf(Account), package))
            {
                throw new EditException(
                    $"{accounts.Code(Account)} does not stand above {accounts.Say(package)}.",
                    "an account on the package or on an element above it"
                );
            }

            accounts.Name(package, Account);
        }
    }
}
