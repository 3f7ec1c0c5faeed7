using Plenum.Core.Foundation;
using Plenum.Oracle.Tables;
using Plenum.Workbench.Questions;
using Plenum.Workbench.Tests.Audit;
using Plenum.Workbench.Tests.Oracle;

namespace Plenum.Workbench.Tests.Questions;

/// <summary>Is an element broken down far enough? The projects are invented.</summary>
public class DetailTestTests
{
    [Fact]
    public void A_sound_part_says_yes_to_everything_that_can_be_told()
    {
        var answer = Ask(SoundProject.Make(), "PLT.3");
        Assert.Equal(5, answer.Checks.Count);
        Assert.Equal([true, true, true, true], answer.Checks.Take(4).Select(check => check.Passed));
        // nothing was allotted to it, so there is nothing to compare with
        Assert.Null(answer.Checks[4].Passed);
        Assert.Equal(4, answer.Passed);
        Assert.Empty(answer.Split);
    }

    [Fact]
    public void A_part_of_what_was_allotted_that_nobody_has_is_told()
    {
        var text = SoundProject.Make();
        SoundProject.Element(text, "PLT.3")["allotted"] = "50000";
        var whole = Ask(text, "PLT.3").Checks[4];
        Assert.Equal((false, "90.0 %"), (whole.Passed, whole.Detail));
    }

    [Fact]
    public void Packages_without_person_acceptance_or_budget_are_counted()
    {
        var text = SoundProject.Make();
        SoundProject.Element(text, "PLT")["person"] = "";
        SoundProject.Element(text, "PLT.3.1")["output"] = "";
        SoundProject.AddElement(text, "PLT.3.3", "PLT.3", "Gutters");
        var checks = Ask(text, "PLT.3").Checks;
        Assert.Equal((false, "3 packages have nobody"), (checks[0].Passed, checks[0].Detail));
        Assert.Equal(
            (false, "one package names no output or acceptance"),
            (checks[1].Passed, checks[1].Detail)
        );
        Assert.Equal((false, "one package has no budget"), (checks[3].Passed, checks[3].Detail));
    }

    [Fact]
    public void What_is_too_coarse_is_to_be_split_or_measured_otherwise_in_order_of_what_it_buys()
    {
        var text = SoundProject.Make();
        SoundProject.Package(text, "PLT.3.2")["technique"] = "0/100";
        var answer = Ask(text, "PLT.3");
        Assert.False(answer.Checks[2].Passed);
        var part = Assert.Single(answer.Split);
        Assert.Equal(("PLT.3.2", "0/100"), (part.Package, part.Technique));
        Assert.Contains("milestones", part.Advice, StringComparison.Ordinal);
        // 20 000 of 45 000: bias one half, spread 0.289: 0.577 of 20 000; nothing else is open
        Assert.Equal(0.2566m, Math.Round(part.Buys, 4));
    }

    [Fact]
    public void The_precision_of_an_account_is_that_of_the_element_that_it_stands_on()
    {
        var project = GeneratedProjects.Demo;
        var precision = new PrecisionQuestion().Ask(project);
        var present = project.CurrentPeriod();
        var alone = project
            .Placement.Accounts.Codes.ToArray()
            .Select((code, account) => (code!, Row: project.Placement.ElementRow[account]))
            .Where(pair => project.Placement.AccountsOfElement[pair.Row].Length == 1)
            .ToList();
        Assert.True(alone.Count > 20);
        foreach (var (code, row) in alone)
        {
            var known = precision
                .Rows.Where(of =>
                    of.Account == code
                    && project.Periods.Codes.ToList().IndexOf(of.Period) >= present
                )
                .ToList();
            var answer = new DetailTestQuestion(project.Tree.Code(row)).Ask(project);
            Assert.Equal(known.TrueForAll(of => of.IsDetailedEnough), answer.Checks[2].Passed);
        }
    }

    [Fact]
    public void An_element_that_is_not_there_is_refused() =>
        Assert.Throws<QuestionException>(() => Ask(SoundProject.Make(), "PLT.9"));

    [Fact]
    public void The_bar_of_the_chapter_is_the_share_of_decided_cells_of_parts_by_activities()
    {
        var text = SoundProject.Make();
        // three trains, each design and delivery
        Assert.Equal(1, Breakdown(text).Passed);
        SoundProject.Element(text, "PLT.2.1.1")["activity"] = "";
        Assert.Equal(5m / 6, Breakdown(text).Passed!.Value, 4);
        text.Add(
            "not_needed",
            ("element", "PLT.2.1"),
            ("activity", "Design"),
            ("reason", "As for the last train.")
        );
        Assert.Equal(1, Breakdown(text).Passed);
    }

    [Fact]
    public void What_waits_in_the_chapter_are_the_findings_to_fix_or_to_look_at_that_nobody_has_accepted()
    {
        var text = SoundProject.Make();
        SoundProject.Element(text, "PLT.3.1")["name"] = "Other foundations";
        var check = new CheckQuestion().Ask(Answers.Import(text));
        Assert.Equal(
            check.Count(Severity.Error) + check.Count(Severity.Warning),
            Breakdown(text).Waiting
        );
        Assert.True(Breakdown(text).Waiting > 0);
        text.Add(
            "accepted_findings",
            ("rule", "generic_name"),
            ("code", "PLT.3.1"),
            ("reason", "The client calls them so.")
        );
        Assert.Equal(
            check.Count(Severity.Error) + check.Count(Severity.Warning) - 1,
            Breakdown(text).Waiting
        );
    }

    private static Standing Breakdown(TextProject text) =>
        StandingQuestion.Ask(Answers.Import(text)).Of("breakdown")!;

    private static DetailTestAnswer Ask(TextProject text, string code) =>
        new DetailTestQuestion(code).Ask(Answers.Import(text));
}
