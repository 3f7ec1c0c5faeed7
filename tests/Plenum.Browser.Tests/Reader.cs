using Microsoft.Playwright;

namespace Plenum.Browser.Tests;

/// <summary>
/// A person at a browser of their own. Whatever the page complains about (a script fault, a file that is refused or
/// missing) is kept, and fails the test when the person leaves.
/// </summary>
public sealed class Reader : IAsyncDisposable
{
    private readonly List<string> complaints = [];
    private readonly IBrowserContext context;
    private bool mayComplain;

    private Reader(IBrowserContext context, IPage page, string address)
    {
        this.context = context;
        Page = page;
        Address = address;
        page.Console += (_, message) =>
        {
            if (message.Type == "error")
            {
                complaints.Add(message.Text);
            }
        };
        page.PageError += (_, fault) => complaints.Add(fault);
    }

    public IPage Page { get; }

    public string Address { get; }

    public static async Task<Reader> At(
        Site site,
        string path,
        string theme = "light",
        int width = 1600,
        int height = 1000,
        float scale = 1,
        string? person = null
    )
    {
        var reader = await Arrive(site.Browser, site.Address, theme, width, height, scale);
        if (person is not null)
        {
            await reader.Page.AddInitScriptAsync(
                $"localStorage.setItem('plenum.person', '{person}')"
            );
        }

        await reader.Go(path);
        return reader;
    }

    public static async Task<Reader> Arrive(
        IBrowser browser,
        string address,
        string theme = "light",
        int width = 1600,
        int height = 1000,
        float scale = 1
    )
    {
        var window = await browser.NewContextAsync(
            new BrowserNewContextOptions
            {
                ViewportSize = new ViewportSize { Width = width, Height = height },
                DeviceScaleFactor = scale,
                Permissions = ["clipboard-read", "clipboard-write"],
                ReducedMotion = ReducedMotion.Reduce,
            }
        );
        await window.AddInitScriptAsync($"localStorage.setItem('plenum.theme', '{theme}')");
        var page = await window.NewPageAsync();
        page.SetDefaultTimeout(20_000);
        return new Reader(window, page, address);
    }

    /// <summary>Goes to a sheet and waits until its main reading stands there and the map is drawn.</summary>
    public async Task Go(string path)
    {
        await Page.GotoAsync(Address + path);
        await Page.Locator(
                ".maphost[data-shows], main.plain:not(.opening), #projects, #import-reading, #statement-title"
            )
            .First.WaitForAsync();
    }

    public Task MapIsDrawn() => Page.Locator(".maphost[data-shows]").WaitForAsync();

    public Task Press(string keys) => Page.Keyboard.PressAsync(keys);

    public Task Type(string text) => Page.Keyboard.TypeAsync(text);

    /// <summary>Waits until a field has the keys.</summary>
    public Task Focus(string id) =>
        Page.WaitForFunctionAsync("id => document.activeElement?.id === id", id);

    public ILocator By(string selector) => Page.Locator(selector);

    /// <summary>The first element of a kind whose text holds some words.</summary>
    public ILocator By(string selector, string words) =>
        Page.Locator(selector, new PageLocatorOptions { HasText = words }).First;

    public Task<string> Text(string selector) => Page.Locator(selector).InnerTextAsync();

    /// <summary>What the person's keys act on now.</summary>
    public Task<string> Focused() =>
        Page.EvaluateAsync<string>(
            "() => (document.activeElement?.id || document.activeElement?.tagName) + '|' + (document.activeElement?.innerText ?? '')"
        );

    /// <summary>Keeps a picture of the window among what the tests leave behind.</summary>
    public async Task Picture(string name)
    {
        var folder = Path.Combine(AppContext.BaseDirectory, "pictures");
        await Page.ScreenshotAsync(
            new PageScreenshotOptions { Path = Path.Combine(folder, name + ".png") }
        );
    }

    /// <summary>From here on the page may complain, for example because the program is stopped.</summary>
    public void ExpectComplaints() => mayComplain = true;

    public async ValueTask DisposeAsync()
    {
        await context.DisposeAsync();
        if (!mayComplain)
        {
            Assert.Empty(complaints);
        }
    }
}
