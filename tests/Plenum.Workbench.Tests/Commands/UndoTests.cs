using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Oracle.Generator;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Commands.Breakdown;
using Plenum.Workbench.Tests.Files;
using Plenum.Workbench.Tests.Oracle;

namespace Plenum.Workbench.Tests.Commands;

/// <summary>What was done can be taken back, and nobody's work is lost by it. Laws of our own; no source.</summary>
public sealed class UndoTests
{
    private const int Sequences = 1_000;
    private const int Projects = 50;

    private static readonly Lazy<Project[]> Small = new(() =>
        [
            .. Enumerable
                .Range(0, Projects)
                .Select(seed => Answers.Import(ProjectGenerator.Project(seed))),
        ]
    );

    [Fact]
    public void As_many_steps_back_as_there_were_edits_give_an_equal_project() =>
        Each(
            (project, random) =>
            {
                var before = ProjectContent.Of(project);
                var desk = Desk.Of(project);
                var done = 0;
                for (var edit = 0; edit < 12; edit++)
                {
                    done += Try(desk, random, "Ann") ? 1 : 0;
                }

                var after = ProjectContent.Of(desk.Current);
                for (var step = 0; step < done; step++)
                {
                    Assert.NotNull(desk.Undo("Ann"));
                }

                Assert.Null(desk.Undo("Ann"));
                Assert.Equal(before, ProjectContent.Of(desk.Current));
                for (var step = 0; step < done; step++)
                {
                    Assert.NotNull(desk.Redo("Ann"));
                }

                Assert.Null(desk.Redo("Ann"));
                Assert.Equal(after, ProjectContent.Of(desk.Current));
            }
        );

    [Fact]
    public void Taking_back_never_changes_what_another_person_has_written_since() =>
        Each(
            (project, random) =>
            {
                var desk = Desk.Of(project);
                for (var edit = 0; edit < 6; edit++)
                {
                    Try(desk, random, "Ann");
                }

                var shared = desk.Current;
                for (var edit = 0; edit < 6; edit++)
                {
                    Try(desk, random, "Bo");
                }

                var theirs = ProjectChange.Between(shared, desk.Current);
                var written = desk.Current;
                while (Took(desk, "Ann")) { }

                AssertKept(theirs, written, desk.Current);
            }
        );

    [Fact]
    public void Two_hundred_steps_and_more_can_be_taken_back()
    {
        var desk = Desk.Of(Small.Value[0]);
        var before = ProjectContent.Of(desk.Current);
        var root = desk.Current.Tree.Elements.Ids[0];
        for (var edit = 0; edit < 300; edit++)
        {
            desk.Edit(
                RandomCommands.Write(desk.Current, ElementTable.Name, root, $"Name {edit}"),
                "Ann"
            );
        }

        for (var step = 0; step < 300; step++)
        {
            Assert.NotNull(desk.Undo("Ann"));
        }

        Assert.Equal(before, ProjectContent.Of(desk.Current));
    }

    [Fact]
    public void A_person_takes_back_own_edits_only()
    {
        var desk = Desk.Of(Small.Value[0]);
        var root = desk.Current.Tree.Elements.Ids[0];
        desk.Edit(new AddElementCommand(root, 0, "Of Ann"), "Ann");
        desk.Edit(new AddElementCommand(root, 0, "Of Bo"), "Bo");
        desk.Undo("Ann");
        Assert.Contains(desk.Outline(), line => line.EndsWith("Of Bo", StringComparison.Ordinal));
        Assert.DoesNotContain(
            desk.Outline(),
            line => line.EndsWith("Of Ann", StringComparison.Ordinal)
        );
        Assert.Null(desk.Undo("Cy"));
    }

    [Fact]
    public void A_part_that_another_person_has_put_work_into_is_not_taken_back()
    {
        var desk = Desk.Of(Small.Value[0]);
        var root = desk.Current.Tree.Elements.Ids[0];
        var added = desk.Edit(new AddElementCommand(root, 0, "Pump house"), "Ann")
            .Added(ElementTable.Definition)[0];
        desk.Edit(new AddElementCommand(added, 0, "Pumps"), "Bo");
        var refused = Assert.Throws<EditException>(() => desk.Undo("Ann"));
        Assert.Contains("Pump house", refused.Message, StringComparison.Ordinal);
        Assert.Contains(desk.Outline(), line => line.EndsWith("Pumps", StringComparison.Ordinal));
    }

    [Fact]
    public void A_new_edit_ends_what_could_be_done_again()
    {
        var desk = Desk.Of(Small.Value[0]);
        var root = desk.Current.Tree.Elements.Ids[0];
        desk.Edit(new AddElementCommand(root, 0, "One"), "Ann");
        desk.Undo("Ann");
        desk.Edit(new AddElementCommand(root, 0, "Two"), "Ann");
        Assert.Null(desk.Redo("Ann"));
    }

    private static void Each(Action<Project, Random> check) =>
        Parallel.For(
            0,
            Sequences,
            new ParallelOptions { MaxDegreeOfParallelism = 2 },
            seed =>
            {
                try
                {
                    check(Small.Value[seed % Projects], new Random(seed));
                }
                catch (Exception fault)
                {
                    Assert.Fail($"seed {seed}: {fault}");
                }
            }
        );

    private static bool Try(EditDesk desk, Random random, string person)
    {
        try
        {
            return desk.Edit(RandomCommands.Draw(desk.Current, random), person).Changes.Count > 0;
        }
        catch (EditException)
        {
            return false; // it made no sense here
        }
    }

    private static bool Took(EditDesk desk, string person)
    {
        try
        {
            return desk.Undo(person) is not null;
        }
        catch (EditException)
        {
            return false; // somebody's later work stands in the way
        }
    }

    /// <summary>Every cell that was written is as it was; places among sisters may be numbered anew.</summary>
    private static void AssertKept(ProjectChange theirs, Project written, Project now)
    {
        var (before, after) = (new ProjectText(written), new ProjectText(now));
        var (old, elements) = (written[ElementTable.Definition], now[ElementTable.Definition]);
        foreach (var (id, change) in theirs.Elements)
        {
            if (
                change is { Before: >= 0, After: >= 0 }
                && change.Columns.All(column => column == ElementTable.Order)
            )
            {
                continue; // moved along, not written
            }

            var row = elements.RowOf(id);
            Assert.Equal(change.After >= 0, row >= 0);
            foreach (var column in change.Columns)
            {
                if (
                    row >= 0
                    && column.Table == ElementTable.Definition
                    && column != ElementTable.Order
                )
                {
                    Assert.True(
                        elements[column].SameAt(row, old[column], change.After),
                        $"{column} of {before.Of(old, change.After, ElementTable.Code)} was "
                            + $"{before.Of(old, change.After, column)} and is {after.Of(elements, row, column)}"
                    );
                }
            }
        }
    }
}
