using Microsoft.Playwright;

namespace Plenum.Browser.Tests;

/// <summary>What every sheet has: status date, the field to go to something, keys, theme, width.</summary>
public sealed class SheetTests(Site site)
{
    [Fact]
    public async Task The_status_date_goes_back_and_forth_and_the_figures_with_it()
    {
        await using var reader = await Reader.At(site, "/p/plant/accounts");
        var now = await reader.Text("#reading");
        Assert.Contains("earned 283.7 of the 298.9 planned", now, StringComparison.Ordinal);

        await reader.By("[aria-label='One period back']").ClickAsync();
        await reader.Page.WaitForFunctionAsync(
            "before => document.querySelector('#reading').innerText !== before",
            now
        );
        var before = await reader.Text("#reading");
        Assert.Contains("at=2027-", reader.Page.Url, StringComparison.Ordinal);

        await reader.By("[aria-label='One period on']").ClickAsync();
        await reader.Page.WaitForFunctionAsync(
            "before => document.querySelector('#reading').innerText !== before",
            before
        );
        Assert.Equal(now, await reader.Text("#reading"));
        Assert.DoesNotContain("at=", reader.Page.Url, StringComparison.Ordinal);

        await reader.By("#status-date").SelectOptionAsync(new SelectOptionValue { Index = 0 });
        await reader.Page.WaitForFunctionAsync(
            "before => document.querySelector('#reading').innerText !== before",
            now
        );
        await reader.MapIsDrawn();
    }

    [Fact]
    public async Task A_link_that_is_copied_leads_to_the_same_sheet_at_the_same_date()
    {
        await using var first = await Reader.At(site, "/p/plant/accounts");
        await first.By("[aria-label='One period back']").ClickAsync();
        await first.Page.WaitForURLAsync("**at=2027-**");
        await first.By("#accounts a[data-rowlink]", "08.3-ELE").ClickAsync();
        await first.By("#inside-title", "08.3-ELE").WaitForAsync();
        var address = new Uri(first.Page.Url);

        await using var second = await Reader.At(site, address.PathAndQuery);
        await second.By("#inside-title", "08.3-ELE").WaitForAsync();
        Assert.Equal(await first.Text("#reading"), await second.Text("#reading"));
    }

    [Fact]
    public async Task Going_to_a_code_a_name_or_a_person_takes_a_few_letters_and_enter()
    {
        await using var reader = await Reader.At(site, "/p/plant/accounts");
        await reader.Press("/");
        await reader.Type("03.2");
        await reader.By("#go-to-hits li", "RO train B").WaitForAsync();
        await reader.Press("Enter");
        await reader.By(".path [aria-current]", "03.2 RO train B").WaitForAsync();

        await reader.Press("Escape");
        await reader.By("#reading").ClickAsync();
        await reader.Press("/");
        await reader.Type("diffuser");
        await reader.By("#go-to-hits li", "Diffuser").WaitForAsync();
        await reader.Press("Enter");
        await reader.By(".path [aria-current]", "iffuser").WaitForAsync();

        await reader.By("#reading").ClickAsync();
        await reader.Press("/");
        await reader.Type("velde");
        await reader.By("#go-to-hits li", "Velde").WaitForAsync();
        await reader.Press("Enter");
        await reader.Page.WaitForURLAsync("**/people?**person=r.velde**");
    }

    [Fact]
    public async Task Going_to_something_that_is_not_there_says_so()
    {
        await using var reader = await Reader.At(site, "/p/plant/accounts");
        await reader.Press("/");
        await reader.Type("zzzz");
        await reader.By("#go-to-hits li", "Nothing has").WaitForAsync();
    }

    [Fact]
    public async Task Chapters_open_by_their_number_and_the_element_stays_in_focus()
    {
        await using var reader = await Reader.At(site, "/p/plant/accounts?focus=03.2");
        await reader.Press("Alt+2");
        await reader.Page.WaitForURLAsync("**/breakdown?**focus=03.2**");
        await reader.Press("Alt+3");
        await reader.Page.WaitForURLAsync("**/people?**focus=03.2**");
        await reader.Press("Alt+8");
        await reader.Page.WaitForURLAsync("**/accounts?**focus=03.2**");
    }

    [Fact]
    public async Task The_list_of_keys_holds_those_that_act_here_and_letters_can_be_switched_off()
    {
        await using var reader = await Reader.At(site, "/p/plant/accounts");
        await reader.Press("?");
        await reader.By("#keys[open]").WaitForAsync();
        Assert.Contains("next gap", await reader.Text("#keys"), StringComparison.Ordinal);
        await reader.By("#letters-act").UncheckAsync();
        await reader.Press("Escape");

        await reader.Press("f");
        Assert.DoesNotContain("find-rows", await reader.Focused(), StringComparison.Ordinal);
        await reader.By("[data-opens=keys]").First.ClickAsync();
        await reader.By("#letters-act").CheckAsync();
        await reader.Press("Escape");
        await reader.Press("f");
        Assert.Contains("find-rows", await reader.Focused(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_letter_has_one_job_on_every_sheet()
    {
        foreach (
            var sheet in (string[])
                [
                    "accounts",
                    "scope?item=4.5.2",
                    "breakdown",
                    "people",
                    "people?show=packages",
                    "accounts/packages?of=03.2-MEC",
                    "import",
                ]
        )
        {
            await using var reader = await Reader.At(site, "/p/plant/" + sheet);
            var letters = await reader.Page.EvaluateAsync<string[]>(
                "() => [...document.querySelectorAll('[data-letter]')].map(e => e.dataset.letter)"
            );
            Assert.Equal(letters.Distinct(), letters);
        }
    }

    [Fact]
    public async Task The_chosen_colours_stay()
    {
        await using var reader = await Reader.At(site, "/p/plant/accounts", "light");
        var light = await reader.Page.EvaluateAsync<string>(
            "() => getComputedStyle(document.body).backgroundColor"
        );
        await reader.Press("?");
        await reader
            .By("#keys input[value=dark]")
            .CheckAsync(new LocatorCheckOptions { Force = true });
        var dark = await reader.Page.EvaluateAsync<string>(
            "() => getComputedStyle(document.body).backgroundColor"
        );
        Assert.NotEqual(light, dark);
        Assert.Equal(
            "dark",
            await reader.Page.EvaluateAsync<string>("() => localStorage.getItem('plenum.theme')")
        );
    }

    /// <summary>A full window, a narrow one, and both with everything twice as large.</summary>
    [Theory]
    [InlineData("accounts")]
    [InlineData("scope?item=4.5.2")]
    [InlineData("breakdown")]
    [InlineData("breakdown/parts?focus=03.2")]
    [InlineData("breakdown/sets?type=pump")]
    [InlineData("estimate?focus=03.2.04")]
    [InlineData("people")]
    [InlineData("people?show=packages&person=r.velde")]
    [InlineData("people?show=organisation")]
    [InlineData("people/sheet?of=03.2.01.9")]
    [InlineData("network")]
    [InlineData("accounts/packages?of=03.2-MEC")]
    [InlineData("accounts/records?of=03.2.01.1")]
    [InlineData("import")]
    public async Task Nothing_is_cut_off_at_the_side(string sheet)
    {
        await using var reader = await Reader.At(site, "/p/plant/" + sheet);
        foreach (
            var (width, height) in ((int, int)[])[(1600, 1000), (1280, 800), (800, 500), (640, 400)]
        )
        {
            await reader.Page.SetViewportSizeAsync(width, height);
            var beyond = await reader.Page.EvaluateAsync<int>(
                """
                () => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(
                    () => done(document.documentElement.scrollWidth - innerWidth))))
                """
            );
            Assert.True(beyond <= 0, $"{sheet} at {width}: {beyond} px beyond the window");
        }
    }
}
