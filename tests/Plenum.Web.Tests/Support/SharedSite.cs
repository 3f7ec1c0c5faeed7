namespace Plenum.Web.Tests.Support;

/// <summary>One program for tests that do not change the project.</summary>
public sealed class SharedSite : IAsyncLifetime
{
    internal Site Site { get; private set; } = null!;

    public async ValueTask InitializeAsync() => Site = await Site.Open();

    public ValueTask DisposeAsync() => Site.DisposeAsync();
}
