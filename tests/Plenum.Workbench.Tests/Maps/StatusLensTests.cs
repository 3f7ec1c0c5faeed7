using Plenum.Oracle.Tables;
using Plenum.Workbench.Maps;
using Plenum.Workbench.Questions;
using Plenum.Workbench.Tests.Oracle;

namespace Plenum.Workbench.Tests.Maps;

/// <summary>Four months; what is asked for is the state in the third, March.</summary>
public class StatusLensTests
{
    private static readonly DateOnly InMarch = new(2026, 3, 31);

    [Theory]
    // planned from, to; rows as period, start, finish
    [InlineData("2026-04-01", "2026-04-30", "", "nothing_due")]
    [InlineData("2026-04-01", "2026-04-30", "P3 2026-03-20 -", "reported")]
    [InlineData("2026-02-10", "2026-04-30", "P2 2026-02-10 -, P3 - -", "reported")]
    [InlineData("2026-02-10", "2026-03-20", "P2 2026-02-10 -, P3 - 2026-03-20", "reported")]
    [InlineData("2026-02-10", "2026-02-20", "P2 2026-02-10 2026-02-20", "nothing_due")]
    [InlineData("2026-02-10", "2026-02-20", "P2 2026-02-10 2026-02-20, P3 - -", "nothing_due")]
    [InlineData("2026-02-10", "2026-04-30", "P2 2026-02-10 -", "due")]
    [InlineData("2026-04-10", "2026-04-30", "P2 2026-02-10 -", "due")]
    [InlineData("2026-01-10", "2026-04-30", "P1 2026-01-10 -", "late")]
    [InlineData("2026-01-10", "2026-04-30", "P1 2026-01-10 -, P4 - -", "late")]
    [InlineData("2026-02-10", "2026-03-20", "P2 2026-02-10 -", "late")]
    [InlineData("2026-03-31", "2026-04-30", "", "late")]
    [InlineData("2026-02-10", "2026-04-30", "", "late")]
    [InlineData("2026-03-10", "2026-04-30", "P2 - -", "late")]
    [InlineData("2026-02-10", "2026-04-30", "P2 - -", "due")]
    [InlineData("", "", "", "nothing_due")]
    public void A_report_is_in_due_or_late_by_its_rows_and_planned_dates(
        string start,
        string finish,
        string rows,
        string expected
    ) => Assert.Equal(expected, StateInMarch(OnePackage("percent", start, finish, rows)));

    [Theory]
    [InlineData("loe")]
    [InlineData("apportioned")]
    public void What_earns_without_a_report_never_owes_one(string technique)
    {
        Assert.Equal(
            "nothing_due",
            StateInMarch(OnePackage(technique, "2026-01-10", "2026-02-20", ""))
        );
        Assert.Equal(
            "reported",
            StateInMarch(OnePackage(technique, "2026-01-10", "2026-04-20", "P3 2026-01-10 -"))
        );
    }

    [Theory]
    [InlineData("milestone_status")]
    [InlineData("item_steps")]
    [InlineData("activity_status")]
    public void A_row_about_a_milestone_a_step_or_an_activity_is_a_report(string table)
    {
        var text = OnePackage("percent", "2026-02-10", "2026-04-30", "P2 2026-02-10 -");
        Assert.Equal("due", StateInMarch(text));
        switch (table)
        {
            case "milestone_status":
                text.Add("milestones", ("package", "P.1"), ("milestone", "M"), ("weight", "1"));
                text.Add(
                    table,
                    ("package", "P.1"),
                    ("milestone", "M"),
                    ("period", "P3"),
                    ("done", "2026-03-02")
                );
                break;
            case "item_steps":
                text.Add("credit_steps", ("rule", "R"), ("step", "S"), ("percent", "100"));
                text.Add("items", ("package", "P.1"), ("item", "I"), ("hours", "1"), ("rule", "R"));
                text.Add(table, ("item", "I"), ("package", "P.1"), ("step", "S"), ("period", "P3"));
                break;
            default:
                text.Add("activities", ("activity", "A"), ("package", "P.1"), ("duration", "5"));
                text.Add(table, ("activity", "A"), ("period", "P3"), ("remaining", "3"));
                break;
        }

        Assert.Equal("reported", StateInMarch(text));
    }

    [Fact]
    public void Before_the_first_period_ends_nothing_is_due()
    {
        var project = Answers.Import(OnePackage("percent", "2025-12-01", "2026-01-10", ""));
        var lens = new LensQuestion(LensQuestion.Status, new DateOnly(2026, 1, 30)).Ask(project);
        Assert.Equal("nothing_due", lens.ClassAt(1).Key);
        Assert.Null(lens.Text.At);
    }

    [Fact]
    public void Status_is_shown_as_a_mix_of_the_packages()
    {
        var lens = new LensQuestion(LensQuestion.Status).Ask(Documents.Demo);
        var read = Documents.Read(lens);
        Assert.True(read.IsMix);
        Assert.Equal("Whose report is in for period P18, as a mix", lens.Text.Says);
        Assert.Equal(
            ["reported", "due", "late", "nothing_due"],
            lens.Legend.Classes.Select(one => one.Key)
        );
        var tree = Documents.Demo.Tree;
        for (var row = 0; row < tree.Count; row++)
        {
            Assert.True(tree.PackageOfRow[row] >= 0 || read.ClassOf[row] == 3);
        }
    }

    [Fact]
    public void In_the_demo_the_packages_that_the_audit_calls_old_are_late()
    {
        var lens = new LensQuestion(LensQuestion.Status).Ask(Documents.Demo);
        var old = new CheckQuestion("status_old").Ask(Documents.Demo).Findings;
        Assert.NotEmpty(old);
        foreach (var finding in old)
        {
            Assert.Equal(
                "late",
                lens.ClassAt(Documents.Demo.Tree.Elements.RowOfCode(finding.Code)).Key
            );
        }
    }

    private static string StateInMarch(TextProject text) =>
        new LensQuestion(LensQuestion.Status, InMarch).Ask(Answers.Import(text)).ClassAt(1).Key;

    private static TextProject OnePackage(
        string technique,
        string start,
        string finish,
        string rows
    )
    {
        var text = new TextProject();
        text.Add("project", ("key", "start"), ("value", "2026-01-01"));
        text.Add("periods", ("period", "P1"), ("end", "2026-01-31"));
        text.Add("periods", ("period", "P2"), ("end", "2026-02-28"));
        text.Add("periods", ("period", "P3"), ("end", "2026-03-31"));
        text.Add("periods", ("period", "P4"), ("end", "2026-04-30"));
        text.Add("elements", ("code", "P"), ("parent", ""), ("name", "Plant"));
        text.Add("elements", ("code", "P.1"), ("parent", "P"), ("name", "Pump"));
        text.Add("elements", ("code", "P.2"), ("parent", "P"), ("name", "Base"));
        text.Add("budget", ("package", "P.2"), ("cost_element", "labour"), ("amount", "10"));
        text.Add(
            "packages",
            ("package", "P.1"),
            ("technique", technique),
            ("base", technique == "apportioned" ? "P.2" : ""),
            ("start", start),
            ("finish", finish)
        );
        foreach (var row in rows.Split(',', StringSplitOptions.RemoveEmptyEntries))
        {
            var cells = row.Trim().Split(' ');
            text.Add(
                "status",
                ("package", "P.1"),
                ("period", cells[0]),
                ("started", cells[1].Trim('-')),
                ("finished", cells[2].Trim('-')),
                ("remark", "said")
            );
        }

        return text;
    }
}
