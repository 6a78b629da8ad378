using System.Net;
using FleetTrend.IntegrationTests.Pages;
using FleetTrend.Store.People;
using Microsoft.Extensions.Logging;

namespace FleetTrend.IntegrationTests.Access;

/// <summary>What a proxy says of the caller counts where the proxy is named, and from nobody else.</summary>
[Collection(SharedPostgres.Name)]
public sealed class ProxyTests(PostgresFixture postgres)
{
    private const string Caller = "203.0.113.7"; // RFC 5737: an address for documentation

    [Fact]
    public async Task A_named_proxy_tells_the_callers_address_and_that_the_browser_came_by_TLS()
    {
        var (lines, cookies) = await RefuseAndSignInAsync(["127.0.0.1/32"]);
        Assert.Single(lines, line => line.Contains($"from {Caller}: KEY_UNKNOWN", StringComparison.Ordinal));
        Assert.All(cookies, cookie => Assert.Contains("; secure", cookie, StringComparison.OrdinalIgnoreCase));
    }

    [Theory]
    [InlineData()]
    [InlineData("192.0.2.0/24")] // another proxy
    public async Task Anybody_elses_headers_change_nothing(params string[] proxies)
    {
        var (lines, cookies) = await RefuseAndSignInAsync(proxies);
        Assert.DoesNotContain(lines, line => line.Contains(Caller, StringComparison.Ordinal));
        Assert.Single(lines, line => line.Contains("from 127.0.0.1: KEY_UNKNOWN", StringComparison.Ordinal));
        Assert.All(cookies, cookie => Assert.DoesNotContain("secure", cookie, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public async Task Every_cookie_is_kept_from_scripts_and_from_other_sites()
    {
        var (_, cookies) = await RefuseAndSignInAsync([]);
        Assert.Equal(["fleettrend", "fleettrend-form"], cookies.Select(cookie => cookie.Split('=')[0]).Distinct().Order());
        Assert.All(cookies, cookie => Assert.Matches("(?i); samesite=(lax|strict)", cookie));
        Assert.All(cookies, cookie => Assert.Contains("; httponly", cookie, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>A refused call and a sign-in through a proxy; what was logged of it, and the cookies as the server set them.</summary>
    private async Task<(IReadOnlyCollection<string> Lines, IReadOnlyList<string> Cookies)> RefuseAndSignInAsync(IReadOnlyList<string> proxies)
    {
        using var log = new LineLog();
        await using var server = await ApiServer.StartAsync(
            postgres,
            settings => settings with { TrustedProxies = [.. proxies.Select(proxy => IPNetwork.Parse(proxy))] },
            builder => builder.Logging.AddProvider(log));
        using var http = server.HttpWith(null);
        http.DefaultRequestHeaders.Add("X-Forwarded-For", Caller);
        http.DefaultRequestHeaders.Add("X-Forwarded-Proto", "https");
        using (var wrong = new HttpRequestMessage(HttpMethod.Get, "/v1/flags") { Headers = { { "authorization", "Bearer nonsense" } } })
        using (var refused = await http.SendAsync(wrong))
            Assert.Equal(HttpStatusCode.Unauthorized, refused.StatusCode);

        await server.AddPersonAsync("director", PersonRole.Director);
        using var form = await http.GetAsync("/sign-in");
        var page = await Browser.ReadAsync(form);
        using var content = new FormUrlEncodedContent(new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["name"] = "director",
            ["password"] = ApiServer.Password,
            ["__RequestVerificationToken"] = page.QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!,
        });

        // A cookie that is for TLS alone is not sent to a test server without: what a browser would send is put there by hand.
        using var signIn = new HttpRequestMessage(HttpMethod.Post, "/sign-in") { Content = content };
        signIn.Headers.Add("Cookie", string.Join("; ", form.Headers.GetValues("Set-Cookie").Select(cookie => cookie.Split(';')[0])));
        using var signedIn = await http.SendAsync(signIn);
        Assert.Equal(HttpStatusCode.Redirect, signedIn.StatusCode);
        return (log.Lines, [.. form.Headers.GetValues("Set-Cookie"), .. signedIn.Headers.GetValues("Set-Cookie")]);
    }
}
