using System.Text.Json;
using Plenum.Core.Breakdown;
using Plenum.Workbench.Maps;
using Plenum.Workbench.Questions;
using Plenum.Workbench.Words;

namespace Plenum.Workbench.Tests.Questions;

/// <summary>
/// Scope statement and breakdown against each other. Source: MIL-STD-881F section 1 and GAO-20-195G step 4 (every clause
/// is traced, no work is untraced). The demo is invented.
/// </summary>
public class ScopeTests
{
    private static readonly ScopeAnswer Demo = new ScopeQuestion().Ask(DemoFiles.Project);

    [Fact]
    public void Every_item_that_asks_for_work_is_covered_in_part_or_not_at_all_and_no_other_is()
    {
        Assert.All(
            Demo.Lines,
            line =>
                Assert.Equal(
                    line.Withdrawn is null && line.Kind is "deliverable" or "requirement",
                    line.Coverage is not null
                )
        );
        Assert.Equal(
            Demo.Holding.Count(line => line.Coverage is not null),
            Demo.Count(Coverage.Covered) + Demo.Count(Coverage.Partly) + Demo.Count(Coverage.None)
        );
    }

    [Fact]
    public void The_answer_agrees_with_the_audit()
    {
        var rules = new[]
        {
            "deliverable_not_covered",
            "requirement_not_covered",
            "deliverable_partly_covered",
        };
        var found = rules
            .SelectMany(rule => new CheckQuestion(rule).Ask(DemoFiles.Project).Findings)
            .Select(finding => finding.Code);
        Assert.Equal(
            found.Order(StringComparer.Ordinal),
            Demo.Holding.Where(line => line.Coverage is Coverage.None or Coverage.Partly)
                .Select(line => line.Item)
                .Order(StringComparer.Ordinal)
        );
        Assert.Equal(
            new CheckQuestion("nobody_asked")
                .Ask(DemoFiles.Project)
                .Findings.Select(finding => finding.Code),
            Demo.NobodyAsked.Select(part => part.Code)
        );
        Assert.Equal(
            new CheckQuestion("exclusion_answered")
                .Ask(DemoFiles.Project)
                .Findings.Select(finding => finding.Code),
            Demo.AnsweredExclusions.Select(line => line.Item)
        );
    }

    [Fact]
    public void Items_stand_in_the_order_of_their_numbers_each_below_its_parent()
    {
        var items = Demo.Lines.Select(line => line.Item).ToList();
        Assert.True(items.IndexOf("4.3.7") < items.IndexOf("4.4"));
        Assert.All(
            Demo.Lines.Where(line => line.Parent is not null),
            line => Assert.Equal(Demo.Line(line.Parent)!.Level + 1, line.Level)
        );
    }

    [Fact]
    public void Phrases_stand_where_the_text_says_them()
    {
        var line = Demo.Line("4.5.2")!;
        Assert.Equal(Coverage.Partly, line.Coverage);
        Assert.Equal(
            [
                "ends at least 1 100 m offshore",
                "a diffuser field",
                "measures this",
                "for two years",
            ],
            line.Phrases.Select(place => line.Text.Substring(place.Start, place.Length))
        );
        Assert.Equal([true, true, true, false], line.Phrases.Select(place => place.IsAnswered));
        Assert.Equal("“for two years” has no part", ScopeWords.Verdict(line));
    }

    [Fact]
    public void The_draft_names_what_it_changes_and_the_parts_that_are_touched()
    {
        var draft = Demo.Draft!;
        Assert.Equal(
            ("3", "4.8.5", "4.7.6"),
            (draft.Code, Assert.Single(draft.Changed), Assert.Single(draft.Added))
        );
        Assert.Equal(["09.1", "10.1.04", "10.2.02"], draft.Parts);
        Assert.Equal("Noise at the fence stays below 45 dB at night.", Demo.Line("4.8.5")!.Before);
        Assert.Equal(
            "It changes 4.8.5, adds 4.7.6. 3 parts are touched.",
            ScopeWords.Changes(draft)
        );
    }

    [Fact]
    public void Ages_of_open_queries_are_counted_at_the_status_date_or_the_day_that_is_asked_for()
    {
        Assert.Equal(["Q-02", "Q-03", "Q-01"], Demo.Queries.Select(query => query.Query));
        Assert.Equal([50, 12, null], Demo.Queries.Select(query => query.AgeDays));
        var then = new ScopeQuestion(new DateOnly(2027, 8, 1)).Ask(DemoFiles.Project);
        Assert.Equal([20, null, null], then.Queries.Select(query => query.AgeDays));
    }

    [Fact]
    public void A_picked_item_has_its_parts_with_the_words_that_they_answer_each_money_once()
    {
        var item = new ScopeItemQuestion("4.5.2").Ask(DemoFiles.Project);
        Assert.Equal(
            [
                ("07.2", "ends at least 1 100 m offshore"),
                ("07.3", "a diffuser field"),
                ("07.4.01", "measures this"),
                ("07.4.02", "measures this"),
            ],
            item.Parts.Select(part => (part.Code, Assert.Single(part.Traces).Phrase))
        );
        Assert.Equal(item.Parts.Sum(part => part.Budget), item.Budget);
        Assert.Contains(item.Proofs, proof => proof is { Source: "4.5.5", IsItem: true });
        Assert.Contains(item.Also, also => also is { Item: "4.5.1", Part: "07.2" });
        Assert.DoesNotContain(item.Also, also => also.Item == "4.5.2");

        // 03 holds all that 03.2 has
        var whole = new ScopeItemQuestion("1").Ask(DemoFiles.Project);
        Assert.True(
            whole.Budget
                <= DemoFiles.Project.Settings.Currency.ToMajorUnits(
                    DemoFiles.Project.Totals.Budget[0]
                )
        );
    }

    [Fact]
    public void An_unknown_item_is_refused_and_the_nearest_is_offered() =>
        Assert.Contains(
            "Did you mean",
            Assert
                .Throws<QuestionException>(() =>
                    new ScopeItemQuestion("4.5.22").Ask(DemoFiles.Project)
                )
                .Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void An_answer_can_be_sent()
    {
        var sent = JsonSerializer.Serialize(Demo.Lines);
        Assert.Equal(Demo.Lines.Count, JsonSerializer.Deserialize<List<ScopeLine>>(sent)!.Count);
    }

    [Fact]
    public void The_lens_shows_what_the_picked_item_asks_for_and_what_nobody_asked_for()
    {
        var lens = new LensQuestion(LensQuestion.Scope, Item: "4.5.2").Ask(DemoFiles.Project);
        string Class(string code) =>
            lens.ClassAt(DemoFiles.Project.Tree.Elements.RowOfCode(code)).Key;
        Assert.Equal(
            ["picked", "picked", "asked", "nobody", "partly", "partly", "nobody"],
            new[] { "07.2", "07.4.01", "07.1", "05.4.02", "05.4", "05", "10.4" }.Select(Class)
        );
        Assert.Equal("partly", Class(DemoFiles.Project.Tree.Code(0)));
        Assert.Throws<QuestionException>(() =>
            new LensQuestion(LensQuestion.Scope, Item: "nothing").Ask(DemoFiles.Project)
        );
    }

    [Fact]
    public void The_lens_calls_nothing_asked_for_that_the_answer_calls_asked_for_by_nobody() =>
        GeneratedProjects.Each(
            (project, _) =>
            {
                var lens = new LensQuestion(LensQuestion.Scope).Ask(project);
                for (var row = 0; row < project.Tree.Count; row++)
                {
                    Assert.Equal(
                        !project.ScopeCoverage.IsAsked(row),
                        lens.ClassAt(row).Key == "nobody"
                    );
                    Assert.NotEqual("picked", lens.ClassAt(row).Key);
                }
            }
        );
}
