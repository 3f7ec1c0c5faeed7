using Plenum.Core;
using Plenum.Core.Foundation;
using Plenum.Oracle.Tables;
using Plenum.Workbench.Maps;
using Plenum.Workbench.Questions;
using Plenum.Workbench.Tests.Oracle;

namespace Plenum.Workbench.Tests.Audit;

public class AcceptedFindingTests
{
    private const string Reason = "The client pays the rest from March.";

    [Fact]
    public void An_accepted_finding_is_still_listed_with_its_reason_and_not_counted()
    {
        var text = TooMuch("40000");
        var before = new CheckQuestion().Ask(Answers.Import(text));
        Assert.Equal(1, before.Count(Severity.Error));

        Accept(text, finding: "");
        var after = new CheckQuestion().Ask(Answers.Import(text));
        var finding = Assert.Single(after.Findings, finding => finding.IsAccepted);
        Assert.Equal(Reason, finding.AcceptedBecause);
        Assert.Equal("ann", finding.AcceptedBy);
        Assert.Equal(0, after.Count(Severity.Error));
        Assert.Equal(1, after.Accepted);
        Assert.Equal(before.Findings.Count, after.Findings.Count);
    }

    [Fact]
    public void An_accepted_finding_returns_when_its_ground_changes()
    {
        var text = TooMuch("40000");
        var message = new CheckQuestion("more_than_the_whole")
            .Ask(Answers.Import(text))
            .Findings.Single()
            .Message;
        Accept(text, message);
        Assert.Equal(0, new CheckQuestion().Ask(Answers.Import(text)).Count(Severity.Error));

        // the parts have still more than they were given
        SoundProject.Element(text, "PLT.3")["allotted"] = "39000";
        SoundProject.Element(text, "PLT")["allotted"] = "94000";
        var after = new CheckQuestion("more_than_the_whole").Ask(Answers.Import(text));
        Assert.Equal(1, after.Count(Severity.Error));
        Assert.Equal(0, after.Accepted);
    }

    [Fact]
    public void A_row_that_names_no_finding_accepts_whatever_it_says()
    {
        var text = TooMuch("40000");
        Accept(text, finding: "");
        SoundProject.Element(text, "PLT.3")["allotted"] = "39000";
        SoundProject.Element(text, "PLT")["allotted"] = "94000";
        Assert.Equal(
            1,
            new CheckQuestion("more_than_the_whole").Ask(Answers.Import(text)).Accepted
        );
    }

    [Fact]
    public void What_is_accepted_stands_last_and_is_marked_neither_on_the_map_nor_at_its_element()
    {
        var text = TooMuch("40000");
        SoundProject.Element(text, "PLT.3.1")["name"] = "Other foundations";
        Accept(text, finding: "");
        var project = Answers.Import(text);
        var answer = FindingsQuestion.Ask(project);
        Assert.Equal("more_than_the_whole", answer.Lines[^1].Finding.Rule);
        Assert.Contains(answer.Lines, line => line.Finding.Rule == "generic_name");
        var row = project.Tree.Elements.RowOfCode("PLT.3");
        Assert.Null(answer.WorstOf(row));
        Assert.False(MapFindings.Of(project).At(row));
        Assert.Equal((0, 1), (answer.Count(Severity.Error), answer.Accepted));
    }

    [Fact]
    public void Accepting_is_written_with_person_and_reason_and_can_be_taken_back()
    {
        using var folder = new TemporaryFolder();
        var path = Make(folder, TooMuch("40000"));
        using (
            var project = OpenProject.Open(
                path,
                TimeProvider.System,
                ct: TestContext.Current.CancellationToken
            )
        )
        {
            var finding = Found(project);
            Assert.True(project.Accept(Command(finding, " " + Reason)));
            Assert.Equal(2, project.Current.Revision);
        }

        using (
            var again = OpenProject.Open(
                path,
                TimeProvider.System,
                ct: TestContext.Current.CancellationToken
            )
        )
        {
            var finding = Found(again);
            Assert.Equal((Reason, "b.lund"), (finding.AcceptedBecause, finding.AcceptedBy));
            // another reason takes the place of the first
            Assert.True(again.Accept(Command(finding, "Agreed in writing.")));
            Assert.Equal("Agreed in writing.", Found(again).AcceptedBecause);
            Assert.False(again.Accept(Command(finding, "Agreed in writing.")));

            Assert.True(again.Accept(Command(finding, null)));
            Assert.False(Found(again).IsAccepted);
            Assert.False(again.Accept(Command(finding, null)));
        }
    }

    [Fact]
    public void A_finding_is_not_accepted_without_a_reason_nor_one_that_is_not_there()
    {
        using var folder = new TemporaryFolder();
        using var project = OpenProject.Open(
            Make(folder, TooMuch("40000")),
            TimeProvider.System,
            ct: TestContext.Current.CancellationToken
        );
        var finding = Found(project);
        Assert.Throws<QuestionException>(() => project.Accept(Command(finding, "  ")));
        Assert.Throws<QuestionException>(() =>
            project.Accept(Command(finding with { Message = "Something else." }, Reason))
        );
        Assert.Equal(1, project.Current.Revision);
    }

    [Fact]
    public void After_a_command_the_audit_is_taken_from_that_of_the_value_before()
    {
        using var folder = new TemporaryFolder();
        using var project = OpenProject.Open(
            Make(folder, TooMuch("40000")),
            TimeProvider.System,
            ct: TestContext.Current.CancellationToken
        );
        var before = AuditBook.Of(project.Current);
        Assert.Equal(before.Rules.Count, before.RulesAsked);
        Assert.True(project.Accept(Command(Found(project), Reason)));
        var after = AuditBook.Of(project.Current);
        // what is accepted is no ground of any rule
        Assert.Equal((0, 0), (after.RulesAsked, after.PlacesAsked));

        File.WriteAllText(folder["elements.csv"], "code,name\nPLT.3.2,Roof sheets\n");
        Assert.False(
            project
                .Import(
                    new ImportCommand([folder["elements.csv"]], false, false, "b.lund"),
                    ct: TestContext.Current.CancellationToken
                )
                .Errors.Any
        );
        var named = AuditBook.Of(project.Current);
        // of the rules on the network those that say the name of the package
        Assert.InRange(named.RulesAsked, 0, 3);
        Assert.InRange(named.PlacesAsked, 1, 200);
        Assert.Equal(
            AuditedProject.Of(new Project(project.Current.Tables, 1)).Findings,
            named.Findings
        );
    }

    private static TextProject TooMuch(string allotted)
    {
        var text = SoundProject.Make();
        SoundProject.Element(text, "PLT")["allotted"] = "95000";
        SoundProject.Element(text, "PLT.3")["allotted"] = allotted;
        return text;
    }

    private static void Accept(TextProject text, string finding) =>
        text.Add(
            "accepted_findings",
            ("rule", "more_than_the_whole"),
            ("code", "PLT.3"),
            ("finding", finding),
            ("reason", Reason),
            ("by", "ann")
        );

    private static string Make(TemporaryFolder folder, TextProject text)
    {
        var path = folder["plant.plenum"];
        CsvFolder.Write(text, folder["files"]);
        OpenProject.Create(path, "b.lund", TimeProvider.System);
        using var project = OpenProject.Open(
            path,
            TimeProvider.System,
            ct: TestContext.Current.CancellationToken
        );
        Assert.False(
            project
                .Import(
                    new ImportCommand([folder["files"]], false, false, "b.lund"),
                    ct: TestContext.Current.CancellationToken
                )
                .Errors.Any
        );
        return path;
    }

    private static Finding Found(OpenProject project) =>
        new CheckQuestion("more_than_the_whole").Ask(project.Current).Findings.Single();

    private static AcceptFindingCommand Command(Finding finding, string? reason) =>
        new(finding.Rule, finding.Code, finding.Message, reason, "b.lund");
}
