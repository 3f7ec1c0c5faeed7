using Plenum.Core;
using Plenum.Oracle.Tables;
using Plenum.Workbench.Questions;
using Plenum.Workbench.Tests.Oracle;

namespace Plenum.Workbench.Tests.Audit;

/// <summary>Every rule of the audit by a pair of examples. All are invented.</summary>
public class RuleExampleTests
{
    public static TheoryData<string> Rules => [.. RuleExamples.All.Select(example => example.Rule)];

    [Fact]
    public void In_the_sound_project_the_audit_finds_nothing()
    {
        var answer = new CheckQuestion().Ask(Answers.Import(SoundNetwork.Make()));
        Assert.Empty(answer.Findings);
    }

    [Fact]
    public void Every_rule_has_a_pair_of_examples() =>
        Assert.Equal(
            ProjectAudit
                .Rules(Answers.Import(SoundProject.Make()))
                .Select(rule => rule.Name)
                .Order(StringComparer.Ordinal),
            RuleExamples.All.Select(example => example.Rule).Order(StringComparer.Ordinal)
        );

    [Theory]
    [MemberData(nameof(Rules))]
    public void A_rule_finds_its_fault_where_it_is_and_keeps_silent_where_there_is_none(string rule)
    {
        var example = RuleExamples.All.Single(one => one.Rule == rule);
        var bad = Sound();
        example.Bad(bad);
        Assert.Contains(
            example.Code,
            new CheckQuestion(rule)
                .Ask(Answers.Import(bad))
                .Findings.Select(finding => finding.Code)
        );
        var good = Sound();
        example.Good(good);
        Assert.Empty(new CheckQuestion(rule).Ask(Answers.Import(good)).Findings);

        TextProject Sound() =>
            RuleExamples.HasNetwork(example) ? SoundNetwork.Make() : SoundProject.Make();
    }
}
