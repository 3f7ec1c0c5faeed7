using Deque.AxeCore.Commons;

namespace Plenum.Browser.Tests;

/// <summary>Every sheet against the rules for accessible pages that a program can check, light and dark. Rules: WCAG 2.2 A and AA and axe's best practices.</summary>
public sealed class AccessibilityTests(Site site)
{
    private static readonly string[] Sheets =
    [
        "/",
        "/?nothing-here",
        "/p/nobody/accounts",
        "/p/empty/accounts",
        "/p/plant/accounts",
        "/p/plant/accounts?by=element&level=3&sort=cv&offsets=schedule&values=period",
        "/p/plant/accounts?by=unit&columns=all-unknown",
        "/p/plant/accounts?account=03.2-MEC&focus=03.2&only=flagged",
        "/p/plant/accounts?by=nonsense",
        "/p/plant/accounts/packages?by=account&of=03.2-MEC&figure=cv",
        "/p/plant/accounts/records?of=03.2.01.1&figure=ac",
        "/p/plant/scope",
        "/p/plant/scope?item=4.5.2",
        "/p/plant/scope?item=4.8.5&focus=10.1",
        "/p/empty/scope",
        "/p/plant/breakdown",
        "/p/plant/breakdown?focus=03.4",
        "/p/plant/breakdown/parts?focus=03.2",
        "/p/plant/breakdown/parts?only=missing",
        "/p/plant/breakdown/sets?type=pump",
        "/p/plant/estimate?focus=03.2.04",
        "/p/plant/people",
        "/p/plant/people?person=r.velde",
        "/p/plant/people?all=1",
        "/p/plant/people?show=packages&person=r.velde",
        "/p/plant/people?show=packages&of=none",
        "/p/plant/people?show=packages&of=nothing",
        "/p/plant/people?show=organisation&unit=MEC",
        "/p/plant/people/sheet?of=03.2.01.9",
        "/p/plant/people/sheet?of=b.colm",
        "/p/plant/people/sheet?of=nobody",
        "/p/plant/network",
        "/p/plant/network?to=M-01&float=10",
        "/p/plant/import",
    ];

    private static readonly string Axe = new BundledAxeScriptProvider().GetScript();

    /// <summary>Everything that can be checked.</summary>
    private static readonly object All = new { resultTypes = (string[])["violations"] };

    /// <summary>What depends on the theme.</summary>
    private static readonly object Colours = new
    {
        resultTypes = (string[])["violations"],
        runOnly = (string[])["color-contrast", "link-in-text-block"],
    };

    public static TheoryData<string> EverySheet => [.. Sheets];

    [Fact]
    public async Task What_breaks_a_rule_is_found()
    {
        await using var reader = await Reader.At(site, "/p/nobody/accounts");
        await reader.Page.EvaluateAsync(
            "() => document.querySelector('main').append(document.createElement('button'))"
        );
        await Assert.ThrowsAnyAsync<Xunit.Sdk.XunitException>(() => Look(reader, All));
    }

    [Theory]
    [MemberData(nameof(EverySheet))]
    public async Task No_rule_is_broken(string sheet)
    {
        await using var reader = await Reader.At(site, sheet);
        await Look(reader, All);

        await reader.Page.EvaluateAsync(
            "() => { document.documentElement.dataset.theme = 'dark'; }"
        );
        await Look(reader, Colours);
    }

    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    public async Task The_lists_that_open_over_a_sheet_break_no_rule(string theme)
    {
        await using var reader = await Reader.At(site, "/p/plant/accounts", theme);
        await reader.Press("?");
        await reader.By("#keys[open]").WaitForAsync();
        await Look(reader, All);
        await reader.Press("Escape");

        await reader.By("[data-opens=columns-dialog]").ClickAsync();
        await reader.By("#columns-dialog[open]").WaitForAsync();
        await Look(reader, All);
        await reader.Press("Escape");

        await reader.Press("/");
        await reader.Type("pump");
        await reader.By("#go-to-hits li").First.WaitForAsync();
        await Look(reader, All);
    }

    /// <summary>Each rule that is broken, with the first places where it is.</summary>
    private static async Task Look(Reader reader, object rules)
    {
        await reader.Page.EvaluateAsync(Axe);
        Assert.Empty(
            await reader.Page.EvaluateAsync<string[]>(
                """
                async rules => (await axe.run(document, rules)).violations.map(broken =>
                    `${broken.id} (${broken.impact}): ${broken.help}: ${broken.nodes.slice(0, 3).map(node => node.html).join('; ')}`)
                """,
                rules
            )
        );
    }
}
