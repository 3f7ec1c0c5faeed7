using System.Net;
using Plenum.Web.Host;
using Plenum.Web.Tests.Support;

namespace Plenum.Web.Tests;

/// <summary>Who is answered, and what every answer says about what a page may load.</summary>
public class HostTests(SharedSite shared) : IClassFixture<SharedSite>
{
    [Theory]
    [InlineData("/")]
    [InlineData("/css/base.css")]
    [InlineData("/projects/token")]
    [InlineData("/nothing/here")]
    public async Task Every_answer_says_what_a_page_may_load(string address)
    {
        var site = shared.Site;
        var answer = await site.Http.GetAsync(address, TestContext.Current.CancellationToken);
        Assert.Equal(
            "default-src 'none'; script-src 'self'; style-src 'self'; style-src-attr 'unsafe-inline'; "
                + "img-src 'self' data:; font-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'self'; "
                + "frame-ancestors 'none'",
            Assert.Single(answer.Headers.GetValues("Content-Security-Policy"))
        );
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.Equal("no-referrer", Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
        Assert.False(answer.Headers.Contains("Server"));
    }

    [Fact]
    public async Task The_page_has_no_script_and_no_style_of_its_own()
    {
        var site = shared.Site;
        var page = await site.Http.GetStringAsync("/", TestContext.Current.CancellationToken);
        Assert.Contains("<script", page, StringComparison.Ordinal);
        Assert.DoesNotMatch("<script(?![^>]*src=)", page);
        Assert.DoesNotContain("<style", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("evil.example")]
    [InlineData("127.0.0.1.evil.example")]
    [InlineData("192.168.0.1")]
    public async Task A_request_under_another_name_is_refused(string host)
    {
        var site = shared.Site;
        using var request = new HttpRequestMessage(HttpMethod.Get, "/");
        request.Headers.Host = host;
        var answer = await site.Http.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Theory]
    [InlineData("http://evil.example")]
    [InlineData("null")]
    [InlineData("http://127.0.0.1:1")]
    public async Task A_request_from_another_page_is_refused(string origin)
    {
        var site = shared.Site;
        using var request = new HttpRequestMessage(HttpMethod.Get, "/projects/token");
        request.Headers.Add("Origin", origin);
        var answer = await site.Http.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Theory]
    [InlineData("0.0.0.0")]
    [InlineData("192.168.0.1")]
    [InlineData("::")]
    [InlineData("plant.example")]
    public void An_address_that_others_can_reach_is_not_served(string address) =>
        Assert.Throws<ArgumentException>(() =>
            PlenumWeb.Build(new WebSettings([], ".", Address: address), TimeProvider.System)
        );

    [Theory]
    [InlineData("Kestrel Bay.plenum", "kestrel-bay")]
    [InlineData("Überbau.plenum", "berbau")]
    [InlineData("___.plenum", "project")]
    public void A_project_is_addressed_by_the_name_of_its_file(string file, string key)
    {
        using var shelf = new ProjectShelf(TimeProvider.System);
        Assert.Equal(key, shelf.Add(Path.Combine("/a", file)).Key);
    }

    [Fact]
    public void Projects_of_one_name_are_told_apart_and_one_file_stands_once()
    {
        using var shelf = new ProjectShelf(TimeProvider.System);
        var first = shelf.Add("/a/shed.plenum");
        var second = shelf.Add("/b/shed.plenum");
        Assert.Equal(["shed", "shed-2"], shelf.Projects.Select(project => project.Key));
        Assert.Same(first, shelf.Add("/a/../a/shed.plenum"));
        Assert.Same(second, shelf.Find("shed-2"));
        Assert.Null(shelf.Find("SHED"));
    }

    [Fact]
    public async Task A_file_that_cannot_be_opened_does_not_come_onto_the_shelf()
    {
        using var desk = new Desk();
        using var shelf = new ProjectShelf(TimeProvider.System);
        var (project, refusal) = await shelf.OpenAndAdd(desk["nowhere.plenum"]);
        Assert.Null(project);
        Assert.StartsWith("There is no file", refusal, StringComparison.Ordinal);
        (project, refusal) = await shelf.OpenAndAdd(desk.Write("text.plenum", "not a project"));
        Assert.Null(project);
        Assert.Contains("is not a Plenum project", refusal, StringComparison.Ordinal);
        Assert.Empty(shelf.Projects);
        (project, refusal) = await shelf.OpenAndAdd(await desk.MakeShed());
        Assert.Null(refusal);
        Assert.Same(project, Assert.Single(shelf.Projects));
        Assert.Equal("shed", project!.Key);
        Assert.Equal("Store shed", project.Current!.Settings.Name);
    }
}
