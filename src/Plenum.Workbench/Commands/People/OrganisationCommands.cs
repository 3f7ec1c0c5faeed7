using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.People;
using Plenum.Workbench.Commands.Breakdown;

namespace Plenum.Workbench.Commands.People;

/// <summary>Adds an organisation unit.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Parent">Id of the unit that it belongs to; 0 for none.</param>
/// <param name="Code">Its code; null for one made from the name.</param>
public sealed record AddUnitCommand(string Name, [RowOf("units")] int Parent = 0, string? Code = null) : EditCommand
{
    public override string Tell(Project before) => $"add unit {Name.Trim()}";

    protected internal override void Apply(EditDraft draft)
    {
        var name = Names.Need(Name, "unit");
        var id = draft.Add(
            UnitTable.Definition,
            (UnitTable.Unit, Code ?? Organisation.CodeFrom(draft, UnitTable.Definition, name)),
            (UnitTable.Name, name)
        );
        if (Parent != 0)
        {
            DraftAccounts.Need(draft, UnitTable.Definition, "unit", Parent);
            draft.SetReference(UnitTable.Parent, id, Parent);
        }
    }
}

/// <summary>Lets a unit belong to another one; 0 for none.</summary>
public sealed record MoveUnitCommand([RowOf("units")] int Id, [RowOf("units")] int Parent) : EditCommand
{
    public override string Tell(Project before) =>
        $"move {Organisation.Say(before, UnitTable.Definition, Id)} "
        + (
            Parent == 0
                ? "to the top"
                : $"to {Organisation.Say(before, UnitTable.Definition, Parent)}"
        );

    protected internal override void Apply(EditDraft draft)
    {
        DraftAccounts.Need(draft, UnitTable.Definition, "unit", Id);
        if (Parent == 0)
        {
            draft.Set(UnitTable.Parent, Id, null);
            return;
        }

        DraftAccounts.Need(draft, UnitTable.Definition, "unit", Parent);
        for (var at = Parent; at != 0; at = draft.Reference(UnitTable.Parent, at))
        {
            if (at == Id)
            {
                throw new EditException(
                    $"{Organisation.Say(draft.Before, UnitTable.Definition, Id)} cannot belong to itself or to a unit of its own.",
                    "a unit outside of what is moved"
                );
            }
        }

        draft.SetReference(UnitTable.Parent, Id, Parent);
    }
}

/// <summary>Removes a unit that nothing refers to.</summary>
public sealed record RemoveUnitCommand([RowOf("units")] int Id) : EditCommand
{
    public override string Tell(Project before) =>
        $"remove unit {Organisation.Say(before, UnitTable.Definition, Id)}";

    protected internal override void Apply(EditDraft draft)
    {
        DraftAccounts.Need(draft, UnitTable.Definition, "unit", Id);
        Organisation.NeedFree(draft, UnitTable.Definition, Id);
        draft.Remove(UnitTable.Definition, Id);
    }
}

/// <summary>Adds a person.</summary>
/// <param name="Name">First and last name.</param>
/// <param name="Unit">Id of the unit; 0 for none.</param>
/// <param name="Code">Code; null for one made from the name.</param>
public sealed record AddPersonCommand(string Name, [RowOf("units")] int Unit = 0, string? Code = null) : EditCommand
{
    public override string Tell(Project before) => $"add {Name.Trim()}";

    protected internal override void Apply(EditDraft draft)
    {
        var name = Names.Need(Name, "person");
        var id = draft.Add(
            PersonTable.Definition,
            (
                PersonTable.Person,
                Code ?? Organisation.CodeFrom(draft, PersonTable.Definition, name)
            ),
            (PersonTable.Name, name)
        );
        if (Unit != 0)
        {
            DraftAccounts.Need(draft, UnitTable.Definition, "unit", Unit);
            draft.SetReference(PersonTable.Unit, id, Unit);
        }
    }
}

/// <summary>Removes a person whom nothing refers to.</summary>
public sealed record RemovePersonCommand([RowOf("people")] int Id) : EditCommand
{
    public override string Tell(Project before) =>
        $"remove {Organisation.Say(before, PersonTable.Definition, Id)}";

    protected internal override void Apply(EditDraft draft)
    {
        DraftAccounts.Need(draft, PersonTable.Definition, "person", Id);
        Organisation.NeedFree(draft, PersonTable.Definition, Id);
        draft.Remove(PersonTable.Definition, Id);
    }
}

/// <summary>Names the person in charge of elements; 0 for whoever the element above names.</summary>
public sealed record NamePersonInChargeCommand(IReadOnlyList<int> Elements, [RowOf("people")] int Person)
    : EditCommand
{
    public override string Tell(Project before) =>
        Person == 0
            ? $"let {Breakdown.Elements.Say(before, Elements)} have the person above in charge"
            : $"put {Organisation.Say(before, PersonTable.Definition, Person)} in charge of {Breakdown.Elements.Say(before, Elements)}";

    protected internal override void Apply(EditDraft draft)
    {
        if (Person != 0)
        {
            DraftAccounts.Need(draft, PersonTable.Definition, "person", Person);
        }

        foreach (var element in Elements)
        {
            Breakdown.Elements.Need(draft, element);
            if (Person == 0)
            {
                draft.Set(ElementTable.Person, element, null);
            }
            else
            {
                draft.SetReference(ElementTable.Person, element, Person);
            }
        }
    }
}

/// <summary>Names the manager of accounts.</summary>
/// <param name="Accounts">The accounts.</param>
/// <param name="Manager">Who manages them from now on.</param>
/// <param name="Seen">The manager that was seen before; 0 where it does not matter.</param>
public sealed record NameManagerCommand([RowOf("accounts")] IReadOnlyList<int> Accounts, [RowOf("people")] int Manager, [RowOf("people")] int Seen = 0)
    : EditCommand
{
    public override string Tell(Project before) =>
        $"hand {Count(before)} to {Organisation.Say(before, PersonTable.Definition, Manager)}";

    protected internal override void Apply(EditDraft draft)
    {
        DraftAccounts.Need(draft, PersonTable.Definition, "person", Manager);
        var code = draft.CodeOf(PersonTable.Definition, Manager);
        foreach (var account in Accounts)
        {
            DraftAccounts.Need(draft, AccountTable.Definition, "account", account);
            if (Seen != 0 && draft.Has(PersonTable.Definition, Seen))
            {
                draft.Set(
                    AccountTable.Manager,
                    account,
                    code,
                    draft.CodeOf(PersonTable.Definition, Seen)
                );
            }
            else
            {
                draft.SetReference(AccountTable.Manager, account, Manager);
            }
        }
    }

    private string Count(Project before) =>
        Accounts.Count == 1
            ? $"account {Organisation.Code(before, AccountTable.Definition, Accounts[0])}"
            : $"{Accounts.Count} accounts";
}

/// <summary>Hands over all accounts of a person, and with them, if asked for, what the person is in charge of.</summary>
public sealed record HandOverCommand([RowOf("people")] int From, [RowOf("people")] int To, bool InCharge = false) : EditCommand
{
    public override string Tell(Project before) =>
        $"hand over the accounts of {Organisation.Say(before, PersonTable.Definition, From)} to "
        + Organisation.Say(before, PersonTable.Definition, To);

    protected internal override void Apply(EditDraft draft)
    {
        DraftAccounts.Need(draft, PersonTable.Definition, "person", From, To);
        if (From == To)
        {
            throw new EditException("The accounts are this person's already.", "another person");
        }

        var users = PackageWork
            .Users(
                draft,
                PersonTable.Definition,
                new HashSet<int> { From },
                column =>
                    column == AccountTable.Manager || (InCharge && column == ElementTable.Person)
            )
            .ToList();
        if (users.Count == 0)
        {
            throw new EditException(
                $"{Organisation.Say(draft.Before, PersonTable.Definition, From)} has nothing to hand over.",
                "a person with accounts"
            );
        }

        foreach (var (column, id, _) in users)
        {
            draft.SetReference(column, id, To);
        }
    }
}

internal static class Names
{
    /// <exception cref="EditException">There is no name.</exception>
    public static string Need(string name, string what) =>
        name.Trim() is { Length: > 0 } given
            ? given
            : throw new EditException($"The {what} has no name.", $"the name of the {what}");
}
