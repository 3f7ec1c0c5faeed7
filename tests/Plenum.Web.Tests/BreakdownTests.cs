using Plenum.Core.Foundation;
using Plenum.Web.Breakdown;
using Plenum.Web.Shell;
using Plenum.Web.Tests.Support;
using Plenum.Workbench;
using Plenum.Workbench.Questions;

namespace Plenum.Web.Tests;

/// <summary>The audit and the detail test on the Breakdown sheet; accepting a finding and taking it back.</summary>
public class BreakdownTests
{
    private const string Page = "/p/shed/breakdown";

    [Fact]
    public async Task Findings_stand_with_what_must_be_fixed_first_and_lead_to_their_element()
    {
        await using var site = await Open();
        var answer = FindingsQuestion.Ask(site.Shelf.Find("shed")!.Current!);
        var page = await List(site, Page);
        Assert.Contains(
            $"{answer.Count(Severity.Error)} to fix, {answer.Count(Severity.Warning)} to look at",
            page,
            StringComparison.Ordinal
        );
        Assert.Contains("<kbd>N</kbd> next", page, StringComparison.Ordinal);
        var first = answer.Lines[0];
        Assert.Equal(answer.Lines.Min(line => line.Finding.Severity), first.Finding.Severity);
        var opened = await List(site, Page + "?finding=" + Uri.EscapeDataString(first.Key));
        Assert.Contains(first.Finding.Message, opened, StringComparison.Ordinal);
        Assert.Contains(first.Finding.Remedy, opened, StringComparison.Ordinal);
        Assert.Contains("Accept with reason…", opened, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_accepted_finding_stays_in_sight_with_its_reason_and_can_be_taken_back()
    {
        await using var site = await Open();
        var shed = site.Shelf.Find("shed")!;
        var told = 0;
        shed.Changed += () => told++;
        var line = FindingsQuestion.Ask(shed.Current!).Lines[0];
        await shed.Accept(Command(line, "Agreed with the client."));
        Assert.Equal(1, told);

        var page = await List(site, Page + "?finding=" + Uri.EscapeDataString(line.Key));
        Assert.Contains(", 1 accepted", page, StringComparison.Ordinal);
        Assert.Contains("Agreed with the client.", page, StringComparison.Ordinal);
        Assert.Contains("Accepted by b.lund:", page, StringComparison.Ordinal);
        Assert.Contains("Take it back", page, StringComparison.Ordinal);

        await shed.Accept(Command(line, null));
        page = await List(site, Page + "?finding=" + Uri.EscapeDataString(line.Key));
        Assert.DoesNotContain(
            "accepted",
            page.Replace("accepted ones last", "", StringComparison.Ordinal),
            StringComparison.Ordinal
        );
        Assert.Contains("Accept with reason…", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_finding_that_has_changed_meanwhile_is_not_accepted_unseen()
    {
        await using var site = await Open();
        var shed = site.Shelf.Find("shed")!;
        var line = FindingsQuestion.Ask(shed.Current!).Lines[0];
        var changed = line with
        {
            Finding = line.Finding with { Message = "As it was yesterday." },
        };
        var refused = await Assert.ThrowsAsync<QuestionException>(() =>
            shed.Accept(Command(changed, "Agreed."))
        );
        Assert.Contains("no longer finds this", refused.Message, StringComparison.Ordinal);
        Assert.Equal(1, shed.Current!.Revision);
    }

    [Fact]
    public async Task The_detail_test_of_the_element_in_focus_says_what_can_be_told()
    {
        await using var site = await Open();
        var page = await Drawn.At<DetailTest>(site, Page + "?focus=S.1");
        Assert.Contains("Is it detailed enough?", page, StringComparison.Ordinal);
        Assert.Contains("One person answers for each package", page, StringComparison.Ordinal);
        Assert.Contains("one package has no budget", page, StringComparison.Ordinal);
        Assert.Contains("aria-label=\"no:\"", page, StringComparison.Ordinal);
        Assert.Contains("aria-label=\"yes:\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_rail_counts_the_findings_that_wait()
    {
        await using var site = await Open();
        var check = new CheckQuestion().Ask(site.Shelf.Find("shed")!.Current!);
        var waiting = check.Count(Severity.Error) + check.Count(Severity.Warning);
        Assert.True(waiting > 0);
        var rail = await Drawn.At<Rail>(site, Page);
        Assert.Contains($"<span class=\"wait\">{waiting}</span>", rail, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_chapter_offers_a_lens_of_precision()
    {
        await using var site = await Open();
        var page = await Drawn.At<Plenum.Web.Shell.MapView>(site, Page);
        Assert.Contains("<option value=\"breakdown\"", page, StringComparison.Ordinal);
        Assert.Contains("<option value=\"precision\"", page, StringComparison.Ordinal);
    }

    private static async Task<Site> Open()
    {
        var site = await Site.Open();
        Assert.NotNull(await site.Shelf.Find("shed")!.Open());
        return site;
    }

    private static Task<string> List(Site site, string address) =>
        Drawn.At<FindingList>(
            site,
            address,
            new(StringComparer.Ordinal)
            {
                ["Answer"] = FindingsQuestion.Ask(site.Shelf.Find("shed")!.Current!),
            }
        );

    private static AcceptFindingCommand Command(FindingLine line, string? reason) =>
        new(line.Finding.Rule, line.Finding.Code, line.Finding.Message, reason, "b.lund");
}
