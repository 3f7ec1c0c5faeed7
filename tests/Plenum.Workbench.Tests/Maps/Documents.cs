using Plenum.Core;
using Plenum.Exchange.Import;
using Plenum.Oracle.Generator;
using Plenum.Oracle.Tables;
using Plenum.Samples;
using Plenum.Workbench.Maps;
using Plenum.Workbench.Tests.Oracle;

namespace Plenum.Workbench.Tests.Maps;

/// <summary>Projects to be shown as maps, and the documents of a project, read back.</summary>
internal static class Documents
{
    private const int Seeds = 200;

    private static readonly Lazy<Project>[] Generated =
    [
        .. Enumerable
            .Range(0, Seeds)
            .Select(seed => new Lazy<Project>(() =>
                Answers.Import(ProjectGenerator.Project(seed))
            )),
    ];

    private static readonly Lazy<Project> LazyDemo = new(() =>
    {
        using var folder = new TemporaryFolder();
        DemoProject.Write(folder.Path);
        var result = Importer.Run(Project.Empty, [folder.Path], replace: false);
        Assert.False(result.Errors.Any);
        return result.Project;
    });

    /// <summary>The demo plant, taken in once.</summary>
    public static Project Demo => LazyDemo.Value;

    public static ReadMap Map(Project project, MapFindings? findings = null) =>
        MapReader.Map(Bytes(project, findings));

    public static ReadLens Read(Lens lens) => MapReader.Lens(Bytes(lens));

    public static byte[] Bytes(Project project, MapFindings? findings = null)
    {
        using var stream = new MemoryStream();
        MapDocument.Write(project, stream, findings);
        return stream.ToArray();
    }

    public static byte[] Bytes(Lens lens)
    {
        using var stream = new MemoryStream();
        LensDocument.Write(lens, stream);
        return stream.ToArray();
    }

    /// <summary>A project of elements alone, given as code, parent and kind.</summary>
    public static Project OfElements(params (string Code, string Parent, string Kind)[] elements)
    {
        var text = new TextProject();
        foreach (var (code, parent, kind) in elements)
        {
            text.Add(
                "elements",
                ("code", code),
                ("parent", parent),
                ("name", "Element " + code),
                ("kind", kind)
            );
        }

        return Answers.Import(text);
    }

    /// <summary>The demo and generated projects.</summary>
    public static void ForMany(Action<string, Project> check)
    {
        check("the demo", Demo);
        Parallel.For(
            0,
            Seeds,
            new ParallelOptions { MaxDegreeOfParallelism = 2 },
            seed => check($"seed {seed}", Generated[seed].Value)
        );
    }
}
