using Microsoft.Playwright;
using Plenum.Core;
using Plenum.Web.Host;
using Plenum.Workbench;

[assembly: AssemblyFixture(typeof(Plenum.Browser.Tests.Site))]
// one browser at a time: several at once slow each other down until they look broken
[assembly: Xunit.v3.Parallelization(Mode = Xunit.Sdk.ParallelMode.None)]

namespace Plenum.Browser.Tests;

/// <summary>
/// The program on a free port with the invented plant, copies of it in which findings are accepted and parts are written,
/// and empty projects; and a Chromium to look at them.
/// </summary>
public sealed class Site : IAsyncLifetime
{
    private WebApplication? app;
    private IPlaywright? playwright;
    private IBrowser? browser;

    /// <summary>A folder of the tests' own.</summary>
    public string Folder { get; } = Directory.CreateTempSubdirectory("plenum-browser-").FullName;

    /// <summary>Where the program answers, without a slash at the end.</summary>
    public string Address { get; private set; } = "";

    /// <summary>The file of the invented plant; tests only read it.</summary>
    public string Plant => Path.Combine(Folder, "plant.plenum");

    public IBrowser Browser => browser!;

    /// <summary>How many times longer than a person would wait; more where the machine is shared.</summary>
    public int Patience =>
        int.Parse(
            Environment.GetEnvironmentVariable("PLENUM_PATIENCE") ?? "5",
            System.Globalization.CultureInfo.InvariantCulture
        );

    /// <summary>Makes a project of its own with a root called Plant, and opens it to readers.</summary>
    /// <returns>Its name in addresses.</returns>
    public Task<string> Begin(string name) =>
        Task.Run(() =>
        {
            var path = Path.Combine(Folder, $"{name}.plenum");
            OpenProject.Create(path, "ada", TimeProvider.System);
            using (var project = OpenProject.Open(path, TimeProvider.System))
            {
                project.Edit(
                    new Workbench.Commands.Breakdown.BeginProjectCommand(
                        "Plant",
                        "P",
                        "EUR",
                        "2026-01-05",
                        "00.0.00"
                    ),
                    "ada"
                );
            }

            return app!.Services.GetRequiredService<ProjectShelf>().Add(path).Key;
        });

    /// <summary>Makes a project without a single row, and opens it to readers.</summary>
    /// <returns>Its name in addresses.</returns>
    public string BeginEmpty(string name) =>
        app!.Services.GetRequiredService<ProjectShelf>().Add(Empty(name)).Key;

    /// <summary>What a project holds now.</summary>
    public Project Now(string name) =>
        app!.Services.GetRequiredService<ProjectShelf>().Find(name)!.Current!;

    /// <summary>Makes a copy of the invented plant that a test may write to, and opens it to readers.</summary>
    /// <returns>Its name in addresses.</returns>
    public Task<string> CopyOfPlant(string name) =>
        Task.Run(() =>
        {
            var path = Path.Combine(Folder, $"{name}.plenum");
            File.Copy(Plant, path);
            return app!.Services.GetRequiredService<ProjectShelf>().Add(path).Key;
        });

    public async ValueTask InitializeAsync()
    {
        OpenProject.Create(Plant, "ada", TimeProvider.System);
        using (var plant = OpenProject.Open(Plant, TimeProvider.System))
        {
            var answer = plant.Import(
                new ImportCommand([Repository.Sample("kestrel-bay")], false, false, "ada")
            );
            Assert.False(answer.Errors.Any);
        }

        var accepting = Path.Combine(Folder, "accepting.plenum");
        File.Copy(Plant, accepting);
        var parts = Path.Combine(Folder, "parts.plenum");
        File.Copy(Plant, parts);
        var empty = Path.Combine(Folder, "empty.plenum");
        OpenProject.Create(empty, "ada", TimeProvider.System);
        app = PlenumWeb.Build(
            new WebSettings(
                [
                    Plant,
                    accepting,
                    parts,
                    empty,
                    Empty("scoping"),
                    Empty("scoping-badly"),
                    Empty("scoping-long"),
                ],
                Folder
            ),
            TimeProvider.System
        );
        await app.StartAsync();
        Address = PlenumWeb.Addresses(app)[0].TrimEnd('/');
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(
            new BrowserTypeLaunchOptions
            {
                ExecutablePath = Chromium(),
                Args =
                [
                    "--no-sandbox",
                    "--disable-gpu",
                    "--disable-dev-shm-usage",
                    "--disable-background-networking",
                    "--disable-component-update",
                    "--no-first-run",
                ],
            }
        );
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.DisposeAsync();
        }

        playwright?.Dispose();
        if (app is not null)
        {
            await app.StopAsync();
            await app.DisposeAsync();
        }

        Directory.Delete(Folder, recursive: true);
    }

    /// <summary>A file without a row, for a test that writes to it.</summary>
    private string Empty(string name)
    {
        var path = Path.Combine(Folder, name + ".plenum");
        OpenProject.Create(path, "ada", TimeProvider.System);
        return path;
    }

    /// <summary>The browser that is installed: the tests need one, and say so where it is not.</summary>
    private static string Chromium()
    {
        string[] places =
        [
            Environment.GetEnvironmentVariable("PLENUM_CHROMIUM") ?? "",
            "/usr/bin/chromium",
            "/usr/bin/chromium-browser",
            "/usr/bin/google-chrome",
        ];
        return places.FirstOrDefault(File.Exists)
            ?? throw new InvalidOperationException(
                "No Chromium is installed. test.sh installs it from the system's packages; or name one in PLENUM_CHROMIUM."
            );
    }
}
