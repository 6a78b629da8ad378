using System.Globalization;
using System.Text;
using AngleSharp.Html.Parser;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Refreshes;
using FleetTrend.Store.Reports;
using FleetTrend.Synthetic;
using FleetTrend.Worker.Reports;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace FleetTrend.IntegrationTests.Chromium;

/// <summary>The pages in a browser, on the demo's fleet: the director's week, the mechanic's phone, and every page by the rules of axe-core.</summary>
[Collection(SharedPostgres.Name)]
public sealed class BrowserTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const int Desk = 1280;
    private const int Phone = 360;

    private ApiServer server = null!;
    private SyntheticFleet fleet = null!;
    private IPlaywright playwright = null!;
    private IBrowser browser = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres, settings => settings with { DemoDirector = true, Notice = "Synthetic data." });
        fleet = await DemoFleet.PushAsync(server);
        await Refresh().RunAsync(default);
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(BrowserWindow.Options);
    }

    public async Task DisposeAsync()
    {
        await browser.CloseAsync();
        playwright.Dispose();
        await server.DisposeAsync();
    }

    [Fact]
    public async Task The_director_goes_through_the_week()
    {
        var bad = fleet.Planted[0].Registration;
        await using var window = await BrowserWindow.OpenAsync(browser, server.HttpAddress, Desk);

        // From the mail to the aircraft, its call and its look list on paper.
        await window.GoAsync(await MailedLinkAsync());
        Assert.Equal(bad, await window.HeadingAsync());
        await NoFaultsAsync(window);
        await window.Page.ClickAsync("a:has-text('Look list to print')");
        Assert.Contains(bad, await window.HeadingAsync(), StringComparison.Ordinal);
        Assert.StartsWith("%PDF-", Encoding.ASCII.GetString(await window.Page.PdfAsync(), 0, 5), StringComparison.Ordinal);
        await window.Page.GoBackAsync();
        await window.Page.ClickAsync("section[aria-labelledby=ft-flag] a[href^='/flags/'], section a[href^='/flags/']");
        Assert.Matches($"^Flag [0-9]+: {bad}$", await window.HeadingAsync());
        var call = new Uri(window.Page.Url).AbsolutePath;

        // The visitor of the demo is its director, and labelled so.
        await AnswerAsync(window, "acknowledge", ("comment", "borescope on Tuesday"));
        Assert.Equal(call, new Uri(window.Page.Url).AbsolutePath);
        Assert.Matches(@"(?i)^Recorded: acknowledged by .Demo director \(synthetic\)", await window.Page.Locator("p.done").InnerTextAsync());
        await NoFaultsAsync(window);
        await AnswerAsync(window, "act", ("action_date", Today()), ("comment", "muffler renewed"));
        Assert.Matches("(?i)^Recorded: acted on", await window.Page.Locator("p.done").InnerTextAsync());

        // At the next refresh what was done is listed, and it is too early to tell.
        await Refresh().RunAsync(default);
        await window.GoAsync("/effects");
        var effect = window.Page.Locator($"tr:has-text('{bad}')").First;
        Assert.Matches("(?i)too early", await effect.InnerTextAsync());
        await NoFaultsAsync(window);
    }

    [Fact]
    public async Task The_mechanic_finds_the_look_list_on_a_phone()
    {
        var bad = fleet.Planted[0].Registration;
        await using var window = await BrowserWindow.OpenAsync(browser, server.HttpAddress, Phone);
        await window.GoAsync("/");
        await window.Page.ClickAsync("header a:has-text('Aircraft')");
        await window.Page.FillAsync("#search", bad);
        await window.Page.ClickAsync("button:has-text('Show')");
        await NoFaultsAsync(window);
        await window.Page.ClickAsync($"main a[href='/aircraft/{bad}']");
        await NoFaultsAsync(window);
        await window.Page.ClickAsync("a:has-text('Look list to print')");
        await NoFaultsAsync(window);
        Assert.True(await window.Page.Locator("main section li, main section tr").CountAsync() > 20);
    }

    [Fact]
    public async Task Every_page_passes_axe_light_and_dark_narrow_and_wide()
    {
        await MailedLinkAsync();
        var bad = fleet.Planted[0].Registration;
        List<string> found = [];
        foreach (var (width, isDark) in new[] { (320, false), (320, true), (Desk, false), (Desk, true) })
        {
            await using var window = await BrowserWindow.OpenAsync(browser, server.HttpAddress, width, isDark);
            await window.GoAsync("/");
            List<string> left =
            [
                "/", "/reports/1", $"/aircraft/{bad}", $"/aircraft/{bad}/look-list", "/flags/1", "/parts/synthetic-trainer-four/gasket",
                "/locations/synthetic-trainer-four/exhaust/muffler/shell",
            ];
            var seen = new HashSet<string>(left, StringComparer.Ordinal);
            for (var i = 0; i < left.Count; i++)
            {
                await window.GoAsync(left[i]);
                found.AddRange((await window.ListFaultsAsync()).Select(f => $"{left[i]} at {width}{(isDark ? ", dark" : "")}: {f}"));
                foreach (var link in await window.Page.Locator("header nav a").EvaluateAllAsync<string[]>("links => links.map(a => a.getAttribute('href'))"))
                    if (seen.Add(link)) left.Add(link);
            }

            Assert.InRange(left.Count, 25, 60);
        }

        Assert.Empty(found);
    }

    private static async Task AnswerAsync(BrowserWindow window, string form, params (string Name, string Value)[] fields)
    {
        foreach (var (name, value) in fields)
            await window.Page.FillAsync($"form[aria-labelledby={form}] [name={name}]", value);
        await window.Page.ClickAsync($"form[aria-labelledby={form}] button[type=submit]");
    }

    private static async Task NoFaultsAsync(BrowserWindow window) => Assert.Empty(await window.ListFaultsAsync());

    private static string Today() => DateTime.UtcNow.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private TrendRefresh Refresh() => ActivatorUtilities.CreateInstance<TrendRefresh>(server.Services);

    /// <summary>Writes the week's report, and takes the first link to an aircraft from its mail.</summary>
    private async Task<string> MailedLinkAsync()
    {
        var today = DateOnly.FromDateTime(DateTime.UtcNow);
        var writer = ActivatorUtilities.CreateInstance<ReportWriter>(server.Services, Refresh());
        await writer.WriteAsync(new ReportPeriod(today.AddDays(-6), today), default);
        var mail = await server.Services.GetRequiredService<ReportStore>().LatestAsync(ReportScope.WholeFleet, default);
        var link = new HtmlParser().ParseDocument(mail!.Html).QuerySelectorAll("a").Select(a => a.GetAttribute("href")!)
            .First(h => h.Contains("/aircraft/", StringComparison.Ordinal));
        return new Uri(link).AbsolutePath;
    }
}
