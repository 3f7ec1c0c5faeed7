using System.Text;
using System.Text.Json;
using Plenum.Cli;

namespace Plenum.Web.Tests.Support;

/// <summary>A folder of its own, which is gone afterwards, with project files made by the command line.</summary>
internal sealed class Desk : IDisposable
{
    /// <summary>A small invented project: a root with two packages, a month and a budget.</summary>
    public static readonly (string Name, string Text)[] Shed =
    [
        ("project.csv", "key,value\ncode,SHED\nname,Store shed\ncurrency,EUR\nstart,2026-01-01\n"),
        ("periods.csv", "period,end\n2026-01,2026-01-31\n2026-02,2026-02-28\n"),
        ("people.csv", "person,name\na.ode,Ada Ode\nb.lund,Bo Lund\n"),
        (
            "elements.csv",
            "code,name,parent,split,person\nS,Store shed,,part,a.ode\nS.1,Slab,S,,a.ode\nS.2,Frame,S,,b.lund\n"
        ),
    ];

    public string Folder { get; } = Directory.CreateTempSubdirectory("plenum-desk-").FullName;

    public string this[string name] => Path.Combine(Folder, name);

    public string Write(string name, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(this[name])!);
        File.WriteAllText(this[name], text);
        return this[name];
    }

    /// <summary>A project file with the shed in it.</summary>
    public async Task<string> MakeShed(string name = "shed.plenum")
    {
        await Do("new", this[name]);
        foreach (var (file, text) in Shed)
        {
            Write("shed/" + file, text);
        }

        await Do("import", this[name], this["shed"]);
        return this[name];
    }

    /// <summary>Runs a command that must be done.</summary>
    public static async Task Do(params string[] args)
    {
        var (status, _, error) = await Run(args);
        Assert.True(status == ExitCode.Done, error);
    }

    /// <summary>The one document that a command with --json answers with.</summary>
    public static async Task<JsonElement> Ask(params string[] args)
    {
        var (_, output, _) = await Run([.. args, "--json"]);
        using var document = JsonDocument.Parse(output);
        return document.RootElement.Clone();
    }

    public static Stream Bytes(string text) => new MemoryStream(Encoding.UTF8.GetBytes(text));

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    private static async Task<(int Status, string Out, string Error)> Run(string[] args)
    {
        await using var output = new StringWriter();
        await using var error = new StringWriter();
        var status = await Program.RunAsync(
            args,
            new CliContext(output, error, TimeProvider.System),
            TestContext.Current.CancellationToken
        );
        return (status, output.ToString(), error.ToString());
    }
}
