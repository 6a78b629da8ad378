using System.Diagnostics;
using System.Net;
using FleetTrend.Hosting.Configuration;
using FleetTrend.IntegrationTests.Access;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Store.Keys;
using FleetTrend.Store.People;
using Microsoft.Extensions.Logging;

namespace FleetTrend.IntegrationTests.Pages;

/// <summary>Who sees the pages: people who have signed in, as long as their session is good.</summary>
[Collection(SharedPostgres.Name)]
public sealed class SignInTests(PostgresFixture postgres) : IAsyncLifetime, IDisposable
{
    private const string Wrong = "not the password";

    private readonly LineLog log = new();
    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(postgres, configure: builder => builder.Logging.AddProvider(log));

    public async Task DisposeAsync() => await server.DisposeAsync();

    public void Dispose() => log.Dispose();

    [Theory]
    [InlineData("/")]
    [InlineData("/reports/1")]
    [InlineData("/reports/1/mail")]
    [InlineData("/reports/1/plots/x.png")]
    [InlineData("/people")]
    [InlineData("/password")]
    public async Task Without_signing_in_a_page_leads_there(string path)
    {
        using var stranger = server.HttpWith(null);
        using var answer = await stranger.GetAsync(path);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.StartsWith("/sign-in?ReturnUrl=", answer.Headers.Location!.PathAndQuery, StringComparison.Ordinal);
        using var sheet = await stranger.GetAsync("/site.css");
        Assert.Equal(HttpStatusCode.OK, sheet.StatusCode);
    }

    [Fact]
    public async Task A_person_signs_in_by_name_or_by_mail_address_and_reads_what_pages_link_to()
    {
        var person = await server.AddPersonAsync("A. Reader", PersonRole.Reader);
        foreach (var name in new[] { "A. Reader", " a. reader ", person.Email!, person.Email!.ToUpperInvariant() })
        {
            using var browser = new Browser(server);
            using (var signedIn = await browser.SignInAsync(name, ApiServer.Password, "?ReturnUrl=%2Fflags"))
                Assert.Equal((HttpStatusCode.Redirect, "/flags"), (signedIn.StatusCode, signedIn.Headers.Location!.OriginalString));
            Assert.Contains("Signed in: A. Reader", (await browser.PageAsync("/")).QuerySelector("header")!.TextContent, StringComparison.Ordinal);
            using (var linked = await browser.GetAsync("/v1/reports"))
                Assert.Equal(HttpStatusCode.OK, linked.StatusCode);
            using (var beyond = await browser.GetAsync("/v1/keys"))
                Assert.Equal(HttpStatusCode.Forbidden, beyond.StatusCode);
            using var changing = await browser.PostAsync("/v1/trends:refresh", [], null);
            Assert.Equal(HttpStatusCode.Unauthorized, changing.StatusCode); // another site could send it in the reader's name
        }
    }

    [Fact] // What opens an account, and what a key opens, does not open the other.
    public async Task Whatever_does_not_fit_is_refused_in_the_same_words_after_the_same_time_and_nobody_is_led_elsewhere()
    {
        await server.AddPersonAsync("director", PersonRole.Director);
        var invited = await server.AddPersonAsync("invited", PersonRole.Reader);
        await DoAsync($"update people set password_hash = null where id = {invited.Id}");
        await server.AddPersonAsync("gone", PersonRole.Reader);
        await DoAsync("update people set disable_time = now() where name = 'gone'");
        (string Name, string Password)[] unfit =
        [
            ("director", Wrong), ("director", ""), ("director", ApiServer.Password + " "), ("director", new string('x', 5_000)), ("nobody of that name", ApiServer.Password),
            ("nobody@shop.example", ApiServer.Password), ("invited", ApiServer.Password), ("invited", ""), ("gone", ApiServer.Password), ("", ""),
            (new string('x', 1_000), ApiServer.Password), ("director", server.Key), (server.Key, server.Key),
            ("of a test", await server.CreateKeyAsync(ShopCards.Source, Enum.GetValues<KeyScope>())),
        ];
        var words = new HashSet<string>(StringComparer.Ordinal);
        using var browser = new Browser(server);
        foreach (var (name, password) in unfit)
        {
            var mark = await browser.MarkAsync("/sign-in");
            var clock = Stopwatch.StartNew();
            using var refused = await browser.PostAsync("/sign-in", new() { ["name"] = name, ["password"] = password }, mark);
            Assert.True(clock.Elapsed >= TimeSpan.FromMilliseconds(450), $"{name}: {clock.Elapsed}"); // half a second, less what timers are off
            Assert.Equal((name, HttpStatusCode.Unauthorized), (name, refused.StatusCode));
            var page = await Browser.ReadAsync(refused);
            words.Add(page.QuerySelector("[role=alert]")!.TextContent);
            Assert.Equal("", page.QuerySelector("input[name=password]")!.GetAttribute("value"));
        }

        Assert.Single(words);
        using var answer = await browser.SignInAsync("director", ApiServer.Password, "?ReturnUrl=https%3A%2F%2Felsewhere.example%2F");
        Assert.Equal("/", answer.Headers.Location!.OriginalString);
        Assert.DoesNotContain(log.Lines, line => line.Contains(Wrong, StringComparison.Ordinal) || line.Contains(ApiServer.Password, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Ten_wrong_passwords_even_at_the_same_time_lock_the_account_for_a_quarter_of_an_hour()
    {
        var person = await server.AddPersonAsync("director", PersonRole.Director);
        using var browser = new Browser(server);
        for (var i = 0; i < 8; i++)
        {
            using var wrong = await browser.SignInAsync("director", Wrong);
            Assert.Equal(HttpStatusCode.Unauthorized, wrong.StatusCode);
        }

        using (var right = await browser.SignInAsync("director", ApiServer.Password))
            Assert.Equal(HttpStatusCode.Redirect, right.StatusCode); // not ten yet, and it starts the count anew
        using var other = new Browser(server);
        var mark = await other.MarkAsync("/sign-in");
        var tries = await Task.WhenAll(Enumerable.Range(0, 12).Select(_ => other.PostAsync("/sign-in", new() { ["name"] = "director", ["password"] = Wrong }, mark)));
        Assert.All(tries, answer => Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode));
        Array.ForEach(tries, answer => answer.Dispose());

        using (var locked = await other.SignInAsync("director", ApiServer.Password))
            Assert.Equal(HttpStatusCode.Unauthorized, locked.StatusCode);
        Assert.Equal(1, await server.CountAsync("people where locked_until_time between now() + interval '14 minutes' and now() + interval '15 minutes'"));
        Assert.Contains(log.Lines, line => line.Contains($" 3216: Locked person-{person.Id} for 15 min", StringComparison.Ordinal));
        using (var page = await browser.GetAsync("/"))
            Assert.Equal(HttpStatusCode.OK, page.StatusCode); // others cannot end the sessions that are open
        await DoAsync("update people set locked_until_time = now()");
        using var later = await other.SignInAsync("director", ApiServer.Password);
        Assert.Equal(HttpStatusCode.Redirect, later.StatusCode);
    }

    [Fact]
    public async Task Refused_sign_ins_are_counted_by_address_and_then_no_password_is_looked_at()
    {
        await using var strict = await ApiServer.StartAsync(
            postgres, settings => settings with { Access = new AccessSettings { RefusedCallsPerMinute = 3 } }, builder => builder.Logging.AddProvider(log));
        await strict.AddPersonAsync("director", PersonRole.Director);
        using var browser = new Browser(strict);
        for (var i = 0; i < 3; i++)
        {
            using var wrong = await browser.SignInAsync("nobody", Wrong);
            Assert.Equal(HttpStatusCode.Unauthorized, wrong.StatusCode);
        }

        using var held = await browser.SignInAsync("director", ApiServer.Password);
        Assert.Equal(HttpStatusCode.TooManyRequests, held.StatusCode);
        Assert.Contains("Too many sign-ins", (await Browser.ReadAsync(held)).QuerySelector("[role=alert]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(3, log.Lines.Count(line => line.Contains(" 3201: Refused call of /sign-in", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Signing_out_ends_the_session_on_every_server_so_that_a_copied_cookie_opens_nothing()
    {
        await using var beside = await ApiServer.StartBesideAsync(server);
        await server.AddPersonAsync("director", PersonRole.Director);
        using var browser = new Browser(server);
        using var other = new Browser(server);
        using var signedIn = await browser.SignInAsync("director", ApiServer.Password);
        using var elsewhere = await other.SignInAsync("director", ApiServer.Password);
        var copied = Browser.CookieOf(signedIn);
        Assert.Equal(HttpStatusCode.OK, await Browser.OpenAsync(server, copied));
        Assert.Equal(HttpStatusCode.OK, await Browser.OpenAsync(beside, copied));

        using (var signedOut = await browser.SendAsync("/sign-in", "form[action*=Out]", []))
            Assert.Equal("/sign-in", signedOut.Headers.Location!.OriginalString);

        Assert.Equal(HttpStatusCode.Redirect, await Browser.OpenAsync(server, copied));
        Assert.Equal(HttpStatusCode.Redirect, await Browser.OpenAsync(beside, copied));
        Assert.Equal(HttpStatusCode.OK, await Browser.OpenAsync(beside, Browser.CookieOf(elsewhere))); // the same person, another browser
    }

    [Fact]
    public async Task Signing_in_as_somebody_else_ends_the_session_before()
    {
        await server.AddPersonAsync("one", PersonRole.Reader);
        await server.AddPersonAsync("two", PersonRole.Reader);
        using var browser = new Browser(server);
        Assert.DoesNotContain("somebody else", (await browser.PageAsync("/sign-in")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        using var first = await browser.SignInAsync("one", ApiServer.Password);
        Assert.Contains("somebody else", (await browser.PageAsync("/sign-in")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        using var second = await browser.SignInAsync("two", ApiServer.Password);
        Assert.Equal(HttpStatusCode.Redirect, await Browser.OpenAsync(server, Browser.CookieOf(first)));
        Assert.Equal(HttpStatusCode.OK, await Browser.OpenAsync(server, Browser.CookieOf(second)));
    }

    [Fact]
    public async Task A_session_that_nobody_used_for_twelve_hours_is_over_though_the_cookie_is_not()
    {
        await server.AddPersonAsync("reader", PersonRole.Reader);
        using var browser = new Browser(server);
        using var signedIn = await browser.SignInAsync("reader", ApiServer.Password);
        await DoAsync("update page_sessions set last_used_time = last_used_time - interval '12 hours'");
        Assert.Equal(HttpStatusCode.Redirect, await Browser.OpenAsync(server, Browser.CookieOf(signedIn)));
        using var again = await browser.SignInAsync("reader", ApiServer.Password);
        Assert.Equal(1L, await server.CountAsync("page_sessions")); // what is over is removed
    }

    [Fact]
    public async Task The_demo_takes_its_visitor_for_a_labelled_director_on_pages_and_in_no_call()
    {
        await using var demo = await ApiServer.StartAsync(postgres, settings => settings with { DemoDirector = true });
        using var anybody = new Browser(demo);
        Assert.Contains("Signed in: Demo director (synthetic)", (await anybody.PageAsync("/")).QuerySelector("header")!.TextContent, StringComparison.Ordinal);
        Assert.NotNull((await anybody.PageAsync("/parameters")).QuerySelector("form[action='/parameters']"));
        Assert.Empty((await anybody.PageAsync("/people")).QuerySelectorAll("form"));
        Assert.Empty((await anybody.PageAsync("/sign-in")).QuerySelectorAll("form"));
        using var linked = await anybody.GetAsync("/v1/reports");
        using var beyond = await anybody.GetAsync("/v1/keys");
        using var changing = await anybody.PostAsync("/v1/trends:refresh", [], null);
        Assert.Equal(
            (HttpStatusCode.OK, HttpStatusCode.Forbidden, HttpStatusCode.Unauthorized), (linked.StatusCode, beyond.StatusCode, changing.StatusCode));
    }

    private async Task DoAsync(string statement)
    {
        await using var command = server.Database.DataSource.CreateCommand(statement);
        await command.ExecuteNonQueryAsync();
    }
}
