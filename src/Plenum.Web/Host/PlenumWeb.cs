using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Console;
using Plenum.Web.Projects;
using Plenum.Web.Shell;

namespace Plenum.Web.Host;

/// <summary>What the web program needs to know to start.</summary>
/// <param name="Projects">Project files to serve; more can be opened and made on the projects page.</param>
/// <param name="Folder">Where projects that are made on the page are kept.</param>
/// <param name="Port">The port; 0 for a free one.</param>
/// <param name="Address">The address; only the loopback address is served until accounts exist.</param>
/// <param name="Temporary">Where files that are only passing through lie; the system's own place by default.</param>
public sealed record WebSettings(
    IReadOnlyList<string> Projects,
    string Folder,
    int Port = 0,
    string Address = "127.0.0.1",
    string? Temporary = null
);

/// <summary>Builds the web program.</summary>
public static class PlenumWeb
{
    /// <summary>True for an address that can be served without sign-in: one of this machine's own.</summary>
    public static bool IsLoopback(string address) =>
        address == "localhost"
        || (IPAddress.TryParse(address, out var parsed) && IPAddress.IsLoopback(parsed));

    /// <exception cref="ArgumentException">The address is not a loopback address.</exception>
    public static WebApplication Build(WebSettings settings, TimeProvider clock)
    {
        if (!IsLoopback(settings.Address))
        {
            throw new ArgumentException(
                $"{settings.Address} is not served: until people can sign in, only the loopback address 127.0.0.1 is.",
                nameof(settings)
            );
        }

        var builder = WebApplication.CreateSlimBuilder(
            new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory }
        );
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = UploadLimits.MostBytes;
            kestrel.Listen(
                settings.Address == "localhost"
                    ? IPAddress.Loopback
                    : IPAddress.Parse(settings.Address),
                settings.Port
            );
        });
        builder.Logging.SetMinimumLevel(LogLevel.Warning);
        // that the program could not start is told by whoever starts it
        builder.Logging.AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.None);
        // its keys guard the forms of a page on this machine against other pages; that they lie in the person's own folder is no news
        builder.Logging.AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);
        builder.Logging.AddFilter(
            "Microsoft.AspNetCore.Server.Kestrel",
            level => level is LogLevel.Warning or LogLevel.Error
        );
        builder.Services.Configure<ConsoleLoggerOptions>(console =>
            console.LogToStandardErrorThreshold = LogLevel.Trace
        );
        builder.Services.AddSingleton(clock);
        builder.Services.AddSingleton(settings);
        builder.Services.AddSingleton<ProjectShelf>();
        builder.Services.AddSingleton<TemporaryRoom>();
        builder.Services.AddSingleton<ImportDesk>();
        builder.Services.AddSingleton<ExportDesk>();
        builder.Services.AddScoped<Sheet>();
        builder.Services.AddScoped<Editing>();
        builder.Services.AddScoped<Breakdown.OpenBranches>();
        builder.Services.AddRazorComponents().AddInteractiveServerComponents();
        builder.Services.AddAntiforgery();
        // keys live as long as the program: nothing that they protect outlives it
        builder.Services.AddDataProtection().UseEphemeralDataProtectionProvider();

        var app = builder.Build();
        var shelf = app.Services.GetRequiredService<ProjectShelf>();
        foreach (var project in settings.Projects)
        {
            shelf.Add(project);
        }

        // what an earlier run has left is gone before the first page
        app.Services.GetRequiredService<TemporaryRoom>();

        app.UseMiddleware<OnlyThisHost>();
        app.UseMiddleware<SecurityHeaders>();
        app.UseAntiforgery();
        app.MapStaticAssets();
        ProjectDocuments.Map(app);
        ImportEndpoints.Map(app);
        ExportEndpoints.Map(app);
        app.MapRazorComponents<App>()
            .AddInteractiveServerRenderMode(mode =>
                // one policy says it all, see SecurityHeaders
                mode.ContentSecurityFrameAncestorsPolicy = null
            );
        return app;
    }

    /// <summary>The addresses at which a started program answers.</summary>
    public static IReadOnlyList<string> Addresses(WebApplication app) =>
        [
            .. app
                .Services.GetRequiredService<IServer>()
                .Features.Get<IServerAddressesFeature>()!
                .Addresses,
        ];
}
