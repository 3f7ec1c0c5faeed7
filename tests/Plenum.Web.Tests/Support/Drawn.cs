using System.Net;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.JSInterop;
using Plenum.Web.Shell;

namespace Plenum.Web.Tests.Support;

/// <summary>A part of a page drawn without a browser, at an address, once it has read what it shows.</summary>
internal static class Drawn
{
    public static async Task<string> At<TComponent>(
        Site site,
        string address,
        Dictionary<string, object?>? parameters = null
    )
        where TComponent : IComponent
    {
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddSingleton(site.Shelf);
        services.AddSingleton(TimeProvider.System);
        services.AddSingleton<NavigationManager>(new Address("http://localhost" + address));
        services.AddSingleton<IJSRuntime, NoScript>();
        services.AddScoped<Sheet>();
        services.AddScoped<Editing>();
        services.AddScoped<Web.Breakdown.OpenBranches>();
        await using var provider = services.BuildServiceProvider();
        await using var renderer = new HtmlRenderer(provider, NullLoggerFactory.Instance);
        return await renderer.Dispatcher.InvokeAsync(async () =>
        {
            var drawn = await renderer.RenderComponentAsync<TComponent>(
                ParameterView.FromDictionary(parameters ?? [])
            );
            return WebUtility.HtmlDecode(drawn.ToHtmlString());
        });
    }

    private sealed class Address : NavigationManager
    {
        public Address(string uri) => Initialize("http://localhost/", uri);
    }

    private sealed class NoScript : IJSRuntime
    {
        public ValueTask<TValue> InvokeAsync<TValue>(string identifier, object?[]? args) =>
            throw new InvalidOperationException("Nothing is drawn that could be scripted.");

        public ValueTask<TValue> InvokeAsync<TValue>(
            string identifier,
            CancellationToken cancellationToken,
            object?[]? args
        ) => InvokeAsync<TValue>(identifier, args);
    }
}
