using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Plenum.Browser.Tests;

/// <summary>The people of the invented plant, by keyboard. How a person works is common practice; no source.</summary>
public sealed class PeopleTests(Site site)
{
    private static readonly Regex PageOfPdf = new(
        "/Type */Page\\b",
        RegexOptions.None,
        TimeSpan.FromSeconds(5)
    );

    [Fact]
    public async Task A_manager_is_named_at_a_crossing_and_taken_back_without_a_pointer()
    {
        await using var reader = await At("naming", "people");
        await Crossing(reader, "03.2-MEC").FocusAsync();
        await reader.Press("Enter");
        await reader.By("#manager").WaitForAsync();
        await Taken(reader, "manager");
        await reader.Type("harrow");
        await reader.By("#manager-hits li[aria-selected=true]", "Jonas Harrow").WaitForAsync();
        await reader.Press("Enter");
        await reader.By("[data-account='03.2-MEC']", "J. Harrow").WaitForAsync();
        await HasKeys(reader, "03.2-MEC");
        await reader.Press("Control+z");
        await reader.By("[data-account='03.2-MEC']", "R. Velde").WaitForAsync();
    }

    [Fact]
    public async Task An_account_is_placed_at_an_empty_crossing_and_taken_away_again()
    {
        await using var reader = await At("placing", "people");
        await Crossing(reader, "01.4-PIP").FocusAsync();
        await reader.Press("ArrowLeft");
        await reader.Page.WaitForFunctionAsync(
            "() => document.activeElement?.classList.contains('empty')"
        );
        await reader.Press("Enter");
        await Taken(reader, "manager");
        await reader.Type("a.brandt");
        await reader.Press("Enter");
        await Crossing(reader, "01.4-MEC").WaitForAsync();
        await HasKeys(reader, "01.4-MEC");
        await reader.Press("Delete");
        await Taken(reader, "do-remove");
        await reader.Press("Enter");
        await reader.Page.WaitForFunctionAsync(
            "() => document.querySelector(\"[data-account='01.4-MEC']\") === null"
        );
    }

    [Fact]
    public async Task An_account_is_merged_into_the_one_that_was_picked_before()
    {
        await using var reader = await At("merging", "people");
        await Crossing(reader, "01.4-PIP").FocusAsync();
        await reader.Press(" ");
        await reader.By(".crossing.marked[data-account='01.4-PIP']").WaitForAsync();
        await reader.Press("ArrowRight");
        await HasKeys(reader, "01.4-PRO");
        await reader.Press("m");
        await Taken(reader, "do-merge");
        await reader.Press("Enter");
        await reader.By("#edit-trouble", "Merge 01.4-PIP into 01.4-PRO instead.").WaitForAsync();

        await reader.Press("Escape");
        await HasKeys(reader, "01.4-PRO");
        await reader.Press(" ");
        await reader.By(".crossing.marked[data-account='01.4-PRO']").WaitForAsync();
        await reader.Press("ArrowLeft");
        await HasKeys(reader, "01.4-PIP");
        await reader.Press("m");
        await Taken(reader, "do-merge");
        await reader.Press("Enter");
        await reader.Page.WaitForFunctionAsync(
            "() => document.querySelector(\"[data-account='01.4-PIP']\") === null"
        );
        Assert.Contains(
            "96 control accounts",
            await reader.Text("h1.reading"),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task What_would_put_an_account_above_another_is_refused_and_says_what_to_do()
    {
        await using var reader = await At("nesting", "people");
        await Crossing(reader, "03.2-MEC").FocusAsync();
        await reader.Press(" ");
        await reader.By(".crossing.marked").WaitForAsync();
        await Crossing(reader, "03.3-MEC").FocusAsync();
        await reader.Press("m");
        await Taken(reader, "do-merge");
        await reader.Press("Enter");
        await reader
            .By("#edit-trouble", "an account contains no other account. Merge the two")
            .WaitForAsync();
        await reader.By("#do-merge").PressAsync("Escape");
        await HasKeys(reader, "03.3-MEC");
    }

    [Fact]
    public async Task All_accounts_of_a_manager_are_handed_over_at_once()
    {
        await using var reader = await At("handing", "people");
        await Crossing(reader, "03.2-MEC").FocusAsync();
        await reader.Press("h");
        await reader.By("#crossing-form input[name=what]").Nth(1).CheckAsync();
        await reader.By("#manager").FocusAsync();
        await reader.Type("brandt");
        await reader.Press("Enter");
        await reader.By("[data-account='03.3-MEC']", "A. Brandt").WaitForAsync();
        Assert.Contains("14 managers", await reader.Text("h1.reading"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Packages_in_no_account_are_put_into_one_and_the_list_is_empty_then()
    {
        await using var reader = await At("rest", "people?show=packages&of=none");
        await reader.By("#handed tbody tr[data-row]").First.WaitForAsync();
        await reader.By("#mark-all").PressAsync("Enter");
        await reader.By("#into-account").FillAsync("nothing");
        await reader.Press("Enter");
        await reader.By("#edit-trouble", "No account has the code “nothing”").WaitForAsync();
        await reader.By("#into-account").FillAsync("03.2-MEC");
        await reader.Press("Enter");
        await reader.By("#edit-trouble", "03.2-MEC does not stand above").WaitForAsync();
        await reader.By("#into-account").FillAsync("06.1-MEC");
        await reader.Press("Enter");
        await reader.By(".none", "Every package is in an account.").WaitForAsync();
    }

    [Fact]
    public async Task A_package_is_offered_accepted_and_for_a_reason_taken_back_by_keyboard()
    {
        await using var reader = await At("delegating", "people?show=packages&of=03.2-MEC");
        var row = reader.By("#handed tbody tr", "03.2.01.9");
        await row.Locator("input").FocusAsync();
        await reader.Press(" ");
        await reader.By(".deeds [role=status]", "1 package marked").WaitForAsync();
        await reader.Press("o");
        await row.Locator("td", new LocatorLocatorOptions { HasText = "offered" }).WaitForAsync();
        await reader.Press("n");
        await row.Locator("td", new LocatorLocatorOptions { HasText = "accepted" }).WaitForAsync();
        await reader.Press("b");
        await Taken(reader, "back-reason");
        await reader.Type("away until May");
        await reader.Press("Enter");
        await row.Locator("td", new LocatorLocatorOptions { HasText = "offered" }).WaitForAsync();
    }

    [Fact]
    public async Task Units_and_people_are_written_in_their_place_and_bad_input_is_told()
    {
        await using var reader = await At("organising", "people?show=organisation&unit=MAR");
        await reader.By("#new-person").FillAsync("Nils Avery");
        await reader.Press("Enter");
        var unit = reader.By("[aria-label='Unit of n.avery']");
        await unit.FillAsync("XXX");
        await reader.Press("Tab");
        await reader
            .By("#edit-trouble", "\"XXX\" found, the code of an organisation unit expected")
            .WaitForAsync();
        await unit.FillAsync("MAR");
        await reader.Press("Tab");
        await reader.By("[aria-label='Remove n.avery']").PressAsync("Enter");
        await reader.Page.WaitForFunctionAsync(
            "() => document.querySelector(\"[aria-label='Remove n.avery']\") === null"
        );
        await reader.By("[aria-label='Remove e.sorley']").PressAsync("Enter");
        await reader.By("#edit-trouble", "Elspeth Sorley cannot be removed, being").WaitForAsync();
        await reader.By("#new-unit").FillAsync("  ");
        await reader.By("#add-unit").PressAsync("Enter");
        await reader.By("#edit-trouble", "The unit has no name.").WaitForAsync();
    }

    [Fact]
    public async Task A_project_without_an_organisation_gets_its_units_and_people_here()
    {
        var project = await site.Begin("unstaffed");
        await using var reader = await Reader.At(site, $"/p/{project}/people");
        await reader.By(".none", "There is no organisation unit yet").WaitForAsync();
        await reader.By(".places a", "Units and people").PressAsync("Enter");
        await reader.By("#new-unit").FillAsync("Works");
        await reader.Press("Enter");
        await reader.By("#units tbody tr", "WOR").WaitForAsync();
        await reader.By("#new-person").FillAsync("Ann Dorn");
        await reader.Press("Enter");
        await reader.By("#people tbody tr", "a.dorn").WaitForAsync();
    }

    [Fact]
    public async Task A_hand_over_sheet_is_printed_on_A4_without_being_cut_off()
    {
        await using var reader = await Reader.At(
            site,
            "/p/plant/people/sheet?of=03.2.01.9",
            width: 1280
        );
        await reader.By(".packagesheet").WaitForAsync();
        foreach (
            var part in (string[])
                ["Hazards: pressure, energising", "permit system", "Hands over", "Waits for"]
        )
        {
            Assert.Contains(part, await reader.Text(".packagesheet"), StringComparison.Ordinal);
        }

        await reader.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        // A4 less its margins, at 96 dots to the inch
        await reader.Page.SetViewportSizeAsync((210 - 28) * 96 / 25, 900);
        Assert.Equal(
            0,
            await reader.Page.EvaluateAsync<int>(
                "() => [...document.querySelectorAll('.handover *')].filter(e => e.getBoundingClientRect().right > innerWidth + 1 || e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).overflow !== 'visible').length"
            )
        );
        Assert.False(await reader.By("#map").IsVisibleAsync());
        var pdf = await reader.Page.PdfAsync(new PagePdfOptions { PreferCSSPageSize = true });
        var text = System.Text.Encoding.Latin1.GetString(pdf);
        Assert.Matches("/MediaBox *\\[ *0 +0 +59[45][.0-9]* +84[12]", text);
        Assert.Single(PageOfPdf.Matches(text));
    }

    [Fact]
    public async Task The_matrix_fits_a_screen_of_1280_pixels()
    {
        await using var reader = await Reader.At(site, "/p/plant/people", width: 1280, height: 800);
        await Crossing(reader, "01.1-MAR").WaitForAsync();
        Assert.Equal(
            0,
            await reader.Page.EvaluateAsync<int>(
                "() => { const box = document.querySelector('.matrixpart .tablebox'); return box.scrollWidth - box.clientWidth; }"
            )
        );
    }

    private async Task<Reader> At(string name, string sheet)
    {
        var project = await site.CopyOfPlant(name);
        return await Reader.At(site, $"/p/{project}/{sheet}");
    }

    private static ILocator Crossing(Reader reader, string account) =>
        reader.By($"[data-account='{account}']");

    private static Task HasKeys(Reader reader, string account) =>
        reader.Page.WaitForFunctionAsync(
            "account => document.activeElement?.dataset.account === account",
            account
        );

    private static Task Taken(Reader reader, string id) =>
        reader.Page.WaitForFunctionAsync("id => document.activeElement?.id === id", id);
}
