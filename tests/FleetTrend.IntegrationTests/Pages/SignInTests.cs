using System.Net;
using AngleSharp.Html.Parser;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Store.Keys;

namespace FleetTrend.IntegrationTests.Pages;

/// <summary>Who sees the pages.</summary>
[Collection(SharedPostgres.Name)]
public sealed class SignInTests(PostgresFixture postgres) : IAsyncLifetime
{
    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Theory]
    [InlineData("/")]
    [InlineData("/reports/1")]
    [InlineData("/reports/1/mail")]
    [InlineData("/reports/1/plots/x.png")]
    public async Task Without_a_key_a_page_leads_to_signing_in(string path)
    {
        using var stranger = server.HttpWith(null);
        using var answer = await stranger.GetAsync(path);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.StartsWith("/sign-in?ReturnUrl=", answer.Headers.Location!.PathAndQuery, StringComparison.Ordinal);
        using var sheet = await stranger.GetAsync("/site.css");
        Assert.Equal(HttpStatusCode.OK, sheet.StatusCode);
    }

    [Fact]
    public async Task A_key_that_reads_trends_opens_pages_and_what_they_link_to_until_it_is_revoked()
    {
        var key = await server.CreateKeyAsync(null, KeyScope.TrendsRead);
        using var browser = server.HttpWith(null);
        using (var signedIn = await SignInAsync(browser, key, "?ReturnUrl=%2F"))
            Assert.Equal((HttpStatusCode.Redirect, "/"), (signedIn.StatusCode, signedIn.Headers.Location!.OriginalString));

        using (var page = await browser.GetAsync("/"))
            Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        using (var linked = await browser.GetAsync("/v1/reports"))
            Assert.Equal(HttpStatusCode.OK, linked.StatusCode);
        using (var beyond = await browser.GetAsync("/v1/keys"))
            Assert.Equal(HttpStatusCode.Forbidden, beyond.StatusCode);
        using (var content = new StringContent("{}", System.Text.Encoding.UTF8, "application/json"))
        using (var changing = await browser.PostAsync("/v1/trends:refresh", content))
            Assert.Equal(HttpStatusCode.Unauthorized, changing.StatusCode); // another site could send it in the reader's name

        await server.Access.RevokeKeyAsync(new RevokeKeyRequest { KeyId = key.Split('_')[1] });
        using (var page = await browser.GetAsync("/"))
            Assert.Equal(HttpStatusCode.Redirect, page.StatusCode);
        using (var linked = await browser.GetAsync("/v1/reports"))
            Assert.Equal(HttpStatusCode.Unauthorized, linked.StatusCode);
    }

    [Fact]
    public async Task Signing_out_ends_the_session_on_every_server_so_that_a_copied_cookie_opens_nothing()
    {
        await using var beside = await ApiServer.StartBesideAsync(server);
        var key = await server.CreateKeyAsync(null, KeyScope.TrendsRead);
        using var browser = server.HttpWith(null);
        using var other = server.HttpWith(null);
        using var signedIn = await SignInAsync(browser, key, "");
        using var elsewhere = await SignInAsync(other, key, "");
        var copied = CookieOf(signedIn);
        Assert.Equal(HttpStatusCode.OK, await OpenAsync(server, copied));
        Assert.Equal(HttpStatusCode.OK, await OpenAsync(beside, copied));

        using (var signedOut = await SendFormAsync(browser, "/sign-in", "form[action]", []))
            Assert.Equal("/sign-in", signedOut.Headers.Location!.OriginalString);

        Assert.Equal(HttpStatusCode.Redirect, await OpenAsync(server, copied));
        Assert.Equal(HttpStatusCode.Redirect, await OpenAsync(beside, copied));
        Assert.Equal(HttpStatusCode.OK, await OpenAsync(beside, CookieOf(elsewhere))); // the same key, another browser
    }

    [Fact]
    public async Task Signing_in_with_another_key_ends_the_session_before()
    {
        using var browser = server.HttpWith(null);
        Assert.DoesNotContain("another key", await browser.GetStringAsync("/sign-in"), StringComparison.Ordinal); // nobody is signed in
        using var first = await SignInAsync(browser, await server.CreateKeyAsync(null, KeyScope.TrendsRead), "");
        Assert.Contains("another key", await browser.GetStringAsync("/sign-in"), StringComparison.Ordinal);
        using var second = await SignInAsync(browser, await server.CreateKeyAsync(null, KeyScope.TrendsRead), "");
        Assert.Equal(HttpStatusCode.Redirect, await OpenAsync(server, CookieOf(first)));
        Assert.Equal(HttpStatusCode.OK, await OpenAsync(server, CookieOf(second)));
    }

    [Fact]
    public async Task A_session_that_nobody_used_for_twelve_hours_is_over_though_the_cookie_is_not()
    {
        using var browser = server.HttpWith(null);
        using var signedIn = await SignInAsync(browser, await server.CreateKeyAsync(null, KeyScope.TrendsRead), "");
        await using (var age = server.Database.DataSource.CreateCommand("update page_sessions set last_used_time = last_used_time - interval '12 hours'"))
            await age.ExecuteNonQueryAsync();
        Assert.Equal(HttpStatusCode.Redirect, await OpenAsync(server, CookieOf(signedIn)));
        using var again = await SignInAsync(browser, await server.CreateKeyAsync(null, KeyScope.TrendsRead), "");
        Assert.Equal(1L, await server.CountAsync("page_sessions")); // what is over is removed
    }

    [Fact]
    public async Task Other_keys_do_not_open_pages_and_nobody_is_led_elsewhere()
    {
        using var browser = server.HttpWith(null);
        foreach (var key in new[] { "", KeyText.Create().Reveal(), await server.CreateKeyAsync(ShopCards.Source, KeyScope.RecordsWrite) })
        {
            using var refused = await SignInAsync(browser, key, "");
            Assert.Equal(HttpStatusCode.OK, refused.StatusCode);
            var page = new HtmlParser().ParseDocument(await refused.Content.ReadAsStringAsync());
            Assert.NotEmpty(page.QuerySelector("[role=alert]")!.TextContent);
            Assert.Null(page.QuerySelector("input[name=key]")!.GetAttribute("value"));
        }

        using var answer = await SignInAsync(browser, server.Key, "?ReturnUrl=https%3A%2F%2Felsewhere.example%2F");
        Assert.Equal("/", answer.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task The_demo_shows_its_pages_without_a_key_and_nothing_more()
    {
        await using var demo = await ApiServer.StartAsync(postgres, settings => settings with { OpenPages = true });
        using var anybody = demo.HttpWith(null);
        using var page = await anybody.GetAsync("/");
        using var linked = await anybody.GetAsync("/v1/reports");
        using var beyond = await anybody.GetAsync("/v1/keys");
        Assert.Equal(
            (HttpStatusCode.OK, HttpStatusCode.OK, HttpStatusCode.Forbidden), (page.StatusCode, linked.StatusCode, beyond.StatusCode));
    }

    private static Task<HttpResponseMessage> SignInAsync(HttpClient browser, string key, string query) =>
        SendFormAsync(browser, $"/sign-in{query}", "form:not([action])", new(StringComparer.Ordinal) { ["key"] = key });

    private static async Task<HttpResponseMessage> SendFormAsync(HttpClient browser, string path, string selector, Dictionary<string, string> typed)
    {
        var form = new HtmlParser().ParseDocument(await browser.GetStringAsync(path)).QuerySelector(selector)!;
        typed["__RequestVerificationToken"] = form.QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!;
        using var content = new FormUrlEncodedContent(typed);
        return await browser.PostAsync(form.GetAttribute("action") ?? path, content);
    }

    /// <summary>The cookie of a session, as somebody who copied it would send it.</summary>
    private static string CookieOf(HttpResponseMessage signedIn) =>
        signedIn.Headers.GetValues("Set-Cookie").Select(cookie => cookie.Split(';')[0]).Single(cookie => cookie.StartsWith("fleettrend=", StringComparison.Ordinal));

    private static async Task<HttpStatusCode> OpenAsync(ApiServer server, string cookie)
    {
        using var http = new HttpClient(new SocketsHttpHandler { UseCookies = false, AllowAutoRedirect = false }) { BaseAddress = server.HttpAddress };
        using var request = new HttpRequestMessage(HttpMethod.Get, "/") { Headers = { { "Cookie", cookie } } };
        using var answer = await http.SendAsync(request);
        return answer.StatusCode;
    }
}
