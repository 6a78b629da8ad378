using System.Net;
using AngleSharp.Dom;
using FleetTrend.Api;
using FleetTrend.Api.People;
using FleetTrend.Hosting.Configuration;
using FleetTrend.IntegrationTests.Access;
using FleetTrend.Store.People;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace FleetTrend.IntegrationTests.Pages;

/// <summary>How people get and lose the right to sign in: the first link, links for passwords, roles, disabling.</summary>
[Collection(SharedPostgres.Name)]
public sealed class PeopleTests(PostgresFixture postgres) : IAsyncLifetime, IDisposable
{
    private const string NewPassword = "other words than before";

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("fleettrend-people-");
    private readonly LineLog log = new();
    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(
        postgres, settings => settings with { DataFolder = folder.FullName }, builder => builder.Logging.AddProvider(log));

    public async Task DisposeAsync()
    {
        await server.DisposeAsync();
        folder.Delete(recursive: true);
    }

    public void Dispose() => log.Dispose();

    [Fact]
    public async Task The_first_start_writes_a_link_and_of_two_who_use_it_at_once_on_two_servers_one_becomes_the_administrator()
    {
        await using var beside = await ApiServer.StartBesideAsync(server, folder.FullName);
        await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => ApiHost.PrepareAsync(server.App, default)));
        var link = await LinkInFileAsync();
        await ApiHost.PrepareAsync(server.App, default); // a restart keeps a link that is good
        Assert.Equal(link, await LinkInFileAsync());
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(LinkFile));

        using var one = new Browser(server);
        using var two = new Browser(beside);
        var marks = new[] { await one.MarkAsync(link), await two.MarkAsync(link) };
        using (var tooShort = await one.PostAsync("/first-sign-in", First(link, "one", "too short"), marks[0]))
        {
            Assert.Equal(HttpStatusCode.BadRequest, tooShort.StatusCode);
            var page = await Browser.ReadAsync(tooShort);
            Assert.Contains("must have 12 to 128 characters; got 9", page.QuerySelector("#first-password-error")!.TextContent, StringComparison.Ordinal);
            Assert.DoesNotContain("too short", page.Source.Text, StringComparison.Ordinal);
        }

        var answers = await Task.WhenAll(
            one.PostAsync("/first-sign-in", First(link, "one", NewPassword), marks[0]), two.PostAsync("/first-sign-in", First(link, "two", NewPassword), marks[1]));

        Assert.Equal([HttpStatusCode.Redirect, HttpStatusCode.NotFound], answers.Select(a => a.StatusCode).Order());
        Assert.Equal("/people", answers.Single(a => a.StatusCode == HttpStatusCode.Redirect).Headers.Location!.OriginalString);
        Array.ForEach(answers, answer => answer.Dispose());
        Assert.Equal((1, 1, 0), (await server.CountAsync("people"), await server.CountAsync("people where role = 3"), await server.CountAsync("first_links")));
        using (var again = await one.GetAsync(link))
            Assert.Equal(HttpStatusCode.NotFound, again.StatusCode);
        Assert.False(File.Exists(LinkFile));
        await ApiHost.PrepareAsync(server.App, default);
        Assert.False(File.Exists(LinkFile)); // there is an administrator

        await DoAsync("update people set disable_time = now()"); // the way back where nobody can sign in any more
        await ApiHost.PrepareAsync(server.App, default);
        var anew = await LinkInFileAsync();
        Assert.NotEqual(link, anew);
        await DoAsync("update first_links set create_time = create_time - interval '25 hours'");
        using var old = await one.GetAsync(anew);
        Assert.Equal(HttpStatusCode.NotFound, old.StatusCode);
        NothingIsTold(link.Split("token=")[1], anew.Split("token=")[1], NewPassword);
    }

    [Fact]
    public async Task Where_the_file_cannot_be_written_there_is_no_link_that_nobody_knows()
    {
        Directory.CreateDirectory(LinkFile);
        var failure = await Assert.ThrowsAsync<IOException>(() => FirstSignInAsync());
        Assert.Contains(SettingNames.DataFolder, failure.Message, StringComparison.Ordinal);
        Assert.Equal(0, await server.CountAsync("first_links"));

        Task FirstSignInAsync() => ApiHost.PrepareAsync(server.App, default);
    }

    [Fact]
    public async Task Who_is_added_chooses_a_password_with_a_link_that_is_good_once_and_for_a_day()
    {
        using var administrator = await Browser.SignedInAsync(server, "administrator", PersonRole.Administrator);
        var link = await AddAsync(administrator, "A. Director <i>", "lead@shop.example", "Director");
        using var director = new Browser(server);
        Assert.Contains("A. Director <i>", (await director.PageAsync(link)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        using (var set = await director.SendAsync(link, "form", new() { ["password"] = NewPassword }))
            Assert.Equal((HttpStatusCode.Redirect, "/"), (set.StatusCode, set.Headers.Location!.OriginalString));
        Assert.Contains("Signed in: A. Director <i>", (await director.PageAsync("/")).QuerySelector("header")!.TextContent, StringComparison.Ordinal);
        using (var used = await director.GetAsync(link))
            Assert.Equal(HttpStatusCode.NotFound, used.StatusCode);
        using (var other = await new Browser(server).SignInAsync("lead@shop.example", NewPassword))
            Assert.Equal(HttpStatusCode.Redirect, other.StatusCode);

        foreach (var (name, address, field) in new[]
        {
            ("a. director <I>", "other@shop.example", "name"), ("Other", "LEAD@shop.example", "address"), ("", "o@shop.example", "name"), ("o@b", "o@shop.example", "name"),
            ("Other", "no address", "address"), (new string('x', 61), "o@shop.example", "name"),
        })
        {
            using var refused = await administrator.SendAsync("/people", "form", new() { ["name"] = name, ["address"] = address, ["role"] = "Reader" });
            Assert.True(refused.StatusCode is HttpStatusCode.BadRequest or HttpStatusCode.Conflict, $"{name} {refused.StatusCode}");
            var page = await Browser.ReadAsync(refused);
            Assert.NotEmpty(page.QuerySelector($"#add-{field}-error")!.TextContent);
            Assert.Equal(address, page.QuerySelector("#add-address")!.GetAttribute("value"));
        }

        Assert.Equal(2, await server.CountAsync("people"));
        var unused = await AddAsync(administrator, "Late", "late@shop.example", "Reader");
        foreach (var bent in new[] { unused[..^4] + "AAAA", unused.Replace("person=", "person=9", StringComparison.Ordinal), "/set-password", "/set-password?person=1&token=x" })
        {
            using var bad = await director.GetAsync(bent);
            Assert.Equal((bent, HttpStatusCode.NotFound), (bent, bad.StatusCode));
        }

        NothingIsTold(Uri.UnescapeDataString(link.Split("token=")[1]), Uri.UnescapeDataString(unused.Split("token=")[1]), NewPassword);
    }

    [Fact]
    public async Task A_link_from_an_administrator_ends_sessions_and_links_before_and_unlocks()
    {
        using var administrator = await Browser.SignedInAsync(server, "administrator", PersonRole.Administrator);
        using var reader = await Browser.SignedInAsync(server, "reader", PersonRole.Reader);
        await DoAsync("update people set locked_until_time = now() + interval '10 minutes' where name = 'reader'");
        var first = await RenewAsync(administrator, "reader");
        using (var page = await reader.GetAsync("/"))
            Assert.Equal(HttpStatusCode.Redirect, page.StatusCode);
        var second = await RenewAsync(administrator, "reader");
        using (var old = await reader.GetAsync(first))
            Assert.Equal(HttpStatusCode.NotFound, old.StatusCode);
        using (var set = await reader.SendAsync(second, "form", new() { ["password"] = NewPassword }))
            Assert.Equal(HttpStatusCode.Redirect, set.StatusCode);
        using var before = new Browser(server);
        using (var refused = await before.SignInAsync("reader", ApiServer.Password))
            Assert.Equal(HttpStatusCode.Unauthorized, refused.StatusCode);
        using var signedIn = await before.SignInAsync("reader", NewPassword);
        Assert.Equal(HttpStatusCode.Redirect, signedIn.StatusCode);
    }

    [Fact]
    public async Task A_disabled_person_loses_the_session_at_once_on_every_server_and_enabling_does_not_bring_it_back()
    {
        await using var beside = await ApiServer.StartBesideAsync(server, folder.FullName);
        using var administrator = await Browser.SignedInAsync(server, "administrator", PersonRole.Administrator);
        await server.AddPersonAsync("director", PersonRole.Director);
        using var director = new Browser(server);
        using var signedIn = await director.SignInAsync("director", ApiServer.Password);
        var cookie = Browser.CookieOf(signedIn);
        var link = await RenewAsync(administrator, "director");
        using var again = await director.SignInAsync("director", ApiServer.Password);
        cookie = Browser.CookieOf(again);
        Assert.Equal(HttpStatusCode.OK, await Browser.OpenAsync(beside, cookie));

        await SendAsync(administrator, "director", "Disable", []);

        Assert.Equal(HttpStatusCode.Redirect, await Browser.OpenAsync(server, cookie));
        Assert.Equal(HttpStatusCode.Redirect, await Browser.OpenAsync(beside, cookie));
        using (var refused = await director.SignInAsync("director", ApiServer.Password))
            Assert.Equal(HttpStatusCode.Unauthorized, refused.StatusCode);
        using (var dead = await director.GetAsync(link))
            Assert.Equal(HttpStatusCode.NotFound, dead.StatusCode);
        await SendAsync(administrator, "director", "Enable", []);
        Assert.Equal(HttpStatusCode.Redirect, await Browser.OpenAsync(server, cookie));
        using var back = await director.SignInAsync("director", ApiServer.Password);
        Assert.Equal(HttpStatusCode.Redirect, back.StatusCode);
    }

    [Fact]
    public async Task A_role_counts_from_the_next_request_and_nobody_changes_his_own()
    {
        using var administrator = await Browser.SignedInAsync(server, "administrator", PersonRole.Administrator);
        using var second = await Browser.SignedInAsync(server, "second", PersonRole.Administrator);
        var mark = await second.MarkAsync("/people");
        var first = await AddressAsync(administrator, "administrator");
        Assert.Empty((await administrator.PageAsync(first)).QuerySelectorAll("form"));
        await SendAsync(administrator, "second", "Role", new() { ["role"] = "Reader" });
        using (var refused = await second.PostAsync($"{first}?handler=Disable", [], mark))
            Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
        Assert.NotNull((await second.PageAsync("/parameters")).QuerySelector(".why-not"));

        var own = await administrator.MarkAsync("/people");
        foreach (var handler in new[] { "Role", "Renew", "Disable" })
        {
            using var refused = await administrator.PostAsync($"{first}?handler={handler}", new() { ["role"] = "Reader" }, own);
            Assert.Equal((handler, HttpStatusCode.BadRequest), (handler, refused.StatusCode));
            Assert.Contains("must be somebody else", (await Browser.ReadAsync(refused)).QuerySelector("[role=alert]")!.TextContent, StringComparison.Ordinal);
        }

        using var nobody = await administrator.PostAsync("/people/99999?handler=Disable", [], own);
        Assert.Equal(HttpStatusCode.NotFound, nobody.StatusCode);
        Assert.Equal(1, await server.CountAsync("people where role = 3 and disable_time is null"));
    }

    [Fact]
    public async Task A_changed_password_ends_the_other_sessions_and_takes_the_one_from_before()
    {
        using var here = await Browser.SignedInAsync(server, "director", PersonRole.Director);
        using var there = new Browser(server);
        using var elsewhere = await there.SignInAsync("director", ApiServer.Password);
        using (var wrong = await here.SendAsync("/password", "form", new() { ["current_password"] = "something else", ["new_password"] = NewPassword }))
            Assert.Equal(HttpStatusCode.Unauthorized, wrong.StatusCode);
        using (var tooShort = await here.SendAsync("/password", "form", new() { ["current_password"] = ApiServer.Password, ["new_password"] = "short" }))
            Assert.Equal(HttpStatusCode.BadRequest, tooShort.StatusCode);
        Assert.Equal(HttpStatusCode.OK, await Browser.OpenAsync(server, Browser.CookieOf(elsewhere)));
        using (var changed = await here.SendAsync("/password", "form", new() { ["current_password"] = ApiServer.Password, ["new_password"] = NewPassword }))
            Assert.Equal("/password?done=change", changed.Headers.Location!.OriginalString);
        Assert.NotNull((await here.PageAsync("/password?done=change")).QuerySelector("[role=status]"));
        Assert.Equal(HttpStatusCode.Redirect, await Browser.OpenAsync(server, Browser.CookieOf(elsewhere)));
        using var again = await there.SignInAsync("director", NewPassword);
        Assert.Equal(HttpStatusCode.Redirect, again.StatusCode);
        NothingIsTold(NewPassword, ApiServer.Password);
    }

    private string LinkFile => FirstSignIn.PathIn(server.Services.GetRequiredService<HostSettings>());

    private static Dictionary<string, string> First(string link, string name, string password) => new(StringComparer.Ordinal)
    {
        ["token"] = link.Split("token=")[1],
        ["name"] = name,
        ["address"] = $"{name}@shop.example",
        ["password"] = password,
    };

    /// <summary>The path of a link, wherever people reach the pages.</summary>
    private static string PathOf(string link) => new Uri(link.Trim()).PathAndQuery;

    private static string Shown(IDocument page) => PathOf(page.QuerySelector("[role=status] code")!.TextContent);

    private async Task<string> LinkInFileAsync() => PathOf(await File.ReadAllTextAsync(LinkFile));

    private static async Task<string> AddAsync(Browser administrator, string name, string address, string role)
    {
        using var added = await administrator.SendAsync("/people", "form", new() { ["name"] = name, ["address"] = address, ["role"] = role });
        Assert.Equal(HttpStatusCode.OK, added.StatusCode);
        return Shown(await Browser.ReadAsync(added));
    }

    private static async Task<string> AddressAsync(Browser administrator, string name) =>
        (await administrator.PageAsync("/people")).QuerySelectorAll("tbody th a").Single(a => a.TextContent == name).GetAttribute("href")!;

    private static async Task<string> RenewAsync(Browser administrator, string name)
    {
        using var renewed = await administrator.SendAsync(await AddressAsync(administrator, name), "form[action$=Renew]", []);
        Assert.Equal(HttpStatusCode.OK, renewed.StatusCode);
        return Shown(await Browser.ReadAsync(renewed));
    }

    private static async Task SendAsync(Browser administrator, string name, string handler, Dictionary<string, string> typed)
    {
        using var sent = await administrator.SendAsync(await AddressAsync(administrator, name), $"form[action$={handler}]", typed);
        Assert.Equal((handler, HttpStatusCode.Redirect), (handler, sent.StatusCode));
    }

    /// <summary>Neither the log nor a row of the database holds a secret as it is.</summary>
    private void NothingIsTold(params string[] secrets)
    {
        using var command = server.Database.DataSource.CreateCommand(
            "select coalesce(string_agg(line, ' '), '') from (select people::text line from people union all select page_sessions::text from page_sessions union all select first_links::text from first_links) rows");
        var rows = (string)command.ExecuteScalar()!;
        foreach (var secret in secrets)
        {
            Assert.DoesNotContain(log.Lines, line => line.Contains(secret, StringComparison.Ordinal));
            Assert.DoesNotContain(secret, rows, StringComparison.Ordinal);
        }
    }

    private async Task DoAsync(string statement)
    {
        await using var command = server.Database.DataSource.CreateCommand(statement);
        await command.ExecuteNonQueryAsync();
    }
}
