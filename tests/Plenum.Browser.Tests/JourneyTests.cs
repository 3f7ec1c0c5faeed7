using Microsoft.Playwright;

namespace Plenum.Browser.Tests;

/// <summary>The whole way, as somebody goes it who has a folder of files and no mouse.</summary>
public sealed class JourneyTests(Site site)
{
    private const int MostTabs = 60;

    [Fact]
    public async Task From_files_to_the_ledger_row_of_a_package_by_keyboard_alone()
    {
        await using var reader = await Reader.At(site, "/");
        // listened for from the beginning: asking for it together with the key may come too late
        var chooser = new TaskCompletionSource<IFileChooser>();
        reader.Page.FileChooser += (_, opened) => chooser.TrySetResult(opened);
        await reader.Press("2");
        await reader.Type("journey");
        await reader.Press("Enter");
        await reader.Page.WaitForURLAsync("**/p/journey**");

        // an empty project says how to begin
        await reader.By("#way-files").WaitForAsync();
        await reader.Press("3");
        await reader.By("[data-takes-files]").WaitForAsync();
        await reader.Press("f");
        await (await chooser.Task).SetFilesAsync(
            Directory.GetFiles(Repository.Sample("kestrel-bay"), "*.csv")
        );

        // what would change is shown before it counts
        await reader.By("#preview").WaitForAsync(new() { Timeout = 60_000 });
        await reader.By("#preview-actuals", "12\u202F016").WaitForAsync();
        await TabTo(reader, "#reason");
        await reader.Type("First issue");
        await reader.Press("Enter");
        await reader.Page.WaitForURLAsync("**/p/journey/accounts**", new() { Timeout = 60_000 });

        // the account that hides most, its dearest package, and the rows that its cost comes from
        await reader.By("#accounts tbody tr[data-row]").First.WaitForAsync();
        await TabTo(reader, "#accounts [data-rowlink]");
        await reader.Press("ArrowDown");
        await reader.Press("ArrowUp");
        await FigureTo(reader, "ac");
        var account = await reader.Page.EvaluateAsync<string>("() => document.activeElement.title");
        await reader.Press("Enter");
        await reader.Page.WaitForURLAsync("**/accounts/packages?**");
        await reader.By("#packages tbody tr[data-row]").First.WaitForAsync();
        Assert.Equal(
            account,
            await reader.By("#packages tfoot [data-figure=ac]").GetAttributeAsync("title")
        );

        await TabTo(reader, "#packages [data-rowlink]");
        await FigureTo(reader, "ac");
        var package = await reader.Page.EvaluateAsync<string>("() => document.activeElement.title");
        await reader.Press("Enter");
        await reader.Page.WaitForURLAsync("**/accounts/records?**");
        await TabTo(reader, "#ledger-rows [data-rowlink]");
        await reader.Press("ArrowDown");
        Assert.Equal(package, "EUR " + (await reader.Text("#ledger-rows tfoot td")).Trim());
    }

    [Fact]
    public async Task Files_that_are_dropped_with_a_mistake_change_nothing_and_say_where_it_is()
    {
        await using var reader = await Reader.At(site, "/p/empty/import");
        await reader.By("[data-takes-files]").WaitForAsync();
        await Drop(reader, "units.csv", "unit,name,parent\nA,Works,B\n");
        await reader.By("#work", "units.csv").WaitForAsync();
        await reader.By("#work", "\"B\" does not exist").WaitForAsync();
        Assert.True(await reader.By("#accept").IsDisabledAsync());
    }

    /// <summary>What a browser does when somebody lets go of a file over the page.</summary>
    private static Task Drop(Reader reader, string name, string text) =>
        reader.Page.EvaluateAsync(
            """
            ([name, text]) => {
                const brought = new DataTransfer();
                brought.items.add(new File([text], name, { type: 'text/csv' }));
                const zone = document.querySelector('[data-drop]');
                for (const type of ['dragenter', 'dragover', 'drop']) {
                    zone.dispatchEvent(new DragEvent(type, { dataTransfer: brought, bubbles: true, cancelable: true }));
                }
            }
            """,
            new[] { name, text }
        );

    private static async Task TabTo(Reader reader, string selector)
    {
        for (var tab = 0; tab < MostTabs; tab++)
        {
            if (
                await reader.Page.EvaluateAsync<bool>(
                    "selector => document.activeElement?.matches(selector) ?? false",
                    selector
                )
            )
            {
                return;
            }

            await reader.Press("Tab");
        }

        Assert.Fail(
            $"{selector} is not reached by {MostTabs} times Tab; {await reader.Focused()} is."
        );
    }

    /// <summary>Moves along the row to a figure.</summary>
    private static async Task FigureTo(Reader reader, string figure)
    {
        for (var step = 0; step < 20; step++)
        {
            if (
                await reader.Page.EvaluateAsync<string?>(
                    "() => document.activeElement?.dataset.figure ?? null"
                ) == figure
            )
            {
                return;
            }

            await reader.Press("ArrowRight");
        }

        Assert.Fail($"{figure} is not reached.");
    }
}
