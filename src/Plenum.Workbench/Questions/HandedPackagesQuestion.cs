using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;
using Plenum.Workbench.Words;

namespace Plenum.Workbench.Questions;

/// <summary>
/// Which packages does an account hold, is a person in charge of, or are in no account, and how far are they delegated?
/// </summary>
/// <param name="Account">Code of an account; null for all.</param>
/// <param name="Person">Code of a person in charge, or to whom they are delegated; null for anybody.</param>
/// <param name="Element">Code of the element under which they lie; null for all.</param>
/// <param name="WithoutAccount">Only those in no account.</param>
public sealed record HandedPackagesQuestion(
    string? Account = null,
    string? Person = null,
    string? Element = null,
    bool WithoutAccount = false
)
{
    /// <summary>In the order of the breakdown. Cost: one walk over the packages.</summary>
    /// <exception cref="QuestionException">There is no such account, person or element.</exception>
    public IReadOnlyList<HandedPackage> Ask(Project project)
    {
        var accounts = project.Placement.Accounts;
        var account = RowOf(accounts, Account, "account");
        var people = project[PersonTable.Definition];
        var person = RowOf(people, Person, "person");
        var under = Element is null ? 0 : ElementPosition.Of(project, Element);
        var inCharge = ElementSizes.Of(project).Person;
        var delegations = project[DelegationTable.Definition];
        var delegationOf = Delegations(project, delegations);
        List<HandedPackage> found = [];
        for (var package = 0; package < project.Tree.PackageCount; package++)
        {
            var row = project.Tree.PackageRows[package];
            var own = project.Placement.AccountOfPackage[package];
            var delegated = delegationOf.GetValueOrDefault(project.Tree.Elements.Ids[row], -1);
            if (
                row < under
                || row >= project.Tree.SubtreeEnd[under]
                || (WithoutAccount && own >= 0)
                || (account >= 0 && own != account)
                || (
                    person >= 0
                    && inCharge[row] != people.Ids[person]
                    && (
                        delegated < 0
                        || delegations.Ints(DelegationTable.Person)[delegated]
                            != people.Ids[person]
                    )
                )
            )
            {
                continue;
            }

            found.Add(
                new HandedPackage(
                    project.Tree.Elements.Ids[row],
                    project.Tree.Code(row),
                    project.Tree.Name(row),
                    own < 0 ? null : accounts.Codes[own],
                    inCharge[row] == Cell.NoInt ? null : PersonNames.Of(project, inCharge[row]),
                    project.Settings.Currency.ToMajorUnits(project.Baseline.TotalBudget[package]),
                    Day(project.Baseline.Start[package]),
                    Day(project.Baseline.Finish[package]),
                    delegated < 0 ? null : StateOf(project, delegations, delegated)
                )
            );
        }

        return found;
    }

    /// <summary>The row of the delegation of each delegated package, by the element's id.</summary>
    internal static Dictionary<int, int> Delegations(Project project, Table delegations)
    {
        var packages = delegations.Ints(DelegationTable.Package);
        Dictionary<int, int> rows = new(delegations.Count);
        for (var row = 0; row < delegations.Count; row++)
        {
            rows[packages[row]] = row;
        }

        return rows;
    }

    internal static DelegationState StateOf(Project project, Table delegations, int row)
    {
        var state = delegations.Ints(DelegationTable.State)[row];
        var person = delegations.Ints(DelegationTable.Person)[row];
        return new DelegationState(
            state,
            PersonNames.Of(project, person),
            [.. DelegationTable.Dates.Select(column => Day(delegations.Ints(column)[row]))],
            delegations.Texts(DelegationTable.Note)[row]
        );
    }

    internal static DateOnly? Day(int day) =>
        Cell.IsGiven(day) ? DateOnly.FromDayNumber(day) : null;

    private static int RowOf(Table table, string? code, string what) =>
        code is null ? -1
        : table.RowOfCode(code) is var row and >= 0 ? row
        : throw new QuestionException($"No {what} has the code \"{code}\".");
}

/// <summary>A package, who has it, and how far that has come.</summary>
/// <param name="Id">Id of its element.</param>
/// <param name="Code">Code.</param>
/// <param name="Name">Name.</param>
/// <param name="Account">Code of its account; null for none.</param>
/// <param name="Person">Name of the person in charge; null for nobody.</param>
/// <param name="Budget">Budget in major units.</param>
/// <param name="Start">Baseline start.</param>
/// <param name="Finish">Baseline finish.</param>
/// <param name="Delegation">How far it is delegated; null if it is not.</param>
public sealed record HandedPackage(
    int Id,
    string Code,
    string Name,
    string? Account,
    string? Person,
    decimal Budget,
    DateOnly? Start,
    DateOnly? Finish,
    DelegationState? Delegation
);

/// <param name="State">0 to 4, of <see cref="DelegationTable.States"/>.</param>
/// <param name="Person">Name of the person to whom it is delegated.</param>
/// <param name="Dates">The date of each state, in order; null where none is given.</param>
/// <param name="Note">What was agreed.</param>
public sealed record DelegationState(
    int State,
    string Person,
    IReadOnlyList<DateOnly?> Dates,
    string? Note
);
