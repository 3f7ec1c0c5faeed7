using Plenum.Core;
using Plenum.Exchange.Import;
using Plenum.Oracle.Generator;
using Plenum.Samples;
using Plenum.Workbench.Tests.Oracle;

namespace Plenum.Workbench.Tests.Questions;

/// <summary>Projects to ask questions of: many small ones that are made up, and the demo plant.</summary>
internal static class GeneratedProjects
{
    private const int Seeds = 250;

    private static readonly Lazy<Project> Plant = new(ImportDemo);

    /// <summary>The invented desalination plant, as its files give it.</summary>
    public static Project Demo => Plant.Value;

    /// <summary>Checks something on every made-up project; a failure names the seed that replays it.</summary>
    public static void Each(Action<Project, Random> check) =>
        Parallel.For(
            0,
            Seeds,
            new ParallelOptions { MaxDegreeOfParallelism = 2 },
            seed =>
            {
                var project = Answers.Import(ProjectGenerator.Project(seed));
                try
                {
                    check(project, new Random(seed));
                }
                catch (Exception fault)
                {
                    Assert.Fail($"seed {seed}: {fault.Message}");
                }
            }
        );

    private static Project ImportDemo()
    {
        using var folder = new TemporaryFolder();
        DemoProject.Write(folder.Path);
        var result = Importer.Run(Project.Empty, [folder.Path], replace: false);
        Assert.False(result.Errors.Any);
        return result.Project;
    }
}
