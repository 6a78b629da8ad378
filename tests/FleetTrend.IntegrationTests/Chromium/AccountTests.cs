using FleetTrend.Api;
using FleetTrend.Api.People;
using FleetTrend.Hosting.Configuration;
using FleetTrend.IntegrationTests.Trends;
using FleetTrend.Reports.Tests;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace FleetTrend.IntegrationTests.Chromium;

/// <summary>Accounts in a browser: from the first start to the director's first answer, and the pages about accounts by the rules of axe-core.</summary>
[Collection(SharedPostgres.Name)]
public sealed class AccountTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const string Password = "some words to sign in with";

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("fleettrend-accounts-");
    private ApiServer server = null!;
    private IPlaywright playwright = null!;
    private IBrowser browser = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres, settings => settings with
        {
            DataFolder = folder.FullName,
            Mail = new MailSettings { Smtp = new SmtpSettings { Host = "127.0.0.1", Port = 9 } }, // there is none; the page has its form
        });
        var snapshot = InventedFleet.Snapshot();
        await server.Services.PublishAsync(snapshot);
        await server.Services.RaiseAsync(snapshot);
        await ApiHost.PrepareAsync(server.App, default);
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(BrowserWindow.Options);
    }

    public async Task DisposeAsync()
    {
        await browser.CloseAsync();
        playwright.Dispose();
        await server.DisposeAsync();
        folder.Delete(recursive: true);
    }

    [Fact]
    public async Task From_the_first_link_to_the_first_answer_and_out_again()
    {
        await using var administrator = await BrowserWindow.OpenAsync(browser, server.HttpAddress, 1280);
        await administrator.GoAsync(PathOf(await File.ReadAllTextAsync(FirstSignIn.PathIn(server.Services.GetRequiredService<HostSettings>()))));
        await FillAsync(administrator, ("name", "Shop office"), ("address", "office@shop.example"), ("password", Password));
        await administrator.Page.ClickAsync("button:has-text('Become the administrator')");
        Assert.Equal("People", await administrator.HeadingAsync());
        await FillAsync(administrator, ("name", "D. Rector"), ("address", "lead@shop.example"));
        await administrator.Page.SelectOptionAsync("[name=role]", "Director");
        await administrator.Page.ClickAsync("button:has-text('Add, and show the link')");
        var link = PathOf(await administrator.Page.Locator("[role=status] code").InnerTextAsync());

        await using var director = await BrowserWindow.OpenAsync(browser, server.HttpAddress, 360);
        await director.GoAsync(link);
        await FillAsync(director, ("password", Password));
        await director.Page.ClickAsync("button:has-text('Set the password')");
        await director.Page.ClickAsync("header a:has-text('Signed in: D. Rector')");
        await director.Page.ClickAsync("button:has-text('Sign out')");
        await director.GoAsync("/flags/1");
        Assert.Equal("Sign in", await director.HeadingAsync());
        await FillAsync(director, ("name", "D. Rector"), ("password", Password));
        await director.Page.ClickAsync("button:has-text('Sign in')");
        Assert.StartsWith("Flag 1", await director.HeadingAsync(), StringComparison.Ordinal);
        await director.Page.FillAsync("form[aria-labelledby=acknowledge] [name=comment]", "borescope on Tuesday");
        await director.Page.ClickAsync("form[aria-labelledby=acknowledge] button");
        Assert.Matches("(?i)^Recorded: acknowledged by .D. Rector", await director.Page.Locator("p.done").InnerTextAsync());
        Assert.Empty(await director.ListFaultsAsync());
    }

    [Fact]
    public async Task The_pages_about_accounts_pass_axe_signed_out_and_in_light_and_dark_narrow_and_wide()
    {
        List<string> found = [];
        var first = PathOf(await File.ReadAllTextAsync(FirstSignIn.PathIn(server.Services.GetRequiredService<HostSettings>())));
        var set = "";
        foreach (var (width, isDark) in new[] { (320, false), (320, true), (1280, false), (1280, true) })
        {
            await using var window = await BrowserWindow.OpenAsync(browser, server.HttpAddress, width, isDark);
            if (set.Length == 0)
            {
                await LookAsync(window, first);
                await FillAsync(window, ("name", "Shop office"), ("address", "office@shop.example"), ("password", Password));
                await window.Page.ClickAsync("button:has-text('Become the administrator')");
                await FillAsync(window, ("name", "D. Rector"), ("address", "a-long-address-of-the-director@of-the-maintenance.shop.example"));
                await window.Page.SelectOptionAsync("[name=role]", "Director");
                await window.Page.ClickAsync("button:has-text('Add, and show the link')");
                await FaultsAsync("the link that is shown");
                set = PathOf(await window.Page.Locator("[role=status] code").InnerTextAsync());
                await window.GoAsync("/sign-in");
                await window.Page.ClickAsync("button:has-text('Sign out')");
            }

            await LookAsync(window, "/sign-in");
            await LookAsync(window, "/forgot-password");
            await LookAsync(window, set);
            await window.GoAsync("/sign-in");
            await FillAsync(window, ("name", "Shop office"), ("password", Password));
            await window.Page.ClickAsync("button:has-text('Sign in')");
            foreach (var path in new[] { "/sign-in", "/password", "/people", "/people/1", "/people/2" })
                await LookAsync(window, path);

            async Task LookAsync(BrowserWindow shown, string path)
            {
                await shown.GoAsync(path);
                await FaultsAsync(path);
            }

            async Task FaultsAsync(string what) =>
                found.AddRange((await window.ListFaultsAsync()).Select(f => $"{what} at {width}{(isDark ? ", dark" : "")}: {f}"));
        }

        Assert.Empty(found);
    }

    private static string PathOf(string link) => new Uri(link.Trim()).PathAndQuery;

    private static async Task FillAsync(BrowserWindow window, params (string Name, string Value)[] fields)
    {
        foreach (var (name, value) in fields)
            await window.Page.FillAsync($"[name={name}]", value);
    }
}
