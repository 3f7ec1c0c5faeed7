using Plenum.Web.Host;

namespace Plenum.Browser.Tests;

/// <summary>The program stops answering while somebody is typing.</summary>
public sealed class ConnectionTests(Site site)
{
    [Fact]
    public async Task A_lost_connection_is_said_and_what_was_typed_is_there_when_the_program_is_back()
    {
        var folder = Directory.CreateTempSubdirectory("plenum-connection-").FullName;
        var file = Path.Combine(folder, "plant.plenum");
        File.Copy(site.Plant, file);
        var app = await Start(file, folder, 0);
        var address = PlenumWeb.Addresses(app)[0].TrimEnd('/');
        await using var reader = await Reader.Arrive(site.Browser, address);
        await reader.Go("/p/plant/accounts");
        reader.ExpectComplaints();

        await app.StopAsync(TestContext.Current.CancellationToken);
        await app.DisposeAsync();
        await reader
            .By("#connection-words", "not connected")
            .WaitForAsync(new() { Timeout = 60_000 });
        await reader.By("#find-rows").FillAsync("pumping");
        await reader.By(".connection.lost", "What you typed is kept").WaitForAsync();

        app = await Start(file, folder, new Uri(address).Port);
        await reader.By("#accounts-order", " of 97").WaitForAsync(new() { Timeout = 60_000 });
        Assert.Equal("pumping", await reader.By("#find-rows").InputValueAsync());
        Assert.Equal("", await reader.Text("#connection-words"));

        await app.StopAsync(TestContext.Current.CancellationToken);
        await app.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    private static async Task<WebApplication> Start(string file, string folder, int port)
    {
        var app = PlenumWeb.Build(new WebSettings([file], folder, port), TimeProvider.System);
        await app.StartAsync(TestContext.Current.CancellationToken);
        return app;
    }
}
