using Plenum.Core;
using Plenum.Core.Foundation.Tables;
using Plenum.Exchange.Import;
using Plenum.Oracle.Generator;
using Plenum.Samples;
using Plenum.Workbench.Tests.Oracle;
using Plenum.Workbench.Tests.Questions;

namespace Plenum.Workbench.Tests.Audit;

/// <summary>
/// After an edit the audit asks again what can have changed, and finds what it would find if it asked everything. Ten
/// thousand edits and more that the rules of a project accept, of made-up projects and of the demo plant.
/// </summary>
public class IncrementalAuditTests
{
    private const int Seeds = 60;
    private const int EditsOfSmall = 130;
    private const int EditsOfSound = 1_000;
    private const int EditsOfSynthetic = 600;
    private const int EditsOfDemo = 100;

    [Fact]
    public void After_edits_of_made_up_projects_the_audit_is_that_of_the_full_audit() =>
        Parallel.For(
            0,
            Seeds,
            new ParallelOptions { MaxDegreeOfParallelism = 2 },
            seed => Follow(Answers.Import(ProjectGenerator.Project(seed)), seed, EditsOfSmall)
        );

    [Fact]
    public void After_edits_of_a_sound_project_the_audit_is_that_of_the_full_audit() =>
        Follow(Answers.Import(SoundProject.Make()), 1, EditsOfSound);

    [Theory]
    [InlineData(120, 3)]
    [InlineData(250, 4)]
    public void After_edits_of_a_project_of_many_tables_the_audit_is_that_of_the_full_audit(
        int packages,
        int seed
    )
    {
        using var folder = new TemporaryFolder();
        SyntheticProject.Write(
            folder.Path,
            packages,
            (ulong)seed,
            ct: TestContext.Current.CancellationToken
        );
        var result = Importer.Run(
            Project.Empty,
            [folder.Path],
            replace: false,
            ct: TestContext.Current.CancellationToken
        );
        Assert.False(result.Errors.Any);
        Follow(result.Project, seed, EditsOfSynthetic);
    }

    [Fact]
    public void After_edits_of_the_demo_plant_the_audit_is_that_of_the_full_audit() =>
        Follow(GeneratedProjects.Demo, 5, EditsOfDemo);

    private static void Follow(Project project, int seed, int edits)
    {
        var dice = new Dice(seed);
        var random = new RandomEdits(dice);
        var audited = AuditedProject.Of(project);
        var (differed, partly) = (0, 0);
        for (var (made, tried) = (0, 0); made < edits; tried++)
        {
            Assert.True(tried < 50 * edits, "too few edits are accepted");
            if (random.Edit(audited.Project) is not { } edit)
            {
                continue;
            }

            made++;
            var before = audited;
            audited = audited.After(edit.Next, dice.Chance(50) ? edit.Changes : null);
            AssertIsFull(audited, seed, made, edit.Changes);
            differed += before.Findings.SequenceEqual(audited.Findings) ? 0 : 1;
            partly += 2 * audited.RulesAsked < audited.Rules.Count ? 1 : 0;
        }

        // the edits are such that there is something to find again, and mostly little
        Assert.True(
            10 * differed > edits,
            $"seed {seed}: {differed} of {edits} edits changed what is found"
        );
        Assert.True(
            3 * partly > 2 * edits,
            $"seed {seed}: {partly} of {edits} edits had less than half of the rules asked whole"
        );
    }

    private static void AssertIsFull(
        AuditedProject audited,
        int seed,
        int edit,
        IReadOnlyList<TableChange> changes
    )
    {
        // nothing is taken over from the value before
        var rules = ProjectAudit.Rules(new Project(audited.Project.Tables, 1));
        Assert.Equal(rules.Count, audited.Rules.Count);
        foreach (var (full, found) in rules.Zip(audited.Rules))
        {
            var expected = full.Run().ToList();
            Assert.True(
                expected.SequenceEqual(found.Findings),
                $"seed {seed}, edit {edit} of {string.Join(", ", changes.Select(change => change.Definition.Name))}, "
                    + $"rule {full.Name}: expected {string.Join(" | ", expected.Except(found.Findings).Take(3))}; "
                    + $"found {string.Join(" | ", found.Findings.Except(expected).Take(3))}"
            );
        }
    }
}
