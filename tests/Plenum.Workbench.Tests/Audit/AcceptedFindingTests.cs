using Plenum.Core.Foundation;
using Plenum.Workbench.Questions;
using Plenum.Workbench.Tests.Oracle;

namespace Plenum.Workbench.Tests.Audit;

public class AcceptedFindingTests
{
    [Fact]
    public void An_accepted_finding_is_still_listed_with_its_reason_and_not_counted()
    {
        var text = SoundProject.Make();
        SoundProject.Element(text, "PLT")["allotted"] = "99999";
        SoundProject.Element(text, "PLT.3")["allotted"] = "40000";
        var before = new CheckQuestion().Ask(Answers.Import(text));
        Assert.Equal(1, before.Count(Severity.Error));

        text.Add(
            "accepted_findings",
            ("rule", "more_than_the_whole"),
            ("code", "PLT.3"),
            ("reason", "The client pays the rest from March."),
            ("by", "ann")
        );
        var after = new CheckQuestion().Ask(Answers.Import(text));
        var finding = Assert.Single(after.Findings, finding => finding.IsAccepted);
        Assert.Equal("The client pays the rest from March.", finding.AcceptedBecause);
        Assert.Equal(0, after.Count(Severity.Error));
        Assert.Equal(1, after.Accepted);
        Assert.Equal(before.Findings.Count, after.Findings.Count);
    }
}
