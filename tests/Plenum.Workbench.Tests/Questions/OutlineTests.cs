using System.Collections.Immutable;
using Plenum.Core;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Tests.Questions;

/// <summary>The outline shows the breakdown as it is, whatever part of it is open or in view.</summary>
public class OutlineTests
{
    [Fact]
    public void With_every_branch_open_the_outline_is_the_breakdown() =>
        GeneratedProjects.Each(
            (project, _) =>
            {
                var lines = Lines(project, [.. project.Tree.Elements.Ids]);
                var tree = new TreeQuestion().Ask(project).Rows;
                Assert.Equal(
                    tree.Select(row => (row.Code, row.Name, row.Level, row.Budget, row.Allotted)),
                    lines
                        .Where(line => !line.IsRest)
                        .Select(line =>
                            (line.Code, line.Name, line.Level, line.Budget, line.Allotted)
                        )
                );
                Assert.Equal(
                    tree.Select(row => row.Gap),
                    lines.Where(line => !line.IsRest).Select(line => line.Gap)
                );
            }
        );

    [Fact]
    public void An_element_is_shown_exactly_while_every_branch_above_it_is_open() =>
        GeneratedProjects.Each(
            (project, random) =>
            {
                var open = SomeBranches(project, random);
                var shown = Lines(project, open)
                    .Where(line => !line.IsRest)
                    .Select(line => line.Position);
                Assert.Equal(
                    Enumerable
                        .Range(0, project.Tree.Count)
                        .Where(row => Above(project, row).All(IsOpen)),
                    shown
                );

                bool IsOpen(int row) => open.Contains(project.Tree.Elements.Ids[row]);
            }
        );

    [Fact]
    public void A_window_is_that_part_of_the_whole_outline() =>
        GeneratedProjects.Each(
            (project, random) =>
            {
                var answer = new OutlineQuestion(SomeBranches(project, random)).Ask(project);
                var all = answer.Window(0, answer.Count);
                Assert.Equal(answer.Count, all.Count);
                var first = random.Next(answer.Count + 3);
                var count = random.Next(12);
                Assert.Equal(all.Skip(first).Take(count), answer.Window(first, count));
            }
        );

    [Fact]
    public void Every_element_that_is_shown_finds_its_line_and_no_other_does() =>
        GeneratedProjects.Each(
            (project, random) =>
            {
                var answer = new OutlineQuestion(SomeBranches(project, random)).Ask(project);
                var lineOf = answer
                    .Window(0, answer.Count)
                    .Where(line => !line.IsRest)
                    .ToDictionary(line => line.Position, line => line.Number);
                for (var row = 0; row < project.Tree.Count; row++)
                {
                    Assert.Equal(lineOf.GetValueOrDefault(row, -1), answer.LineOf(row));
                }

                Assert.All(
                    answer.Window(0, answer.Count).Where(line => !line.IsRest && line.Position > 0),
                    line =>
                        Assert.Equal(lineOf[project.Tree.Parent[line.Position]], line.ParentLine)
                );
            }
        );

    [Fact]
    public void What_belongs_to_no_part_stands_after_the_last_part_and_is_the_gap() =>
        GeneratedProjects.Each(
            (project, _) =>
            {
                var lines = Lines(project, [.. project.Tree.Elements.Ids]);
                var tree = project.Tree;
                Assert.Equal(
                    Enumerable
                        .Range(0, tree.Count)
                        .Where(row =>
                            tree.HasChildren(row)
                            && project.Totals.Gap[row] is not (0 or Cell.NoLong)
                        )
                        .Order(),
                    lines.Where(line => line.IsRest).Select(line => line.Position).Order()
                );
                foreach (var rest in lines.Where(line => line.IsRest))
                {
                    var before = lines[rest.Number - 1];
                    Assert.True(
                        before.IsRest
                            ? tree.SubtreeEnd[before.Position] == tree.SubtreeEnd[rest.Position]
                            : before.Position == tree.SubtreeEnd[rest.Position] - 1
                    );
                    Assert.Equal(lines[rest.ParentLine].Gap, rest.Gap);
                    Assert.Equal(rest.Position, lines[rest.ParentLine].Position);
                }
            }
        );

    [Fact]
    public void The_shares_of_the_parts_and_of_the_gap_fill_their_parent() =>
        GeneratedProjects.Each(
            (project, _) =>
            {
                var lines = Lines(project, [.. project.Tree.Elements.Ids]);
                foreach (
                    var parts in lines
                        .Where(line => line.ParentLine >= 0)
                        .GroupBy(line => line.ParentLine)
                )
                {
                    // where the parts have more than the whole, they alone are the whole
                    var filling = parts.Where(line => !line.IsRest || line.Gap > 0).ToList();
                    if (filling.Any(line => line.Share is null))
                    {
                        Assert.All(filling, line => Assert.Null(line.Share));
                        continue;
                    }

                    var filled = 0m;
                    foreach (var line in filling)
                    {
                        Near(filled, line.Start!.Value);
                        filled += line.Share!.Value;
                    }

                    Near(1, filled);
                }
            }
        );

    [Fact]
    public void Closing_a_branch_takes_away_what_lies_in_it_and_nothing_else() =>
        GeneratedProjects.Each(
            (project, random) =>
            {
                var open = SomeBranches(project, random);
                var row = random.Next(project.Tree.Count);
                var without = Lines(project, open.Remove(project.Tree.Elements.Ids[row]));
                var end = project.Tree.SubtreeEnd[row];
                Assert.Equal(
                    Lines(project, open)
                        .Where(line =>
                            line.IsRest
                                ? line.Position < row || line.Position >= end
                                : line.Position <= row || line.Position >= end
                        )
                        .Select(line => (line.Code, line.IsRest)),
                    without.Select(line => (line.Code, line.IsRest))
                );
            }
        );

    [Fact]
    public void The_train_without_its_instruments_shows_what_belongs_to_no_part()
    {
        // constructed: one of six equal trains of the demo plant lacks a part of 1.00 million
        var project = GeneratedProjects.Demo;
        int[] way =
        [
            0,
            project.Tree.Elements.RowOfCode("03"),
            project.Tree.Elements.RowOfCode("03.4"),
        ];
        var lines = Lines(project, [.. way.Select(row => project.Tree.Elements.Ids[row])]);
        var rest = Assert.Single(lines, line => line is { IsRest: true, Code: "03.4" });
        Assert.Equal(1_000_000.00m, rest.Gap);
        Assert.Equal(7.0m, Math.Round(rest.Share!.Value * 100, 1));
        Assert.Equal("03.4.10", lines[rest.Number - 1].Code);
        Assert.Equal("10", lines[rest.Number - 1].CodePart);
        Assert.Equal("03.5", lines[rest.Number + 1].Code);
        Assert.Equal("03.5", lines[rest.Number + 1].CodePart);
    }

    private static OutlineLine[] Lines(Project project, ImmutableHashSet<int> open)
    {
        var answer = new OutlineQuestion(open).Ask(project);
        return [.. answer.Window(0, answer.Count)];
    }

    private static ImmutableHashSet<int> SomeBranches(Project project, Random random) =>
        [.. project.Tree.Elements.Ids.Where(_ => random.Next(4) > 0)];

    private static IEnumerable<int> Above(Project project, int row)
    {
        for (row = project.Tree.Parent[row]; row >= 0; row = project.Tree.Parent[row])
        {
            yield return row;
        }
    }

    /// <summary>Shares are exact to 28 digits; sums of them to fewer.</summary>
    private static void Near(decimal expected, decimal found) =>
        Assert.InRange(found, expected - 1e-20m, expected + 1e-20m);
}
