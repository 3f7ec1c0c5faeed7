using System.Globalization;
using Plenum.Core;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;
using Plenum.Workbench.Commands.Breakdown;

namespace Plenum.Workbench.Commands.People;

/// <summary>Offers packages to a person; one that was offered to somebody else, and not accepted, is offered anew.</summary>
/// <param name="Packages">Ids of their elements.</param>
/// <param name="Person">To whom; 0 for the person in charge of each.</param>
/// <param name="Date">When.</param>
/// <param name="Note">What goes with it.</param>
public sealed record OfferPackagesCommand(
    IReadOnlyList<int> Packages,
    [RowOf("people")] int Person,
    DateOnly Date,
    string? Note = null
) : EditCommand
{
    public override string Tell(Project before) =>
        $"offer {Elements.Say(before, Packages)} to "
        + (
            Person == 0
                ? "the person in charge"
                : Organisation.Say(before, PersonTable.Definition, Person)
        );

    protected internal override void Apply(EditDraft draft)
    {
        var inCharge = draft.Before.Tree.Inherited(Core.Breakdown.ElementTable.Person);
        if (Person != 0)
        {
            DraftAccounts.Need(draft, PersonTable.Definition, "person", Person);
        }

        var delegations = new DraftDelegations(draft);
        foreach (var element in Packages)
        {
            Elements.Need(draft, element);
            var row = draft.Before.Tree.Elements.RowOf(element);
            var person =
                Person != 0 ? Person
                : row >= 0 && inCharge[row] != Cell.NoInt ? inCharge[row]
                : throw new EditException(
                    $"Nobody is in charge of {Elements.Say(draft.Before, element)}.",
                    "a person to whom it is offered"
                );
            var id = delegations.RowOf(element);
            if (id == 0)
            {
                id = draft.Add(DelegationTable.Definition);
                draft.SetReference(DelegationTable.Package, id, element);
            }
            else if (
                DraftDelegations.State(draft, id) is var state
                && state > DelegationTable.IsOffered
            )
            {
                throw new EditException(
                    $"{Elements.Say(draft.Before, element)} is {DelegationWords.Of(state)} already. Take the steps back first.",
                    "a package that is not delegated, or only offered"
                );
            }

            draft.SetReference(DelegationTable.Person, id, person);
            draft.Set(DelegationTable.State, id, DelegationTable.States.Format(0));
            draft.Set(DelegationTable.Offered, id, DraftDelegations.Text(Date));
            if (!string.IsNullOrWhiteSpace(Note))
            {
                draft.Set(DelegationTable.Note, id, Note);
            }
        }
    }
}

/// <summary>Takes the next step with packages that have all come equally far.</summary>
/// <param name="Packages">Ids of their elements.</param>
/// <param name="To">The state that they reach, 1 to 4 of <see cref="DelegationTable.States"/>.</param>
/// <param name="Date">When.</param>
public sealed record StepDelegationsCommand(IReadOnlyList<int> Packages, int To, DateOnly Date)
    : EditCommand
{
    public override string Tell(Project before) =>
        $"{Elements.Say(before, Packages)}: {DelegationWords.Of(To)}";

    protected internal override void Apply(EditDraft draft)
    {
        if (To < DelegationTable.IsAccepted || To > DelegationTable.IsWorkAccepted)
        {
            throw new EditException(
                "A delegation begins with an offer.",
                "accepted, open for charging, closed or work accepted"
            );
        }

        var delegations = new DraftDelegations(draft);
        foreach (var element in Packages)
        {
            var id = delegations.Need(element);
            var state = DraftDelegations.State(draft, id);
            if (state != To - 1)
            {
                throw new EditException(
                    $"{Elements.Say(draft.Before, element)} is {DelegationWords.Of(state)}; "
                        + $"{DelegationWords.Of(To)} follows on {DelegationWords.Of(To - 1)}.",
                    $"a package that is {DelegationWords.Of(To - 1)}"
                );
            }

            draft.Set(DelegationTable.State, id, DelegationTable.States.Format(To));
            draft.Set(DelegationTable.Dates[To], id, DraftDelegations.Text(Date));
        }
    }
}

/// <summary>Takes a step back, for a reason that stands in the note afterwards; an offer is withdrawn.</summary>
public sealed record StepDelegationsBackCommand(
    IReadOnlyList<int> Packages,
    string Reason,
    DateOnly Date
) : EditCommand
{
    public override string Tell(Project before) =>
        $"take a step back with {Elements.Say(before, Packages)}: {Cells.Short(Reason.Trim())}";

    protected internal override void Apply(EditDraft draft)
    {
        if (string.IsNullOrWhiteSpace(Reason))
        {
            throw new EditException(
                "A step is taken back for a reason, and none is given.",
                "the reason"
            );
        }

        var delegations = new DraftDelegations(draft);
        foreach (var element in Packages)
        {
            var id = delegations.Need(element);
            var state = DraftDelegations.State(draft, id);
            if (state == DelegationTable.IsOffered)
            {
                draft.Remove(DelegationTable.Definition, id);
                continue;
            }

            draft.Set(DelegationTable.State, id, DelegationTable.States.Format(state - 1));
            draft.Set(DelegationTable.Dates[state], id, null);
            var before = draft.Text(DelegationTable.Note, id);
            var line =
                $"{DraftDelegations.Text(Date)} no longer {DelegationWords.Of(state)}: {Reason.Trim()}";
            draft.Set(DelegationTable.Note, id, before is null ? line : $"{before}\n{line}");
        }
    }
}

/// <summary>The states of a delegation, as they are said.</summary>
public static class DelegationWords
{
    private static readonly string[] States =
    [
        "offered",
        "accepted",
        "open for charging",
        "closed",
        "accepted as work",
    ];

    /// <param name="state">0 to 4; anything else for a package that is not delegated.</param>
    public static string Of(int state) =>
        state >= 0 && state < States.Length ? States[state] : "not delegated";
}

/// <summary>Finds the delegation of a package.</summary>
internal sealed class DraftDelegations
{
    private readonly EditDraft draft;
    private readonly Dictionary<int, int> rows = [];

    public DraftDelegations(EditDraft draft)
    {
        this.draft = draft;
        var table = draft.Before[DelegationTable.Definition];
        foreach (var id in table.Ids)
        {
            if (draft.Has(DelegationTable.Definition, id))
            {
                rows[draft.Reference(DelegationTable.Package, id)] = id;
            }
        }

        foreach (var id in (int[])[.. draft[DelegationTable.Definition].Added])
        {
            rows[draft.Reference(DelegationTable.Package, id)] = id;
        }
    }

    /// <summary>Id of the row; 0 if the package is not delegated.</summary>
    public int RowOf(int element) => rows.GetValueOrDefault(element);

    /// <exception cref="EditException">It is not delegated.</exception>
    public int Need(int element)
    {
        Elements.Need(draft, element);
        return rows.TryGetValue(element, out var id)
            ? id
            : throw new EditException(
                $"{Elements.Say(draft.Before, element)} is not delegated. Offer it first.",
                "a package that was offered"
            );
    }

    public static int State(EditDraft draft, int id) =>
        draft[DelegationTable.Definition].Int(DelegationTable.State, id);

    public static string Text(DateOnly date) =>
        date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
