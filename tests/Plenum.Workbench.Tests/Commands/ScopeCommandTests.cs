using Plenum.Core.Breakdown;
using Plenum.Core.Scope;
using Plenum.Core.Scope.Pasting;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Commands.Scope;
using Plenum.Workbench.Tests.Files;

namespace Plenum.Workbench.Tests.Commands;

/// <summary>
/// The scope statement is written, revised and traced; every clause is answered and no work stands outside it. Source:
/// MIL-STD-881F section 1 and GAO-20-195G step 4 (100 % rule); marks of revisions are common practice.
/// </summary>
public class ScopeCommandTests
{
    private static readonly DateOnly Day = new(2026, 3, 2);

    [Fact]
    public void A_written_item_waits_for_a_part_until_one_is_traced()
    {
        using var desk = new ScopeDesk();
        desk.Do(
            new AddItemCommand(0, new ItemWording("deliverable", " A crane of 20 t. ", "4.9"), "S5")
        );
        Assert.Equal(("A crane of 20 t.", "4.9"), (desk.Line("S5").Text, desk.Line("S5").Clause));
        Assert.Equal(Coverage.None, desk.Line("S5").Coverage);

        desk.Do(new TraceCommand(desk.Item("S5"), desk.Element("PLT.3")));
        Assert.Equal(Coverage.Covered, desk.Line("S5").Coverage);
        Assert.Equal(["PLT.3"], desk.Line("S5").Parts);
    }

    [Fact]
    public void Sisters_and_sub_items_get_the_next_number()
    {
        using var desk = new ScopeDesk();
        desk.Do(new AddItemCommand(desk.Item("S1"), Says("Pumps.")));
        desk.Do(new AddItemCommand(desk.Item("S1"), Says("Motors.")));
        desk.Do(new AddItemCommand(0, Says("First of the first level.")));
        desk.Do(new AddItemCommand(desk.Item("S1.2"), Says("Windings.")));
        Assert.Equal(
            [("S1.1", "S1"), ("S1.2", "S1"), ("1", null), ("S1.2.1", "S1.2")],
            new[] { "S1.1", "S1.2", "1", "S1.2.1" }.Select(item => (item, desk.Line(item).Parent))
        );
    }

    [Fact]
    public void Two_phrases_cover_an_item_unless_one_that_has_to_be_answered_is_left()
    {
        using var desk = new ScopeDesk();
        Assert.Equal(Coverage.Covered, desk.Line("S2").Coverage);
        desk.Do(new WantPhraseCommand(desk.Item("S2"), " over the trains "));
        Assert.Equal(Coverage.Partly, desk.Line("S2").Coverage);
        Assert.Equal(["over the trains"], desk.Line("S2").Unanswered);
        Assert.Equal(
            [("A hall", true), ("a roof", true), ("over the trains", false)],
            desk.Line("S2").Phrases.Select(place => (place.Phrase, place.IsAnswered))
        );

        desk.Do(new TraceCommand(desk.Item("S2"), desk.Element("PLT.3.2"), "Over the trains"));
        Assert.Equal(Coverage.Covered, desk.Line("S2").Coverage);
    }

    [Fact]
    public void A_phrase_that_loses_its_last_part_is_not_forgotten()
    {
        using var desk = new ScopeDesk();
        desk.Do(new UntraceCommand(TraceOf(desk, "S2", "a roof")));
        Assert.Equal(["a roof"], desk.Line("S2").Unanswered);
        Assert.Equal(Coverage.Partly, desk.Line("S2").Coverage);
        desk.Do(new DropPhraseCommand(desk.Item("S2"), "A ROOF"));
        Assert.Empty(desk.Line("S2").Unanswered);
    }

    [Fact]
    public void A_part_is_added_for_a_phrase_and_traced_in_one_step_that_can_be_taken_back()
    {
        using var desk = new ScopeDesk();
        var before = ProjectContent.Of(desk.Project);
        desk.Do(
            new AddPartForCommand(
                desk.Item("S2"),
                "over the trains",
                desk.Element("PLT.3"),
                "Louvres"
            )
        );
        var part = Assert.Single(desk.Line("S2").Parts, code => code is not ("PLT.3" or "PLT.3.2"));
        Assert.Equal("Louvres", desk.Project.Tree.Name(desk.Project.Tree.Elements.RowOfCode(part)));
        Assert.NotNull(desk.Open.Undo("ann"));
        Assert.Equal(before, ProjectContent.Of(desk.Project));
    }

    [Fact]
    public void Once_signed_the_statement_changes_in_a_draft_only_and_every_change_is_marked()
    {
        using var desk = new ScopeDesk();
        desk.Do(new BeginRevisionCommand());
        desk.Do(new SignRevisionCommand(Day));
        var seen = new ItemWording("deliverable", "Three pumping trains.");
        desk.Refused(
            new ChangeItemCommand(
                desk.Item("S1"),
                seen with
                {
                    Text = "Four pumping trains.",
                },
                seen
            ),
            "Revision 1 of the scope statement is signed. Begin a revision to change it."
        );

        desk.Do(new BeginRevisionCommand(Note: "One train more"));
        desk.Do(
            new ChangeItemCommand(
                desk.Item("S1"),
                seen with
                {
                    Text = "Four pumping trains.",
                },
                seen
            )
        );
        desk.Do(new AddItemCommand(0, Says("Quiet at night."), "S5"));
        desk.Do(new WithdrawItemCommand(desk.Item("S3")));
        var draft = desk.Statement.Draft!;
        Assert.Equal("2", draft.Code);
        Assert.Equal(["S1"], draft.Changed);
        Assert.Equal(["S5"], draft.Added);
        Assert.Equal(["S3"], draft.Withdrawn);
        Assert.Equal(["PLT.1", "PLT.2"], draft.Parts);
        Assert.Equal("Three pumping trains.", desk.Line("S1").Before);

        desk.Do(new SignRevisionCommand(Day));
        Assert.Null(desk.Statement.Draft);
        Assert.Equal("2", desk.Line("S1").Revision);
    }

    [Fact]
    public void What_is_changed_back_within_a_draft_loses_its_mark()
    {
        using var desk = new ScopeDesk();
        Sign(desk);
        desk.Do(new BeginRevisionCommand());
        var one = new ItemWording("deliverable", "Three pumping trains.");
        var two = one with { Text = "Four pumping trains.", Kind = "requirement" };
        desk.Do(new ChangeItemCommand(desk.Item("S1"), two, one));
        desk.Do(new ChangeItemCommand(desk.Item("S1"), one, two));
        Assert.True(desk.Statement.Draft!.IsEmpty);
        Assert.Equal(0, desk.Project[ScopeWordingTable.Definition].Count);
    }

    [Fact]
    public void A_withdrawn_item_asks_for_nothing_and_what_answered_it_alone_is_work_nobody_asked_for()
    {
        using var desk = new ScopeDesk();
        Sign(desk);
        desk.Do(new BeginRevisionCommand());
        Assert.Empty(desk.Statement.NobodyAsked);
        desk.Do(new WithdrawItemCommand(desk.Item("S3")));
        Assert.Equal(["PLT.1"], desk.Statement.NobodyAsked.Select(part => part.Code));
        desk.Do(new RestoreItemCommand(desk.Item("S3")));
        Assert.Empty(desk.Statement.NobodyAsked);
    }

    [Fact]
    public void Without_a_signed_revision_a_withdrawn_item_is_taken_out_with_all_below_it()
    {
        using var desk = new ScopeDesk();
        desk.Do(new AddItemCommand(desk.Item("S2"), Says("Doors.")));
        desk.Do(new AskQueryCommand(desk.Item("S2.1"), "How many?", Day, "ann"));
        desk.Do(new WithdrawItemCommand(desk.Item("S2")));
        Assert.Equal(["S1", "S3", "S4"], desk.Statement.Lines.Select(line => line.Item));
        Assert.Null(Assert.Single(desk.Statement.Queries).Item);
    }

    [Fact]
    public void A_pasted_statement_adds_items_and_changes_those_that_are_there()
    {
        using var desk = new ScopeDesk();
        var read = NumberedText.Read(
            "1 Works\n1.1 A gate.\n1.1.1 With a lock.\n2 Exclusions\n2.1 Dredging."
        );
        desk.Do(new PasteItemsCommand(read.Items));
        Assert.Equal(
            [
                ("1", null, "requirement"),
                ("1.1", "1", "requirement"),
                ("1.1.1", "1.1", "requirement"),
                ("2", null, "exclusion"),
                ("2.1", "2", "exclusion"),
            ],
            desk.Statement.Lines.Take(5).Select(line => (line.Item, line.Parent, line.Kind))
        );
        Assert.All(desk.Statement.Lines.Take(5), line => Assert.Equal(line.Item, line.Clause));

        var again = NumberedText.Read("1.1 Two gates.", new HashSet<string> { "1" });
        desk.Do(new PasteItemsCommand(again.Items));
        Assert.Equal("Two gates.", desk.Line("1.1").Text);
        Assert.Equal(9, desk.Statement.Lines.Count);
        Assert.Empty(desk.Do(new PasteItemsCommand(again.Items)).Changes);
    }

    [Fact]
    public void A_query_is_open_until_the_client_has_answered()
    {
        using var desk = new ScopeDesk();
        desk.Do(new AskQueryCommand(desk.Item("S2"), "Flat or pitched?", Day, "ann"));
        desk.Do(new AskQueryCommand(0, "Who signs?", Day, "ann"));
        var query = desk.Statement.Queries[0];
        // asked on 2 March, at the status date of 31 March
        Assert.Equal(("Q-01", "S2", 29), (query.Query, query.Item, query.AgeDays));
        Assert.Equal(1, desk.Line("S2").OpenQueries);

        desk.Do(new AnswerQueryCommand(query.Id, "Flat.", Day));
        Assert.Equal(["Q-02", "Q-01"], desk.Statement.Queries.Select(one => one.Query));
        Assert.Equal(0, desk.Line("S2").OpenQueries);
    }

    [Fact]
    public void Whoever_changes_an_item_second_sees_both_wordings()
    {
        using var desk = new ScopeDesk();
        var seen = new ItemWording("deliverable", "Three pumping trains.");
        desk.Do(new ChangeItemCommand(desk.Item("S1"), seen with { Text = "Four." }, seen));
        var conflict = Assert.Single(
            Assert
                .Throws<EditConflictException>(() =>
                    desk.Open.Edit(
                        new ChangeItemCommand(desk.Item("S1"), seen with { Text = "Five." }, seen),
                        "bo"
                    )
                )
                .Conflicts
        );
        Assert.Equal(("Four.", "Five.", "ann"), (conflict.Theirs, conflict.Mine, conflict.Person));
    }

    [Fact]
    public void Every_edit_of_the_statement_can_be_taken_back()
    {
        using var desk = new ScopeDesk();
        var values = new List<IReadOnlyList<string>>();
        var seen = new ItemWording("deliverable", "A hall with a roof over the trains.");
        EditCommand[] edits =
        [
            new AddItemCommand(0, Says("Quiet.")),
            new BeginRevisionCommand("A"),
            new SignRevisionCommand(Day),
            new BeginRevisionCommand(),
            new ChangeItemCommand(desk.Item("S2"), seen with { Kind = "requirement" }, seen),
            new WithdrawItemCommand(desk.Item("S1")),
            new RestoreItemCommand(desk.Item("S1")),
            new TraceCommand(desk.Item("S2"), desk.Element("PLT.2")),
            new WantPhraseCommand(desk.Item("S2"), "trains"),
            new UntraceCommand(TraceOf(desk, "S2", "a roof")),
            new AskQueryCommand(desk.Item("S2"), "When?", Day, "ann"),
            new PasteItemsCommand(NumberedText.Read("7 Gates\n7.1 A gate").Items),
        ];
        foreach (var edit in edits)
        {
            values.Add(ProjectContent.Of(desk.Project));
            Assert.NotEmpty(desk.Do(edit).Changes);
        }

        Assert.Equal("B", desk.Statement.Draft!.Code);
        foreach (var value in Enumerable.Reverse(values))
        {
            Assert.NotNull(desk.Open.Undo("ann"));
            Assert.Equal(value, ProjectContent.Of(desk.Project));
        }
    }

    [Fact]
    public void Bad_input_is_refused_on_every_field_and_nothing_changes()
    {
        using var desk = new ScopeDesk();
        var seen = new ItemWording("deliverable", "A hall with a roof over the trains.");
        var hall = desk.Item("S2");
        desk.Refused(new AddItemCommand(0, Says("Again."), "S2"), "There is an item S2 already.");
        desk.Refused(new AddItemCommand(0, Says("  ")), "text is empty, text expected");
        desk.Refused(
            new AddItemCommand(0, new ItemWording("wish", "A gate.")),
            "kind: \"wish\" found, one of deliverable, requirement, exclusion, assumption, constraint, acceptance expected"
        );
        desk.Refused(
            new AddItemCommand(999, Says("Nowhere.")),
            "This scope item is no longer there; somebody has removed it."
        );
        Assert.Equal(
            "text",
            desk.Refused(
                new ChangeItemCommand(hall, seen with { Text = " " }, seen),
                "text is empty, text expected"
            ).Column
        );
        desk.Refused(
            new TraceCommand(hall, desk.Element("PLT.3"), "a moat"),
            "S2 does not say \"a moat\"."
        );
        desk.Refused(
            new TraceCommand(hall, desk.Element("PLT.3"), "a hall"),
            "PLT.3 Pump hall answers this already."
        );
        desk.Refused(
            new TraceCommand(hall, 999),
            "This element is no longer there; somebody has removed it."
        );
        desk.Refused(new WantPhraseCommand(hall, " "), "No words are marked.");
        desk.Refused(
            new WantPhraseCommand(hall, seen.Text),
            "All of the item is marked; trace the whole item instead."
        );
        desk.Refused(
            new UntraceCommand(999),
            "This trace is no longer there; somebody has taken it back."
        );
        desk.Refused(new AskQueryCommand(hall, "", Day, "ann"), "text is empty, text expected");
        desk.Refused(
            new AnswerQueryCommand(999, "Yes.", Day),
            "This query is no longer there; somebody has removed it."
        );
        desk.Refused(
            new SignRevisionCommand(Day),
            "No revision of the scope statement is in draft; there is nothing to sign."
        );
        desk.Refused(new RestoreItemCommand(hall), "S2 holds; there is nothing to restore.");
        desk.Refused(
            new PasteItemsCommand([new PastedItem("9.1", "9", "requirement", "A gate.", 1)]),
            "9.1 is part of 9, which is not there any more."
        );
    }

    [Fact]
    public void Dates_and_revisions_follow_each_other()
    {
        using var desk = new ScopeDesk();
        desk.Do(new BeginRevisionCommand("2"));
        desk.Refused(
            new BeginRevisionCommand(),
            "Revision 2 is in draft already. Sign it before the next begins."
        );
        desk.Do(new SignRevisionCommand(Day));
        desk.Refused(new BeginRevisionCommand("1"), "1 does not come after revision 2.");
        desk.Do(new BeginRevisionCommand());
        desk.Refused(
            new SignRevisionCommand(Day.AddDays(-1)),
            "Revision 2 was signed later, on 2026-03-02."
        );
        desk.Do(new AskQueryCommand(0, "Who signs?", Day, "ann"));
        desk.Refused(
            new AnswerQueryCommand(desk.Statement.Queries[0].Id, "He.", Day.AddDays(-1)),
            "Q-01 was asked on 2026-03-02 and answered before, on 2026-03-01. Expected: a date on or after that of the query"
        );
    }

    private static ItemWording Says(string text) => new("requirement", text);

    private static void Sign(ScopeDesk desk)
    {
        desk.Do(new BeginRevisionCommand());
        desk.Do(new SignRevisionCommand(Day));
    }

    private static int TraceOf(ScopeDesk desk, string item, string phrase)
    {
        var trace = desk.Project[TraceTable.Definition];
        var row = Enumerable
            .Range(0, trace.Count)
            .Single(row =>
                trace.Ints(TraceTable.Item)[row] == desk.Item(item)
                && trace.Texts(TraceTable.Phrase)[row] == phrase
            );
        return trace.Ids[row];
    }
}
