using Plenum.Core;
using Plenum.Core.Scope;

namespace Plenum.Workbench.Questions;

/// <summary>
/// Is everything that was asked for there, and nothing else? Source: 100 % rule, MIL-STD-881F section 1 and GAO-20-195G
/// step 4.
/// </summary>
/// <param name="At">Ages of queries are counted at this day; null for the status date.</param>
public sealed record ScopeQuestion(DateOnly? At = null)
{
    /// <summary>Cost: one walk over items, traces and elements.</summary>
    public ScopeAnswer Ask(Project project)
    {
        var facts = new ScopeFacts(project);
        var at = At ?? project.Settings.StatusDate;
        List<QueryLine> queries = [.. facts.Queries(at)];
        var openByItem = queries
            .Where(query => query.IsOpen && query.Item is not null)
            .GroupBy(query => query.Item!, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.Count(), StringComparer.Ordinal);
        List<ScopeLine> lines =
        [
            .. facts
                .Order()
                .Select(place =>
                    facts.Line(place.Row, place.Level) with
                    {
                        OpenQueries = openByItem.GetValueOrDefault(
                            project[ScopeTable.Definition].Codes[place.Row]!
                        ),
                    }
                ),
        ];
        List<ScopeRevisionLine> revisions = [.. facts.Revisions()];
        return new ScopeAnswer(at, lines, revisions)
        {
            Revision = project.Revision,
            Currency = project.Settings.Currency,
            HasTraces = project.ScopeCoverage.HasTraces,
            NobodyAsked = [.. NobodyAsked(project)],
            Draft = DraftOf(facts, lines, revisions),
            Queries = queries,
        };
    }

    private static IEnumerable<PartLine> NobodyAsked(Project project)
    {
        var coverage = project.ScopeCoverage;
        var tree = project.Tree;
        for (var row = 0; coverage.HasTraces && row < tree.Count; row++)
        {
            if (!coverage.IsAsked(row) && (row == 0 || coverage.IsAsked(tree.Parent[row])))
            {
                yield return new PartLine(
                    tree.Code(row),
                    tree.Name(row),
                    ScopeFacts.SizeOf(project, row)
                );
            }
        }
    }

    private static DraftChanges? DraftOf(
        ScopeFacts facts,
        List<ScopeLine> lines,
        List<ScopeRevisionLine> revisions
    )
    {
        if (revisions is not [.., _, { Signed: null } draft])
        {
            return null;
        }

        List<ScopeLine> came = [.. lines.Where(line => line.Revision == draft.Code)];
        List<ScopeLine> gone = [.. lines.Where(line => line.Withdrawn == draft.Code)];
        return new DraftChanges(
            draft.Code,
            [.. came.Where(line => line.Before is not null).Select(line => line.Item)],
            [.. came.Where(line => line.Before is null).Select(line => line.Item)],
            [.. gone.Select(line => line.Item)],
            [
                .. came.Concat(gone)
                    .SelectMany(line => line.Parts)
                    .Distinct(StringComparer.Ordinal)
                    .OrderBy(facts.PositionOf),
            ]
        );
    }
}
