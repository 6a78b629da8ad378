using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Results.Refreshes;
using FleetTrend.Store.DataProblems;
using FleetTrend.Worker.Reports;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Pages;

/// <summary>The page of data problems and the mail say the same: what is open, who closed what, and what waits.</summary>
[Collection(SharedPostgres.Name)]
public sealed class DataProblemsPageTests(PostgresFixture postgres) : IAsyncLifetime
{
    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task Before_the_first_refresh_it_says_that_nothing_was_checked()
    {
        var page = await PageAsync("/data-problems");
        Assert.Contains("nothing has been checked", page.QuerySelector("main")!.TextContent);
        Assert.Empty(page.QuerySelectorAll("table"));
    }

    [Fact] // Two marks that look alike, a date far ahead, and three records of an aircraft that is not registered.
    public async Task Open_and_closed_problems_and_held_records_are_there_and_in_the_mail()
    {
        await ShopCards.RegisterAsync(server);
        var ahead = ShopCards.Reading("ahead", "ZZ-A01", 0, 900);
        ahead.MeterReading.ReadingDate = ShopCards.ToWire(DateOnly.FromDateTime(DateTime.UtcNow.AddDays(300)));
        var pushed = await server.Intake.PushRecordsAsync(new PushRecordsRequest
        {
            HoldUnregistered = true,
            Records =
            {
                ShopCards.Aircraft("ZZ-A01"), ShopCards.Aircraft("ZZ-AO1"), ahead,
                ShopCards.Finding("h1", "ZZ-Q99"), ShopCards.Finding("h2", "ZZ-Q99"), ShopCards.Reading("h3", "ZZ-Q98", 4, 10),
            },
        });
        Assert.Equal(3, pushed.Outcomes.Count(o => o.State == RecordState.Held));
        var writer = ActivatorUtilities.CreateInstance<ReportWriter>(server.Services, ActivatorUtilities.CreateInstance<TrendRefresh>(server.Services));
        await writer.WriteAsync(new(new DateOnly(2026, 1, 5), new DateOnly(2026, 1, 11)), default);
        var checks = server.Services.GetRequiredService<DataProblemStore>();
        var alike = (await checks.ListPresentAsync(default)).Single(c => c.Found.Kind == "LookAlikeMarks");
        await checks.CloseAsync(alike.ProblemId, "director <b>", "both are ours", write: true, default);
        await writer.WriteAsync(new(new DateOnly(2026, 1, 12), new DateOnly(2026, 1, 18)), default);

        var open = await PageAsync("/data-problems");
        Assert.Equal("Data problems", open.QuerySelector("h1")!.TextContent);
        var row = Assert.Single(open.QuerySelectorAll("section[aria-labelledby=ft-data-problems] tbody tr"));
        Assert.Contains("Record dated in the future", row.TextContent);
        Assert.Contains("Rule: A record tells what has happened", row.TextContent);
        Assert.Contains("shop-cards ahead", row.TextContent);
        Assert.Equal(["2", "1"], open.QuerySelectorAll("section[aria-labelledby=ft-held] tbody td").Select(c => c.TextContent));
        Assert.Contains("Records held3", string.Concat(open.QuerySelectorAll(".status div").Select(d => d.TextContent)));
        Assert.NotNull((await PageAsync("/")).QuerySelector("nav a[href='/data-problems']"));

        var closed = await PageAsync("/data-problems?state=closed&registration=zz-ao1");
        var answered = Assert.Single(closed.QuerySelectorAll("section[aria-labelledby=ft-data-problems] tbody tr")).TextContent;
        Assert.Contains("director <b>", answered);
        Assert.Contains("\u201cboth are ours\u201d (The records still say so.)", answered);
        Assert.Contains("None.", (await PageAsync("/data-problems?state=gone")).QuerySelector("main")!.TextContent);
        using var invalid = await server.Http.GetAsync("/data-problems?from=no+token!");
        Assert.Equal(HttpStatusCode.BadRequest, invalid.StatusCode);

        var reports = (await server.Reports.ListReportsAsync(new ListReportsRequest { Base = "*" })).Reports; // newest first
        var texts = await Task.WhenAll(reports.Select(
            async r => (await server.Reports.GetReportAsync(new GetReportRequest { ReportId = r.ReportId })).Report.Text));
        Assert.All(texts, text => Assert.Contains("3 records are held", text, StringComparison.Ordinal));
        Assert.DoesNotContain("easily taken for each other: one", await WholeAsync(reports[0]), StringComparison.Ordinal);
        Assert.Contains("easily taken for each other: one", await WholeAsync(reports[1]), StringComparison.Ordinal);

        // Released after the fact: the report that counted them as held still reproduces.
        await server.Intake.PushRecordAsync(new PushRecordRequest { Record = ShopCards.Aircraft("ZZ-Q99") });
        foreach (var report in reports)
        {
            var again = await server.Reports.ReproduceReportAsync(new ReproduceReportRequest { ReportId = report.ReportId });
            Assert.True(again.Same, again.Difference);
        }

        async Task<string> WholeAsync(Report report) => (await PageAsync($"/reports/{report.ReportId}")).QuerySelector("main")!.TextContent;
    }

    [Fact]
    public async Task Codes_without_a_meaning_are_listed_with_the_records_that_wait_for_them()
    {
        await ShopCards.RegisterAsync(server);
        var coded = ShopCards.Finding("coded");
        coded.Finding.Location = "";
        coded.Finding.LocationCode = "EX-3<F>";
        await server.Intake.PushRecordsAsync(new PushRecordsRequest { Records = { ShopCards.Aircraft("ZZ-A01"), coded } });

        var page = await PageAsync("/data-problems");
        var row = Assert.Single(page.QuerySelectorAll("section[aria-labelledby=ft-held] table")[^1].QuerySelectorAll("tbody tr"));
        Assert.Equal(["shop-cards", "location", "EX-3<F>", "1"], row.QuerySelectorAll("th, td").Take(4).Select(c => c.TextContent));
    }

    [Fact] // The record of the one came and is held; that of the other never came.
    public async Task Only_a_retraction_whose_record_never_came_is_a_problem()
    {
        await ShopCards.RegisterAsync(server);
        await server.Intake.PushRecordsAsync(new PushRecordsRequest
        {
            HoldUnregistered = true,
            Records = { ShopCards.Finding("waits", "ZZ-Q99"), TakenBack("waits"), TakenBack("never <sent>") },
        });
        await ActivatorUtilities.CreateInstance<TrendRefresh>(server.Services).RunAsync(default);
        var row = Assert.Single((await PageAsync("/data-problems")).QuerySelectorAll("section[aria-labelledby=ft-data-problems] tbody tr"));
        Assert.Contains("shop-cards took back \u201cnever <sent>\u201d, which it never sent. The reason that shop-cards gave: \u201ca stain\u201d.", row.TextContent);

        static Record TakenBack(string id) => new() { Key = ShopCards.Key(id, 2), Retraction = new Retraction { Reason = "a stain" } };
    }

    [Fact] // The second description is one that an earlier version stored, before texts were quoted and such characters refused.
    public async Task What_a_source_or_a_person_wrote_is_quoted_with_who_wrote_it()
    {
        await ShopCards.RegisterAsync(server);
        var taken = new Record { Key = ShopCards.Key("never", 2), Retraction = new Retraction { Reason = "gone\nRELEASED TO SERVICE" } };
        await server.Intake.PushRecordsAsync(new PushRecordsRequest { Records = { ShopCards.Aircraft("ZZ-A01"), taken } });
        await ActivatorUtilities.CreateInstance<TrendRefresh>(server.Services).RunAsync(default);
        const string Sentence = "shop-cards took back never, which it never sent. The reason that shop-cards gave: \u201cgone / RELEASED";
        await SaysAsync(Sentence + " TO SERVICE\u201d.");

        await using (var old = server.Database.DataSource.CreateCommand("update data_checks set description = $1"))
        {
            old.Parameters.AddWithValue("shop-cards took back never, which it never sent: gone\nRELEASED\u202e TO SERVICE");
            await old.ExecuteNonQueryAsync();
        }

        await SaysAsync(Sentence + "\\u202E TO SERVICE\u201d.");
        var check = (await server.Checks.ListDataChecksAsync(new ListDataChecksRequest())).Checks.Single();
        await server.Checks.CloseDataCheckAsync(new CloseDataCheckRequest { CheckId = check.CheckId, ClosedBy = "lead", Note = "looked\nRELEASED TO SERVICE" });
        foreach (var path in new[] { "/data-problems?state=closed", $"/data-problems/{check.CheckId}" })
            Assert.Matches(@"\u201clead\u201d wrote on .+: \u201clooked / RELEASED TO SERVICE\u201d", (await PageAsync(path)).QuerySelector("main")!.TextContent);

        async Task SaysAsync(string words)
        {
            var listed = (await server.Checks.ListDataChecksAsync(new ListDataChecksRequest())).Checks.Single();
            Assert.Equal(words, listed.Description);
            Assert.Contains(words, (await PageAsync("/data-problems")).QuerySelector("main")!.TextContent);
            Assert.Contains(words, (await PageAsync($"/data-problems/{listed.CheckId}")).QuerySelector("main")!.TextContent);
        }
    }

    private async Task<IDocument> PageAsync(string path)
    {
        using var answer = await server.Http.GetAsync(path);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await new HtmlParser().ParseDocumentAsync(await answer.Content.ReadAsStringAsync());
    }
}
