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
    public void An_element_is_marked_by_the_gravest_of_its_own_findings()
    {
        var project = GeneratedProjects.Demo;
        var check = new CheckQuestion().Ask(project);
        var answer = FindingsQuestion.Ask(project);
        var elements = project.Tree.Elements;
        Assert.Equal(Severity.Error, answer.WorstOf(elements.RowOfCode("02.5")));
        foreach (var found in check.Findings.GroupBy(finding => elements.RowOfCode(finding.Code)))
        {
            if (found.Key >= 0)
            {
                Assert.True(answer.WorstOf(found.Key) <= found.Min(finding => finding.Severity));
            }
        }

        Assert.All(
            Enumerable.Range(0, project.Tree.Count),
            row =>
                Assert.Equal(
                    answer.Lines.Any(line => line.Position == row),
                    answer.WorstOf(row) is not null
                )
        );
    }

    [Fact]
    public void A_finding_that_is_gone_has_no_number() =>
        Assert.Equal(-1, FindingsQuestion.Ask(GeneratedProjects.Demo).NumberOf("gap/99.9"));
}
