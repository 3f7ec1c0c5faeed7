using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;
using Plenum.Core.Scope;
using Plenum.Workbench.Words;

namespace Plenum.Workbench.Questions;

/// <summary>Which parts answer a scope item, how is it proven, and what else do these parts answer?</summary>
/// <param name="Item">Number of the item.</param>
public sealed record ScopeItemQuestion(string Item)
{
    /// <exception cref="QuestionException">No item has the number.</exception>
    public ScopeItemAnswer Ask(Project project)
    {
        var scope = project[ScopeTable.Definition];
        var row = scope.RowOfCode(Item);
        if (row < 0)
        {
            var nearest = NearestWord.Of(Item, scope.Codes.ToArray().OfType<string>());
            throw new QuestionException(
                $"No scope item has the number \"{Item}\"."
                    + (nearest is null ? "" : $" Did you mean {nearest}?")
            );
        }

        var facts = new ScopeFacts(project);
        List<AnsweringPart> parts = [.. Parts(project, facts, row)];
        HashSet<int> positions = [.. parts.Select(part => part.Position)];
        return new ScopeItemAnswer(
            facts.Line(row, facts.Order().First(place => place.Row == row).Level),
            parts,
            Sum(project, positions)
        )
        {
            Proofs = [.. Proofs(project, facts, positions)],
            Also = [.. Also(project, facts, row, positions)],
            Queries =
            [
                .. facts.Queries(project.Settings.StatusDate).Where(query => query.Item == Item),
            ],
            History =
            [
                .. facts
                    .History(row)
                    .Select(wording => new EarlierWording(
                        wording.Revision,
                        wording.Kind,
                        wording.Text
                    )),
            ],
        };
    }

    private static IEnumerable<AnsweringPart> Parts(Project project, ScopeFacts facts, int row)
    {
        var tree = project.Tree;
        var person = tree.Inherited(ElementTable.Person);
        var trace = project[TraceTable.Definition];
        return facts
            .Traces(row)
            .ToArray()
            .GroupBy(facts.ElementOf)
            .OrderBy(group => group.Key)
            .Select(group => new AnsweringPart(
                tree.Elements.Ids[group.Key],
                group.Key,
                tree.Code(group.Key),
                tree.Name(group.Key),
                ScopeFacts.SizeOf(project, group.Key),
                Answering(project, person[group.Key], group.Key),
                [
                    .. group.Select(traced => new PartTrace(
                        trace.Ids[traced],
                        facts.PhraseOf(traced)
                    )),
                ]
            ));
    }

    /// <summary>The person in charge; without one the manager of the account that stands on the element.</summary>
    private static string? Answering(Project project, int inCharge, int position)
    {
        if (inCharge != Cell.NoInt)
        {
            return PersonNames.Of(project, inCharge);
        }

        foreach (var account in project.Placement.AccountsOfElement[position])
        {
            if (
                project.Placement.Accounts.Ints(AccountTable.Manager)[account] is var manager
                && manager != Cell.NoInt
            )
            {
                return PersonNames.Of(project, manager);
            }
        }

        return null;
    }

    /// <summary>Each money once: an element below another that answers too adds nothing.</summary>
    private static decimal Sum(Project project, HashSet<int> positions)
    {
        var tree = project.Tree;
        return positions.Where(IsTopmost).Sum(row => ScopeFacts.SizeOf(project, row));

        bool IsTopmost(int position)
        {
            for (var above = tree.Parent[position]; above >= 0; above = tree.Parent[above])
            {
                if (positions.Contains(above))
                {
                    return false;
                }
            }

            return true;
        }
    }

    /// <summary>Acceptance criteria that the same parts answer, then what their dictionary entries say of acceptance.</summary>
    private static IEnumerable<ScopeProof> Proofs(
        Project project,
        ScopeFacts facts,
        HashSet<int> positions
    )
    {
        var scope = project[ScopeTable.Definition];
        foreach (var (row, _) in facts.Order())
        {
            if (
                ScopeTable.Kinds.Format(scope.Ints(ScopeTable.Kind)[row]) == "acceptance"
                && !project.ScopeCoverage.IsWithdrawn(row)
                && facts
                    .Traces(row)
                    .ToArray()
                    .Any(traced => positions.Contains(facts.ElementOf(traced)))
            )
            {
                yield return new ScopeProof(
                    scope.Codes[row]!,
                    true,
                    scope.Texts(ScopeTable.Text)[row]!
                );
            }
        }

        var said = project.Tree.Elements.Texts(ElementTable.Acceptance).ToArray();
        foreach (var position in positions.Order())
        {
            if (said[position] is { } acceptance)
            {
                yield return new ScopeProof(project.Tree.Code(position), false, acceptance);
            }
        }
    }

    private static IEnumerable<AlsoAnswered> Also(
        Project project,
        ScopeFacts facts,
        int picked,
        HashSet<int> positions
    )
    {
        var scope = project[ScopeTable.Definition];
        foreach (var (row, _) in facts.Order())
        {
            if (row == picked || project.ScopeCoverage.IsWithdrawn(row))
            {
                continue;
            }

            foreach (
                var group in facts
                    .Traces(row)
                    .ToArray()
                    .GroupBy(facts.ElementOf)
                    .Where(group => positions.Contains(group.Key))
                    .OrderBy(group => group.Key)
            )
            {
                yield return new AlsoAnswered(
                    scope.Codes[row]!,
                    facts.PhraseOf(group.First()) ?? scope.Texts(ScopeTable.Text)[row]!,
                    project.Tree.Code(group.Key)
                );
            }
        }
    }
}

/// <summary>The answer to a <see cref="ScopeItemQuestion"/>. Money in major units.</summary>
/// <param name="Line">The item.</param>
/// <param name="Parts">The elements that answer it, in the order of the breakdown.</param>
/// <param name="Budget">Of all of them, each money once.</param>
public sealed record ScopeItemAnswer(
    ScopeLine Line,
    IReadOnlyList<AnsweringPart> Parts,
    decimal Budget
)
{
    /// <summary>How it is proven that the parts do what was asked.</summary>
    public IReadOnlyList<ScopeProof> Proofs { get; init; } = [];

    /// <summary>Other items that the same parts answer.</summary>
    public IReadOnlyList<AlsoAnswered> Also { get; init; } = [];

    public IReadOnlyList<QueryLine> Queries { get; init; } = [];

    /// <summary>What it said before, the newest first.</summary>
    public IReadOnlyList<EarlierWording> History { get; init; } = [];
}

/// <param name="Id">Id of the element.</param>
/// <param name="Position">Its position in the breakdown.</param>
/// <param name="Code">Its code.</param>
/// <param name="Name">Its name.</param>
/// <param name="Budget">Budget, or what was allotted where nothing below it has a budget.</param>
/// <param name="Person">Name of the person in charge, or of the manager of its account; null for nobody.</param>
/// <param name="Traces">What of the item it answers, at least one.</param>
public sealed record AnsweringPart(
    int Id,
    int Position,
    string Code,
    string Name,
    decimal Budget,
    string? Person,
    IReadOnlyList<PartTrace> Traces
);

/// <param name="Id">Id of the row of <c>trace</c>.</param>
/// <param name="Phrase">The words that are answered; null for the whole item.</param>
public sealed record PartTrace(int Id, string? Phrase);

/// <param name="Source">Number of an acceptance criterion, or code of an element.</param>
/// <param name="IsItem">It is an acceptance criterion of the scope statement.</param>
/// <param name="Text">What proves it.</param>
public sealed record ScopeProof(string Source, bool IsItem, string Text);

/// <param name="Item">Number of the other item.</param>
/// <param name="Words">What of it is answered.</param>
/// <param name="Part">Code of the element that answers both.</param>
public sealed record AlsoAnswered(string Item, string Words, string Part);

/// <param name="Revision">The revision that changed it.</param>
/// <param name="Kind">Kind until then.</param>
/// <param name="Text">Wording until then.</param>
public sealed record EarlierWording(string Revision, string Kind, string Text);
