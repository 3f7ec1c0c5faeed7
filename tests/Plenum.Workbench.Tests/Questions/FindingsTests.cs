using Plenum.Core.Foundation;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Tests.Questions;

/// <summary>The findings in the order in which to take them up.</summary>
public class FindingsTests
{
    [Fact]
    public void Every_finding_of_the_audit_is_there_once() =>
        GeneratedProjects.Each(
            (project, _) =>
            {
                var check = new CheckQuestion().Ask(project);
                var answer = FindingsQuestion.Ask(project);
                Assert.Equal(
                    check.Findings.OrderBy(finding => finding.ToString(), StringComparer.Ordinal),
                    answer
                        .Lines.Select(line => line.Finding)
                        .OrderBy(finding => finding.ToString(), StringComparer.Ordinal)
                );
                for (var number = 0; number < answer.Lines.Count; number++)
                {
                    Assert.Equal(number, answer.NumberOf(answer.Lines[number].Key));
                    Assert.Contains(answer.Lines[number].Finding.Rule, answer.Rules.Keys);
                }
            }
        );

    [Fact]
    public void What_must_be_fixed_comes_first_and_then_the_largest_share_of_the_project() =>
        GeneratedProjects.Each(
            (project, _) =>
            {
                var lines = FindingsQuestion.Ask(project).Lines;
                foreach (var (before, after) in lines.Zip(lines.Skip(1)))
                {
                    Assert.True(before.Finding.Severity <= after.Finding.Severity);
                    Assert.True(
                        before.Finding.Severity < after.Finding.Severity
                            || (before.Share ?? 0) >= (after.Share ?? 0)
                    );
                }
            }
        );

    [Fact]
    public void An_element_is_marked_by_its_gravest_finding()
    {
        var project = GeneratedProjects.Demo;
        var answer = FindingsQuestion.Ask(project);
        Assert.Equal(Severity.Error, answer.WorstOf(project.Tree.Elements.RowOfCode("02.5")));
        Assert.Equal(Severity.Warning, answer.WorstOf(project.Tree.Elements.RowOfCode("03.4")));
        Assert.Null(answer.WorstOf(project.Tree.Elements.RowOfCode("01.1.01")));
    }

    [Fact]
    public void A_finding_that_is_gone_has_no_number() =>
        Assert.Equal(-1, FindingsQuestion.Ask(GeneratedProjects.Demo).NumberOf("gap/99.9"));
}
