using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.IntegrationTests.Trends;
using FleetTrend.Reports.Tests;
using FleetTrend.Reports.Weekly;
using FleetTrend.Store.Reports;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Pages;

/// <summary>The pages, served by the real host from a real database filled with an invented fleet.</summary>
[Collection(SharedPostgres.Name)]
public sealed class PagesTests(PostgresFixture postgres) : IAsyncLifetime
{
    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task Before_the_first_refresh_the_page_says_what_is_missing()
    {
        var page = await PageAsync("/");
        Assert.Equal("No trends yet", page.QuerySelector("h1")!.TextContent);
        Assert.Contains(Cautions.Brief, page.QuerySelector("footer")!.TextContent);
        Assert.Empty(page.QuerySelectorAll("table"));
    }

    [Fact]
    public async Task Before_the_first_report_the_fleet_is_there()
    {
        await SaveSnapshotAsync();
        var page = await PageAsync("/");
        Assert.Contains("No weekly report has been made yet", page.QuerySelector("main")!.TextContent);
        var list = await PageAsync("/aircraft");
        Assert.Equal(12, list.QuerySelectorAll("section[aria-labelledby=ft-fleet-now] tbody tr").Length);
        Assert.Contains("22 Nov 2026 05:30 UTC", page.QuerySelector(".status")!.TextContent);
        Assert.Contains("0.1.0+test", page.QuerySelector(".status")!.TextContent);
    }

    [Fact]
    public async Task What_stands_first_in_the_latest_report_stands_first_and_leads_to_its_plots()
    {
        await SaveSnapshotAsync();
        var fleet = await SaveReportAsync(ReportScope.WholeFleet);
        var home = await SaveReportAsync(new ReportScope(InventedFleet.Home));
        var page = await PageAsync("/");
        Assert.Equal("Weekly trend report: the whole fleet, 16 to 22 Nov 2026", page.QuerySelector("#report h1")!.TextContent);
        Assert.Single(page.QuerySelectorAll("h1"));
        Assert.Contains(Cautions.Brief, page.QuerySelector("#report")!.TextContent);
        var whole = await PageAsync(page.QuerySelector($"#report a[href='/reports/{fleet}']")!.GetAttribute("href")!);
        var sections = whole.QuerySelectorAll("main section h2").Select(h => h.TextContent).ToList();
        var brief = page.QuerySelectorAll("main section[aria-labelledby^=ft-brief-] h2").Select(h => h.TextContent).ToList();
        Assert.Equal("Pull in", brief[0]);
        Assert.Equal(sections.Take(brief.Count), brief);
        Assert.True(sections.Count > brief.Count);
        Assert.NotNull(page.QuerySelector($"nav a[href='/reports/{home}']"));
        Assert.NotNull(page.QuerySelector($"#archive + ul a[href='/reports/{fleet}']"));
        // The strip has every aircraft that flies, each a link with what is drawn in words.
        var flying = InventedFleet.Snapshot().Fleet.Where(l => l.RetiredDate is null).Select(l => l.Registration).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(flying.Select(r => $"/aircraft/{r}"), page.QuerySelectorAll(".ft-strip a").Select(a => a.GetAttribute("href")));
        Assert.Equal(flying, page.QuerySelectorAll(".ft-strip title").Select(t => t.TextContent.Split(':')[0]));
        var images = whole.QuerySelectorAll("img");
        Assert.Equal(3, images.Length);
        foreach (var image in images)
        {
            using var answer = await server.Http.GetAsync(image.GetAttribute("src"));
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.Equal("image/png", answer.Content.Headers.ContentType!.MediaType);
        }

        // Each identifier once, or a link leads to the wrong place.
        foreach (var shown in new[] { page, whole })
        {
            var identifiers = shown.QuerySelectorAll("[id]").Select(e => e.Id!).ToList();
            Assert.Equal(identifiers.Distinct(StringComparer.Ordinal), identifiers);
        }
    }

    [Fact]
    public async Task A_stored_report_has_a_page_of_its_own_and_a_missing_one_says_so()
    {
        var home = await SaveReportAsync(new ReportScope(InventedFleet.Home));
        var page = await PageAsync($"/reports/{home}");
        Assert.Equal("Weekly trend report: Quillmoor, 16 to 22 Nov 2026", page.QuerySelector("h1")!.TextContent);
        using var wall = await server.Http.GetAsync(page.QuerySelector("main a[href$='.pdf']")!.GetAttribute("href"));
        Assert.Equal("application/pdf", wall.Content.Headers.ContentType!.MediaType);
        Assert.StartsWith("%PDF-", await wall.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        using var noWall = await server.Http.GetAsync($"/reports/{home + 1000}/wall.pdf");
        Assert.Equal(HttpStatusCode.NotFound, noWall.StatusCode);
        using var missing = await server.Http.GetAsync($"/reports/{home + 1000}");
        Assert.Equal(HttpStatusCode.NotFound, missing.StatusCode);
        Assert.Contains("No such report", await missing.Content.ReadAsStringAsync());
        using var noPlot = await server.Http.GetAsync($"/reports/{home}/plots/none.png");
        Assert.Equal(HttpStatusCode.NotFound, noPlot.StatusCode);
    }

    [Fact] // Stored before documents were kept: the mail is all there is.
    public async Task A_report_of_an_earlier_version_is_shown_as_it_was_mailed()
    {
        await SaveSnapshotAsync();
        var fleet = await SaveReportAsync(ReportScope.WholeFleet, isOld: true);
        foreach (var path in new[] { "/", $"/reports/{fleet}" })
        {
            var page = await PageAsync(path);
            Assert.Single(page.QuerySelectorAll("h1"));
            var frame = Assert.Single(page.QuerySelectorAll("iframe"));
            Assert.Equal("", frame.GetAttribute("sandbox"));
            using var answer = await server.Http.GetAsync(frame.GetAttribute("src"));
            Assert.EndsWith("; sandbox", Assert.Single(answer.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
            var mail = Parse(await answer.Content.ReadAsStringAsync());
            Assert.Equal("Weekly trend report: the whole fleet, 16 to 22 Nov 2026", mail.QuerySelector("h1")!.TextContent);
            Assert.Equal(3, mail.QuerySelectorAll("img").Length);
            Assert.All(mail.QuerySelectorAll("[src]"), e => Assert.StartsWith("data:image/png;base64,", e.GetAttribute("src"), StringComparison.Ordinal));
        }

        using var missing = await server.Http.GetAsync($"/reports/{fleet + 1000}/mail");
        Assert.Equal(HttpStatusCode.NotFound, missing.StatusCode);
    }

    [Fact]
    public async Task Every_page_of_the_menu_has_a_title_one_heading_and_its_place_in_the_menu()
    {
        await SaveSnapshotAsync();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var left = new Queue<string>(["/"]);
        while (left.TryDequeue(out var path))
        {
            if (!seen.Add(path))
                continue;
            var page = await PageAsync(path);
            Assert.False(page.Title!.StartsWith(" -", StringComparison.Ordinal), path);
            Assert.Single(page.QuerySelectorAll("h1"));
            var menu = page.QuerySelectorAll("header nav a").ToList();
            Assert.True(path == "/sign-in" || menu.Exists(a => a.GetAttribute("href") == path && a.HasAttribute("aria-current")), path);
            foreach (var link in menu)
                left.Enqueue(link.GetAttribute("href")!);
        }

        Assert.InRange(seen.Count, 15, 40);
    }

    [Fact]
    public async Task A_notice_stands_on_every_page()
    {
        await using var noticed = await ApiServer.StartAsync(postgres, settings => settings with { Notice = "Synthetic <data>" });
        foreach (var path in (string[])["/", "/aircraft", "/locations", "/sign-in", "/reports/1"])
        {
            using var answer = await noticed.Http.GetAsync(path);
            Assert.Equal("Synthetic <data>", Parse(await answer.Content.ReadAsStringAsync()).QuerySelector("main > .ft-notice")?.TextContent);
        }
    }

    [Fact]
    public async Task A_report_with_the_notice_of_the_page_says_it_once_and_one_with_another_keeps_its_own()
    {
        await SaveSnapshotAsync();
        var report = await SaveReportAsync(ReportScope.WholeFleet);
        var said = InventedFleet.Inputs(ReportScope.WholeFleet).Notice!;
        foreach (var (onPage, ofReport) in new[] { (said, 0), ("another", 1) })
        {
            var html = Api.Pages.ReportPages.Render((await server.Services.GetRequiredService<ReportStore>().GetAsync(report, default))!, onPage);
            Assert.Equal(ofReport, Parse(html).QuerySelectorAll(".ft-notice").Length);
        }
    }

    [Fact]
    public async Task Nothing_runs_and_nothing_comes_from_elsewhere()
    {
        await SaveSnapshotAsync();
        var report = await SaveReportAsync(ReportScope.WholeFleet);
        foreach (var path in new[] { "/", $"/reports/{report}" })
        {
            using var answer = await server.Http.GetAsync(path);
            Assert.StartsWith("default-src 'none'", Assert.Single(answer.Headers.GetValues("Content-Security-Policy")));
            var page = Parse(await answer.Content.ReadAsStringAsync());
            Assert.Empty(page.QuerySelectorAll("script, iframe, form, object"));
            Assert.All(page.QuerySelectorAll("[src]"), e => Assert.StartsWith("/", e.GetAttribute("src")));
            Assert.Equal(["/icon.svg", "/site.css"], page.QuerySelectorAll("link").Select(l => l.GetAttribute("href")));
        }

        using var sheet = await server.Http.GetAsync("/site.css");
        Assert.Equal("text/css", sheet.Content.Headers.ContentType!.MediaType);
        Assert.DoesNotContain("url(", await sheet.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task A_number_leads_to_the_rows_behind_it()
    {
        await SaveSnapshotAsync();
        await ShopCards.RegisterAsync(server); // what the links name is registered, as it is where a refresh has made the trends
        await server.Intake.PushRecordAsync(new PushRecordRequest { Record = ShopCards.Aircraft("ZZ-A07") });
        await server.Layouts.CreateTypeGroupAsync(new CreateTypeGroupRequest
        {
            TypeGroup = new TypeGroup { Name = InventedFleet.Trainer, Title = "Trainer", Layout = "four-cylinder-muffler-clamp" },
        });
        var report = await SaveReportAsync(ReportScope.WholeFleet);
        var links = (await PageAsync($"/reports/{report}")).QuerySelectorAll(".ft-card a").Select(a => new Uri(a.GetAttribute("href")!)).ToList();
        Assert.Equal(3, links.Count); // two reasons on one tail, one base
        foreach (var link in links)
        {
            using var answer = await server.Http.GetAsync(link.PathAndQuery);
            Assert.True(answer.IsSuccessStatusCode, $"{link.PathAndQuery}: {await answer.Content.ReadAsStringAsync()}");
        }
    }

    private static IDocument Parse(string html) => new HtmlParser().ParseDocument(html);

    private async Task<IDocument> PageAsync(string path)
    {
        using var answer = await server.Http.GetAsync(path);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return Parse(await answer.Content.ReadAsStringAsync());
    }

    private Task SaveSnapshotAsync() => server.Services.PublishAsync(InventedFleet.Snapshot());

    private async Task<long> SaveReportAsync(ReportScope scope, bool isOld = false)
    {
        var composed = WeeklyReport.Compose(InventedFleet.Snapshot(), InventedFleet.WeekBefore(), InventedFleet.AllFlags(scope));
        var report = isOld ? composed.RenderWhole() : composed.Render();
        var saved = await server.Services.GetRequiredService<ReportStore>().SaveAsync(
            new StoredReport
            {
                Base = scope.Base ?? "*",
                PeriodStart = InventedFleet.Week.Start,
                PeriodEnd = InventedFleet.Week.End,
                AsOf = InventedFleet.AsOf,
                CodeVersion = "0.1.0+test",
                ParametersJson = "{}",
                Subject = report.Subject,
                Text = report.Text,
                Html = report.Html,
                DocumentJson = isOld ? null : report.DocumentJson,
                Plots = report.Plots,
                MessageIdSeed = scope.Title,
            },
            [],
            default);
        return saved.ReportId;
    }
}
