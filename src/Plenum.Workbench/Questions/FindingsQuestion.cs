using System.Runtime.InteropServices;
using Plenum.Core;
using Plenum.Core.Foundation;
using Plenum.Core.People;

namespace Plenum.Workbench.Questions;

/// <summary>
/// What the audit finds, in the order in which to take it up: what must be fixed first, within it the largest share of
/// the project first; what somebody has accepted comes last.
/// </summary>
public sealed record FindingsQuestion
{
    public static FindingsAnswer Ask(Project project)
    {
        var check = new CheckQuestion().Ask(project);
        var sizes = ElementSizes.Of(project);
        Dictionary<(string, string), int> times = [];
        List<FindingLine> lines = [];
        foreach (var finding in check.Findings)
        {
            var position = PositionOf(project, finding.Code);
            ref var time = ref CollectionsMarshal.GetValueRefOrAddDefault(
                times,
                (finding.Rule, finding.Code),
                out _
            );
            time++;
            lines.Add(
                new FindingLine(
                    finding,
                    position,
                    position < 0 ? null : project.Tree.Code(position),
                    position < 0 ? null : sizes.ShareOfProject(position),
                    time == 1
                        ? $"{finding.Rule}/{finding.Code}"
                        : FormattableString.Invariant($"{finding.Rule}/{finding.Code}/{time}")
                )
            );
        }

        return new FindingsAnswer(
            [
                .. lines
                    .OrderBy(line => line.Finding.IsAccepted)
                    .ThenBy(line => line.Finding.Severity)
                    .ThenByDescending(line => line.Share ?? 0)
                    .ThenBy(line => line.Position < 0 ? int.MaxValue : line.Position),
            ],
            check.Rules
        );
    }

    /// <summary>The element that a finding is about: itself, or the one on which the account stands; −1 for neither.</summary>
    private static int PositionOf(Project project, string code)
    {
        var element = project.Tree.Elements.RowOfCode(code);
        if (element >= 0)
        {
            return element;
        }

        var account = project[AccountTable.Definition].RowOfCode(code);
        return account < 0 ? -1 : project.Placement.ElementRow[account];
    }
}

/// <param name="Lines">All findings in order.</param>
/// <param name="Rules">What stands behind each rule, by its name.</param>
public sealed record FindingsAnswer(
    IReadOnlyList<FindingLine> Lines,
    IReadOnlyDictionary<string, RuleText> Rules
)
{
    private readonly Dictionary<int, Severity> worstOf = WorstByElement(Lines);
    private readonly Dictionary<string, int> byKey = Lines
        .Select((line, at) => (line.Key, at))
        .ToDictionary(pair => pair.Key, pair => pair.at, StringComparer.Ordinal);

    /// <summary>Findings of a severity that nobody has accepted.</summary>
    public int Count(Severity severity) =>
        Lines.Count(line => line.Finding.Severity == severity && !line.Finding.IsAccepted);

    /// <summary>Findings that somebody has accepted; they stand last.</summary>
    public int Accepted => Lines.Count(line => line.Finding.IsAccepted);

    /// <summary>How much the gravest finding on an element weighs that nobody has accepted; null if there is none.</summary>
    public Severity? WorstOf(int position) =>
        worstOf.TryGetValue(position, out var severity) ? severity : null;

    /// <summary>The number of a finding, from 0; −1 if it is no longer found.</summary>
    public int NumberOf(string? key) =>
        key is not null && byKey.TryGetValue(key, out var number) ? number : -1;

    private static Dictionary<int, Severity> WorstByElement(IReadOnlyList<FindingLine> lines)
    {
        Dictionary<int, Severity> worst = [];
        foreach (var line in lines)
        {
            // the gravest stand first
            if (!line.Finding.IsAccepted)
            {
                worst.TryAdd(line.Position, line.Finding.Severity);
            }
        }

        return worst;
    }
}

/// <param name="Finding">What was found.</param>
/// <param name="Position">Position of the element that it is about; −1 if it is about none.</param>
/// <param name="Element">Code of that element.</param>
/// <param name="Share">That element's share of the project, 0 to 1.</param>
/// <param name="Key">Names the finding: rule, code, and a number from 2 where the rule found several on one code.</param>
public sealed record FindingLine(
    Finding Finding,
    int Position,
    string? Element,
    decimal? Share,
    string Key
);
