using System.Globalization;
using Plenum.Core.Breakdown;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Words;

/// <summary>What is said of the scope statement and its items.</summary>
public static class ScopeWords
{
    private const int LongestPhrase = 24;

    /// <summary>"Scope statement, revision 2 of 14 Jan 2026, 96 items".</summary>
    public static string Title(ScopeAnswer answer) =>
        answer.Revisions is [.., var newest]
            ? $"Scope statement, revision {newest.Code}"
            : "Scope statement";

    /// <summary>What stands behind the title: "signed 14 Jan 2026, 96 items".</summary>
    public static string State(ScopeAnswer answer)
    {
        var items = Counted(answer.Holding.Count(), "item", "items");
        return answer.Revisions switch
        {
            [] => items,
            [.., { Signed: { } day }] => $"signed {Amounts.Day(day)}, {items}",
            [.., { Signed: { } day } last, _] =>
                $"in draft after {last.Code} of {Amounts.Day(day)}, {items}",
            _ => $"in draft, {items}",
        };
    }

    /// <summary>The reading sentence.</summary>
    public static string Sentence(ScopeAnswer answer)
    {
        var covered = answer.Count(Coverage.Covered);
        var partly = answer.Count(Coverage.Partly);
        var none = answer.Count(Coverage.None);
        var all = covered + partly + none;
        if (all == 0)
        {
            return "No item asks for work yet.";
        }

        if (partly + none == 0)
        {
            return all == 1
                ? "The one item that asks for work has its parts."
                : $"All {all} items that ask for work have their parts.";
        }

        return $"{covered} of {Counted(all, "item", "items")} that ask for work {Have(covered)} their parts, {partly} in part, {none} {Have(none)} none.";
    }

    /// <summary>What stands beside an item.</summary>
    public static string Verdict(ScopeLine line) =>
        line.Withdrawn is { } revision
            ? $"withdrawn in {revision}"
            : line.Coverage switch
            {
                Coverage.Covered => line.Parts.Count == 0
                    ? "by what is below"
                    : Counted(line.Parts.Count, "part", "parts"),
                Coverage.Partly => Open(line),
                Coverage.None => "no part yet",
                _ => line.Kind switch
                {
                    "exclusion" => line.Parts.Count > 0 ? "excluded, and answered" : "excluded",
                    "assumption" => "assumed",
                    "acceptance" => "acceptance",
                    var kind => kind,
                },
            };

    /// <summary>"It changes 4.8.5 and adds 4.7.6. 3 parts would be touched."</summary>
    public static string Changes(DraftChanges draft)
    {
        List<string> done = [];
        Say("changes", draft.Changed);
        Say("adds", draft.Added);
        Say("withdraws", draft.Withdrawn);
        return done.Count == 0
            ? "It changes nothing yet."
            : $"It {string.Join(", ", done)}. {Counted(draft.Parts.Count, "part", "parts")} {(draft.Parts.Count == 1 ? "is" : "are")} touched.";

        void Say(string verb, IReadOnlyList<string> items)
        {
            const int Most = 6;
            if (items.Count > 0)
            {
                done.Add(
                    verb
                        + " "
                        + string.Join(", ", items.Take(Most))
                        + (items.Count > Most ? $" and {items.Count - Most} more" : "")
                );
            }
        }
    }

    /// <summary>"4.5.3: asked 12 Jul 2027, 50 days ago".</summary>
    public static string Age(QueryLine query) =>
        query.Asked is not { } asked ? "not dated"
        : query.AgeDays is { } days
            ? $"asked {Amounts.Day(asked)}, {(days == 0 ? "today" : Counted(days, "day", "days") + " ago")}"
        : $"asked {Amounts.Day(asked)}";

    /// <summary>"1 part", "3 parts".</summary>
    public static string Counted(int count, string one, string many) =>
        $"{Amounts.Count(count)} {(count == 1 ? one : many)}";

    /// <summary>The kind as the screen says it.</summary>
    public static string Kind(string kind) =>
        kind == "acceptance" ? "acceptance criterion" : kind.ToLower(CultureInfo.InvariantCulture);

    private static string Have(int count) => count == 1 ? "has" : "have";

    private static string Open(ScopeLine line) =>
        line.Unanswered switch
        {
            [] => line.Parts.Count == 0 ? "partly, below" : "one phrase only",
            [var phrase] => $"“{Short(phrase)}” has no part",
            var several => $"{several.Count} phrases have no part",
        };

    private static string Short(string phrase) =>
        phrase.Length <= LongestPhrase ? phrase : phrase[..(LongestPhrase - 1)].TrimEnd() + "…";
}
