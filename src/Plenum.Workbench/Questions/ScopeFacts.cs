using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Scope;

namespace Plenum.Workbench.Questions;

/// <summary>What the questions about scope read of a project, by rows of the table of scope items.</summary>
internal sealed class ScopeFacts
{
    private readonly Project project;
    private readonly Table scope;
    private readonly Table trace;
    private readonly Table phrases;
    private readonly int[] parents;
    private readonly RowGroups items;
    private readonly RowGroups wanted;
    private readonly RowGroups wordings;

    public ScopeFacts(Project project)
    {
        this.project = project;
        scope = project[ScopeTable.Definition];
        trace = project[TraceTable.Definition];
        phrases = project[ScopePhraseTable.Definition];
        parents = ParentRules.ParentRows(scope, ScopeTable.Parent);
        items = RowGroups.By(parents, scope.Count);
        wanted = By(phrases, ScopePhraseTable.Item);
        wordings = By(project[ScopeWordingTable.Definition], ScopeWordingTable.Item);
    }

    /// <summary>Rows depth first, sisters in the natural order of their numbers, with their level from 1.</summary>
    public IEnumerable<(int Row, int Level)> Order()
    {
        var level = new int[scope.Count];
        foreach (var row in DepthFirstOrder.Of(parents, [], scope.Codes))
        {
            level[row] = parents[row] < 0 ? 1 : level[parents[row]] + 1;
            yield return (row, level[row]);
        }
    }

    public ScopeLine Line(int row, int level)
    {
        var coverage = project.ScopeCoverage;
        var kind = ScopeTable.Kinds.Format(scope.Ints(ScopeTable.Kind)[row]);
        var isWithdrawn = coverage.IsWithdrawn(row);
        var revision = scope.Ints(ScopeTable.Revision)[row];
        return new ScopeLine(
            scope.Ids[row],
            scope.Codes[row]!,
            parents[row] < 0 ? null : scope.Codes[parents[row]],
            level,
            kind,
            scope.Texts(ScopeTable.Text)[row]!,
            scope.Texts(ScopeTable.Clause)[row]
        )
        {
            Coverage = isWithdrawn || !NeedsAnswer(kind) ? null : coverage.OfItem(row),
            HasItems = HasItems(row),
            Parts = [.. PartsOf(row)],
            Phrases = PlacesOf(row),
            Unanswered = [.. coverage.Unanswered(row)],
            Revision = CodeOf(revision),
            Withdrawn = CodeOf(scope.Ints(ScopeTable.Withdrawn)[row]),
            Before = BeforeOf(row, revision),
        };
    }

    /// <summary>Only deliverables and requirements ask for work.</summary>
    public static bool NeedsAnswer(string kind) => kind is "deliverable" or "requirement";

    /// <summary>Rows of the trace table that answer an item.</summary>
    public ReadOnlySpan<int> Traces(int row) => project.ScopeCoverage.Answers[row];

    /// <summary>The position of the element of a trace row.</summary>
    public int ElementOf(int traceRow) =>
        project.Tree.Elements.RowOf(trace.Ints(TraceTable.Element)[traceRow]);

    public string? PhraseOf(int traceRow) => trace.Texts(TraceTable.Phrase)[traceRow];

    public int PositionOf(string code) => project.Tree.Elements.RowOfCode(code);

    public IEnumerable<ScopeRevisionLine> Revisions()
    {
        var table = project[ScopeRevisionTable.Definition];
        return Enumerable
            .Range(0, table.Count)
            .OrderBy(row => table.Codes[row], NaturalOrder.Codes)
            .Select(row => new ScopeRevisionLine(
                table.Ids[row],
                table.Codes[row]!,
                Day(table.Ints(ScopeRevisionTable.Signed)[row]),
                table.Texts(ScopeRevisionTable.Note)[row]
            ));
    }

    public IEnumerable<QueryLine> Queries(DateOnly? at)
    {
        var table = project[QueryTable.Definition];
        return Enumerable
            .Range(0, table.Count)
            .Select(row =>
            {
                var asked = Day(table.Ints(QueryTable.Asked)[row]);
                var answer = table.Texts(QueryTable.Answer)[row];
                var item = table.Ints(QueryTable.Item)[row];
                return new QueryLine(
                    table.Ids[row],
                    table.Codes[row]!,
                    Cell.IsGiven(item) ? scope.Codes[scope.RowOf(item)] : null,
                    table.Texts(QueryTable.Text)[row]!,
                    asked,
                    table.Texts(QueryTable.AskedBy)[row],
                    answer,
                    Day(table.Ints(QueryTable.Answered)[row]),
                    answer is null && asked <= at
                        ? at.Value.DayNumber - asked.Value.DayNumber
                        : null
                );
            })
            .OrderBy(query => !query.IsOpen)
            .ThenBy(query => query.Query, NaturalOrder.Codes);
    }

    /// <summary>What an item said before, the newest first: the revision that changed it, and the wording until then.</summary>
    public IEnumerable<(string Revision, string Kind, string Text)> History(int row)
    {
        var table = project[ScopeWordingTable.Definition];
        return wordings[row]
            .ToArray()
            .Select(wording =>
                (
                    CodeOf(table.Ints(ScopeWordingTable.Revision)[wording])!,
                    ScopeTable.Kinds.Format(table.Ints(ScopeWordingTable.Kind)[wording]),
                    table.Texts(ScopeWordingTable.Text)[wording]!
                )
            )
            .OrderByDescending(wording => wording.Item1, NaturalOrder.Codes);
    }

    /// <summary>Budget of an element; where nothing below it has one, what it was allotted.</summary>
    public static decimal SizeOf(Project project, int row)
    {
        var budget = project.Totals.Budget[row];
        var allotted = project.Totals.Allotted[row];
        return project.Settings.Currency.ToMajorUnits(
            budget == 0 && Cell.IsGiven(allotted) ? allotted : budget
        );
    }

    private bool HasItems(int row)
    {
        foreach (var part in items[row])
        {
            if (!project.ScopeCoverage.IsWithdrawn(part))
            {
                return true;
            }
        }

        return false;
    }

    private IEnumerable<string> PartsOf(int row) =>
        Traces(row).ToArray().Select(ElementOf).Distinct().Order().Select(project.Tree.Code);

    /// <summary>Longer phrases before shorter ones that begin at the same place; what overlaps one before is left out.</summary>
    private List<PhrasePlace> PlacesOf(int row)
    {
        var text = scope.Texts(ScopeTable.Text)[row]!;
        Dictionary<string, bool> all = new(StringComparer.OrdinalIgnoreCase);
        var isWhole = false;
        foreach (var traced in Traces(row))
        {
            isWhole |= PhraseOf(traced) is null;
            if (PhraseOf(traced) is { Length: > 0 } phrase)
            {
                all[phrase] = true;
            }
        }

        foreach (var open in wanted[row])
        {
            all.TryAdd(phrases.Texts(ScopePhraseTable.Phrase)[open]!, isWhole);
        }

        List<PhrasePlace> places = [];
        foreach (
            var place in all.Select(pair => new PhrasePlace(
                    text.IndexOf(pair.Key, StringComparison.OrdinalIgnoreCase),
                    pair.Key.Length,
                    pair.Key,
                    pair.Value
                ))
                .Where(place => place.Start >= 0)
                .OrderBy(place => place.Start)
                .ThenByDescending(place => place.Length)
        )
        {
            if (places.Count == 0 || places[^1].Start + places[^1].Length <= place.Start)
            {
                places.Add(place);
            }
        }

        return places;
    }

    private string? BeforeOf(int row, int revision)
    {
        var table = project[ScopeWordingTable.Definition];
        foreach (var wording in wordings[row])
        {
            if (
                Cell.IsGiven(revision)
                && table.Ints(ScopeWordingTable.Revision)[wording] == revision
            )
            {
                return table.Texts(ScopeWordingTable.Text)[wording];
            }
        }

        return null;
    }

    private string? CodeOf(int revision)
    {
        var table = project[ScopeRevisionTable.Definition];
        return Cell.IsGiven(revision) ? table.Codes[table.RowOf(revision)] : null;
    }

    private RowGroups By(Table table, ColumnDefinition item)
    {
        var ids = table.Ints(item);
        var owners = new int[ids.Length];
        for (var row = 0; row < owners.Length; row++)
        {
            owners[row] = scope.RowOf(ids[row]);
        }

        return RowGroups.By(owners, scope.Count);
    }

    private static DateOnly? Day(int number) =>
        Cell.IsGiven(number) ? DateOnly.FromDayNumber(number) : null;
}
