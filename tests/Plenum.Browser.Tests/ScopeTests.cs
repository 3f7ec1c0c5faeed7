namespace Plenum.Browser.Tests;

/// <summary>The scope sheet by keyboard alone: from a pasted statement to parts that answer it.</summary>
public sealed class ScopeTests(Site site)
{
    private const string Statement = """
        1 Pumping station
        1.1 A hall with a roof and two pumps.
        1.2 Noise stays below 45 dB.
        2 Exclusions
        2.1 The river wall.
        """;

    [Fact]
    public async Task A_statement_is_pasted_traced_and_asked_about_without_a_pointer()
    {
        await using var reader = await Reader.At(site, "/p/scoping/scope");
        await reader.Press("p");
        await reader.Page.WaitForFunctionAsync("() => document.activeElement.id === 'paste-text'");
        await reader.Page.Keyboard.InsertTextAsync(Statement);
        await reader.By("#take-items", "Take 5 items").WaitForAsync();
        Assert.Equal("exclusion", await reader.By("[aria-label='Kind of 2.1']").InputValueAsync());
        await reader.By("#take-items").PressAsync("Enter");
        await reader.By(".item.picked", "Pumping station").WaitForAsync();

        // the first part is the whole of it
        await reader.Press("a");
        await reader.By("#part-name").WaitForAsync();
        await reader.By("#part-name").FocusAsync();
        await reader.Type("Pumping station");
        await reader.Press("Enter");
        await reader.By(".card", "answers all of it").WaitForAsync();

        // words are marked one after the other
        await reader.Press("j");
        await reader.By(".item.picked", "A hall").WaitForAsync();
        await reader.Press("a");
        await reader.By("#item-words").WaitForAsync();
        await reader.Page.WaitForFunctionAsync("() => document.activeElement.id === 'item-words'");
        await reader.Press("ArrowRight");
        await reader.Press("Shift+ArrowRight");
        await reader.By("#marked", "“A hall”").WaitForAsync();
        await reader.By("#part-name").FocusAsync();
        await reader.Type("Pump hall");
        await reader.Press("Enter");
        await reader.By(".card", "answers “A hall”").WaitForAsync();
        Assert.Contains(
            "one phrase only",
            await reader.Text(".item.picked .verdict"),
            StringComparison.Ordinal
        );

        // a phrase without a part stays open
        await reader.Press("t");
        await reader.Page.WaitForFunctionAsync("() => document.activeElement.id === 'item-words'");
        await reader.Press("End");
        await reader.Press("Shift+ArrowLeft");
        await reader.By("#marked", "two pumps").WaitForAsync();
        await reader.By("#want-phrase").PressAsync("Enter");
        await reader.By(".card.open", "two pumps").WaitForAsync();

        // noise: asked about, and found again as what is open
        await reader.Press("j");
        await reader.By(".item.picked", "Noise").WaitForAsync();
        await reader.Press("q");
        await reader.Page.WaitForFunctionAsync("() => document.activeElement.id === 'query-text'");
        await reader.Type("Where is it measured?");
        await reader.By("#query-it").PressAsync("Enter");
        await reader.By(".queries li", "Where is it measured?").WaitForAsync();

        // traced to an element that is found by its name
        await reader.Press("t");
        await reader.Page.WaitForFunctionAsync("() => document.activeElement.id === 'item-words'");
        await reader.By("#trace-element").FocusAsync();
        await reader.Type("pump hall");
        await reader.By("#trace-element-hits li", "Pump hall").WaitForAsync();
        await reader.Press("Enter");
        await reader.By("#trace-it:not([disabled])").PressAsync("Enter");
        await reader.By(".item.picked .verdict.covered").WaitForAsync();
        await reader.MapIsDrawn();

        await reader.Press("Control+z");
        await reader.By(".item.picked .verdict.none").WaitForAsync();
    }

    [Fact]
    public async Task A_broken_text_is_refused_with_its_lines_and_stays_in_the_field()
    {
        await using var reader = await Reader.At(site, "/p/scoping-badly/scope");
        await reader.Press("p");
        await reader.Page.WaitForFunctionAsync("() => document.activeElement.id === 'paste-text'");
        await reader.Page.Keyboard.InsertTextAsync("1 Works\n1.1 A gate\n1.1 A fence");
        await reader.By(".faults td", "1.1 is there already, on line 2.").WaitForAsync();
        Assert.True(await reader.By("#take-items").IsDisabledAsync());
        Assert.Contains(
            "A fence",
            await reader.By("#paste-text").InputValueAsync(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_statement_longer_than_one_message_is_taken_whole()
    {
        await using var reader = await Reader.At(site, "/p/scoping-long/scope");
        await reader.Press("p");
        await reader.Page.WaitForFunctionAsync("() => document.activeElement.id === 'paste-text'");
        var lines = Enumerable
            .Range(1, 1_200)
            .Select(item =>
                $"1.{item} The contractor delivers part {item} of the works, complete and tested."
            );
        await reader.By("#paste-text").FillAsync("1 Works\n" + string.Join('\n', lines));
        await reader.By("#take-items", "items").WaitForAsync();
        await reader.By("#take-items:not([disabled])").PressAsync("Enter");
        await reader.By(".item.picked", "Works").WaitForAsync();
        await reader
            .By("[data-item='1.1200']")
            .WaitForAsync(new() { State = Microsoft.Playwright.WaitForSelectorState.Attached });
    }

    [Fact]
    public async Task Keys_lead_from_item_to_item_and_to_what_is_open()
    {
        await using var reader = await Reader.At(site, "/p/plant/scope?item=4.4.1");
        await reader.By(".item.picked", "at 6.5 bar").WaitForAsync();
        await reader.Press("u");
        await reader.By(".item.picked", "an east and a west one").WaitForAsync();
        await reader.By(".links path.open").First.WaitForAsync();
        await reader.Press("u");
        await reader.By(".item.picked", "for two years").WaitForAsync();
        Assert.Equal(5, await reader.By(".links path").CountAsync());
        await reader.Press("k");
        await reader.By(".item.picked", "All brine").WaitForAsync();
        Assert.Contains(
            "asked for by 4.5.1",
            await reader.Text(".legend"),
            StringComparison.Ordinal
        );
    }
}
