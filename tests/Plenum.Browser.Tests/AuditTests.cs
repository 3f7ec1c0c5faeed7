namespace Plenum.Browser.Tests;

/// <summary>The audit on the Breakdown sheet, by keyboard alone.</summary>
public sealed class AuditTests(Site site)
{
    [Fact]
    public async Task A_finding_is_accepted_with_a_reason_stays_in_sight_and_is_taken_back()
    {
        await using var reader = await Reader.At(site, "/p/accepting/breakdown");
        await reader.By("#findings li[data-row]").First.WaitForAsync();
        var before = await Waiting(reader);

        await reader.Press("n");
        await reader.By("#accept").WaitForAsync();
        await reader.Press("a");
        await reader.Page.WaitForFunctionAsync(
            "() => document.activeElement?.id === 'accept-reason'"
        );
        await reader.Type("agreed with the client");
        await reader.Press("Enter");
        await reader.Page.WaitForFunctionAsync(
            "before => document.querySelector('.rail [aria-current] .wait')?.innerText !== before",
            before
        );

        // accepted ones stand at the end of the list
        await reader.Page.EvaluateAsync(
            "() => { const box = document.querySelector('.findingsbox'); box.scrollTop = box.scrollHeight; }"
        );
        await reader
            .By("#findings li.accepted", "agreed with the client")
            .Locator("[data-rowlink]")
            .ClickAsync();
        await reader.By("#take-back").ClickAsync();
        await reader.Page.WaitForFunctionAsync(
            "before => document.querySelector('.rail [aria-current] .wait')?.innerText === before",
            before
        );
    }

    [Fact]
    public async Task The_detail_test_answers_its_questions_for_the_element_in_focus()
    {
        await using var reader = await Reader.At(site, "/p/plant/breakdown?focus=03.2");
        await reader.By("#detail-test li").First.WaitForAsync();
        Assert.Equal(5, await reader.By("#detail-test .checks li").CountAsync());
        Assert.Contains(
            "10 packages have nobody",
            await reader.Text("#detail-test"),
            StringComparison.Ordinal
        );
    }

    /// <summary>The number of the chapter: findings that wait for somebody.</summary>
    private static Task<string> Waiting(Reader reader) => reader.Text(".rail [aria-current] .wait");
}
