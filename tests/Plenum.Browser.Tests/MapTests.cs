namespace Plenum.Browser.Tests;

/// <summary>The map by keyboard, and the page below that follows it.</summary>
public sealed class MapTests(Site site)
{
    [Fact]
    public async Task The_keys_lead_through_the_breakdown_and_the_sheet_follows()
    {
        await using var reader = await Reader.At(site, "/p/plant/accounts");
        await reader.Press("F6");
        await reader.Press("ArrowDown");
        await PathEnds(reader, "Kestrel Bay");
        await reader.Press("ArrowDown");
        await PathEnds(reader, "01 Intake");
        await reader.Press("ArrowRight");
        await PathEnds(reader, "02 Pre-treatment");
        await reader.Press("ArrowDown");
        await PathEnds(reader, "02.1");
        await reader.By("#inside-title", "02.1").WaitForAsync();
        await reader.Press("ArrowUp");
        await PathEnds(reader, "02 Pre-treatment");
        await reader.Press("End");
        await PathEnds(reader, "11 ");
        await reader.Press("Home");
        await PathEnds(reader, "01 Intake");
    }

    [Fact]
    public async Task The_tree_for_screen_readers_says_name_share_and_lens_value()
    {
        await using var reader = await Reader.At(site, "/p/plant/accounts?focus=03.2");
        var said = await reader
            .By("#map [role=treeitem][aria-selected=true]")
            .First.TextContentAsync();
        Assert.Contains("RO train B", said, StringComparison.Ordinal);
        Assert.Contains("%", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task G_goes_to_the_next_gap()
    {
        await using var reader = await Reader.At(site, "/p/plant/accounts");
        await reader.Press("F6");
        await reader.Press("g");
        await PathEnds(reader, "03.4");
    }

    [Fact]
    public async Task M_changes_the_width_and_the_choice_above_shows_it()
    {
        await using var reader = await Reader.At(site, "/p/plant/accounts");
        await reader.Press("F6");
        await reader.Press("m");
        await reader.By("input[name=measure][value=hours]:checked").WaitForAsync();
        await reader.Press("m");
        await reader.By("input[name=measure][value=count]:checked").WaitForAsync();
    }

    [Fact]
    public async Task Each_chapter_has_its_own_lens_with_its_own_legend()
    {
        await using var reader = await Reader.At(site, "/p/plant/accounts");
        var accounts = await reader.Text(".legend");
        await reader.Press("Alt+3");
        await reader.By(".lensline", "People lens").WaitForAsync();
        await reader.Page.WaitForFunctionAsync(
            "() => document.querySelector('.maphost').dataset.shows.includes('people')"
        );
        Assert.NotEqual(accounts, await reader.Text(".legend"));
        await reader.Press("Alt+2");
        await reader.By(".lensline", "Breakdown lens").WaitForAsync();
    }

    private static Task PathEnds(Reader reader, string words) =>
        reader.By(".path [aria-current]", words).WaitForAsync();
}
