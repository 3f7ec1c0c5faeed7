using Plenum.Web.Host;
using Plenum.Web.Projects;

namespace Plenum.Web.Tests.Support;

/// <summary>The web program on a free port, asked without a browser.</summary>
internal sealed class Site : IAsyncDisposable
{
    private readonly WebApplication app;
    private readonly HttpClientHandler handler = new() { UseCookies = true };

    private Site(WebApplication app, Desk desk)
    {
        this.app = app;
        Desk = desk;
        Http = new HttpClient(handler) { BaseAddress = new Uri(PlenumWeb.Addresses(app)[0]) };
    }

    public Desk Desk { get; }

    public HttpClient Http { get; }

    public ProjectShelf Shelf => app.Services.GetRequiredService<ProjectShelf>();

    public ImportDesk Imports => app.Services.GetRequiredService<ImportDesk>();

    public ExportDesk Exports => app.Services.GetRequiredService<ExportDesk>();

    /// <summary>Where files lie that are only passing through.</summary>
    public string Passing => Desk["passing"];

    /// <summary>Serves the shed.</summary>
    public static async Task<Site> Open()
    {
        var desk = new Desk();
        var project = await desk.MakeShed();
        Directory.CreateDirectory(desk["passing"]);
        var built = PlenumWeb.Build(
            new WebSettings([project], desk.Folder, Temporary: desk["passing"]),
            TimeProvider.System
        );
        await built.StartAsync(TestContext.Current.CancellationToken);
        return new Site(built, desk);
    }

    /// <summary>Files of an import of the shed that are there already.</summary>
    public async Task<BroughtFiles> Bring(params (string Name, string Text)[] files)
    {
        var brought = Imports.Begin("shed");
        foreach (var (name, text) in files)
        {
            await brought.Take(name, 1, Desk.Bytes(text), TestContext.Current.CancellationToken);
        }

        return brought;
    }

    public ImportSession Session(BroughtFiles files) =>
        new(Shelf.Find("shed")!, files, "b.lund", TimeProvider.System);

    /// <summary>The token that the page sends along.</summary>
    public Task<string> Token() =>
        Http.GetStringAsync(ImportEndpoints.TokenAddress, TestContext.Current.CancellationToken);

    /// <summary>Brings a file as the page does.</summary>
    public async Task<HttpResponseMessage> Put(
        BroughtFiles to,
        string name,
        HttpContent content,
        string? token
    )
    {
        using var request = new HttpRequestMessage(
            HttpMethod.Put,
            $"{ImportEndpoints.FilesAddress(to.ProjectKey, to.Id)}?name={Uri.EscapeDataString(name)}&batch=1"
        )
        {
            Content = content,
        };
        if (token is not null)
        {
            request.Headers.Add(ImportEndpoints.TokenHeader, token);
        }

        return await Http.SendAsync(request, TestContext.Current.CancellationToken);
    }

    public async ValueTask DisposeAsync()
    {
        Http.Dispose();
        handler.Dispose();
        await app.DisposeAsync();
        Desk.Dispose();
    }
}
