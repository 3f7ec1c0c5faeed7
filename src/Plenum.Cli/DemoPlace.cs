using Plenum.Samples;
using Plenum.Workbench;

namespace Plenum.Cli;

/// <summary>
/// The invented plant as a project that is there to try things on. It is made once and stays; while another run holds
/// it, one is made that goes with this run.
/// </summary>
internal sealed class DemoPlace : IDisposable
{
    private const string Project = "kestrel-bay.plenum";
    private const string Tables = "kestrel-bay";
    private const string Cache = "-columns";

    private readonly string folder;
    private readonly FileStream? held;

    private DemoPlace(string folder, FileStream? held)
    {
        this.folder = folder;
        this.held = held;
    }

    /// <summary>The project's file.</summary>
    public string File => Path.Combine(folder, Project);

    /// <summary>The files that it was made from.</summary>
    public string Files => Path.Combine(folder, Tables);

    /// <summary>It goes with this run.</summary>
    public bool IsPassing => held is null;

    /// <param name="folder">Where it is kept; can be written.</param>
    /// <exception cref="IOException">It could not be made.</exception>
    /// <exception cref="Store.StoreException">It could not be made.</exception>
    public static DemoPlace Open(string folder, TimeProvider clock, CancellationToken ct)
    {
        Directory.CreateDirectory(folder);
        var place = Hold(folder) is { } held
            ? new DemoPlace(folder, held)
            : new DemoPlace(Directory.CreateTempSubdirectory("plenum-demo-").FullName, null);
        try
        {
            if (!System.IO.File.Exists(place.File))
            {
                place.Make(clock, ct);
            }

            return place;
        }
        catch
        {
            place.Dispose();
            throw;
        }
    }

    public void Dispose()
    {
        if (held is not null)
        {
            held.Dispose();
            return;
        }

        try
        {
            Directory.Delete(folder, recursive: true);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // it lies among what is temporary, and the system clears that
        }
    }

    /// <summary>Null if another run holds the folder.</summary>
    private static FileStream? Hold(string folder)
    {
        try
        {
            return new FileStream(
                Path.Combine(folder, ".in-use"),
                FileMode.OpenOrCreate,
                FileAccess.ReadWrite,
                FileShare.None
            );
        }
        catch (IOException)
        {
            return null;
        }
    }

    /// <summary>Under another name first: a project that is there is whole.</summary>
    private void Make(TimeProvider clock, CancellationToken ct)
    {
        DemoProject.Write(Files);
        var making = Path.Combine(folder, "making-" + Project);
        System.IO.File.Delete(making);
        OpenProject.Create(making, Environment.UserName, clock);
        using (var project = OpenProject.Open(making, clock, ct: ct))
        {
            var answer = project.Import(
                new ImportCommand(
                    [Files],
                    DryRun: false,
                    Replace: false,
                    Environment.UserName,
                    Reason: "The invented plant"
                ),
                ct: ct
            );
            if (answer.Errors.Any)
            {
                throw new InvalidOperationException(answer.Errors.Items[0].ToString());
            }
        }

        System.IO.File.Move(making, File);
        if (System.IO.File.Exists(making + Cache))
        {
            System.IO.File.Move(making + Cache, File + Cache, overwrite: true);
        }
    }
}
