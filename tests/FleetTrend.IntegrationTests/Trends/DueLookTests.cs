using System.Net;
using AngleSharp.Html.Parser;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Results.Refreshes;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>What is due, over the contract and on the page.</summary>
[Collection(SharedPostgres.Name)]
public sealed class DueLookTests(PostgresFixture postgres)
{
    // By hand: ZZ-A00 was looked at whole at 500 h; at 560 h the gasket could not be examined; it reads 630 h. The weld has 30 h left of 100, the gasket is
    // 30 h past. It flew 130 h in 90 days, 10.1 h a week. ZZ-A01 was looked at whole at 400 h, and reads 420 h: 80 h left.
    [Fact]
    public async Task A_location_that_could_not_be_examined_is_past_its_interval_while_the_aircraft_is_not()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
        using (var before = await server.Http.GetAsync("/due"))
            Assert.Contains("No refresh has run yet", await before.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Record[] records =
        [
            ShopCards.Aircraft("ZZ-A00"), ShopCards.Aircraft("ZZ-A01"),
            Looked("look 1", "ZZ-A00", 10, 500, LookState.Examined), Looked("look 2", "ZZ-A00", 50, 560, LookState.CouldNotExamine),
            ShopCards.Reading("read 1", "ZZ-A00", 100, 630),
            Looked("look 3", "ZZ-A01", 10, 400, LookState.Examined), ShopCards.Reading("read 2", "ZZ-A01", 100, 420),
        ];
        foreach (var record in records)
        {
            var pushed = await server.Intake.PushRecordAsync(new PushRecordRequest { Record = record });
            Assert.True(pushed.Outcome.State == RecordState.Accepted, $"{pushed}");
        }

        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);

        var answer = await server.Trends.ListDueLooksAsync(new ListDueLooksRequest());
        Assert.Equal(["ZZ-A00", "ZZ-A01"], answer.DueLooks.Select(d => d.Registration));
        var due = answer.DueLooks[0];
        Assert.Equal((-30, 2, 1, 630), (due.HoursToNext, due.LocationCount, due.OverdueCount, due.LatestHours));
        Assert.Equal(7 * 130 / 90.0, due.HoursPerWeek, 6);
        Assert.False(due.HasSeasonFactor);
        Assert.Equal([ShopCards.Gasket, ShopCards.Weld], due.Groups.SelectMany(g => g.Locations));
        Assert.Equal((DueReason.CouldNotExamine, ShopCards.Day(50), 1), (due.Groups[0].Reason, due.Groups[0].PassedOverDate, due.Groups[0].PassedOverCount));
        Assert.Equal((30, ShopCards.Day(50)), (due.Groups[1].HoursToNext, due.Groups[1].LastLookDate));
        Assert.Equal(["look 1", "look 2"], due.RecordKeys.Select(k => k.SourceRecordId).Order());
        Assert.Equal((80, 0), (answer.DueLooks[1].HoursToNext, answer.DueLooks[1].OverdueCount));
        Assert.NotNull(answer.Freshness.AsOfTime);
        Assert.Equal([due], (await server.Trends.ListDueLooksAsync(new ListDueLooksRequest { OverdueOnly = true })).DueLooks);
        var first = await server.Trends.ListDueLooksAsync(new ListDueLooksRequest { PageSize = 1 });
        var second = await server.Trends.ListDueLooksAsync(new ListDueLooksRequest { PageSize = 1, PageToken = first.NextPageToken });
        Assert.Equal([answer.DueLooks[1]], second.DueLooks);

        using var page = await server.Http.GetAsync("/due");
        var tables = (await new HtmlParser().ParseDocumentAsync(await page.Content.ReadAsStreamAsync())).QuerySelectorAll("main table");
        Assert.Equal(["ZZ-A00", "ZZ-A01"], tables[0].QuerySelectorAll("tbody tr").Select(r => r.Children[0].TextContent));
        Assert.Equal("Cyl 1 gasket", Assert.Single(tables[1].QuerySelectorAll("tbody tr")).Children[1].TextContent);
        var one = new HtmlParser().ParseDocument(await server.Http.GetStringAsync("/due?registration=zz-a00"));
        Assert.Equal(["Cyl 1 gasket", "Cyl 1 flange weld"], one.QuerySelectorAll("main tbody tr").Select(r => r.Children[0].TextContent));
        using var unknown = await server.Http.GetAsync("/due?registration=ZZ-Q99");
        Assert.Equal(HttpStatusCode.NotFound, unknown.StatusCode);
    }

    private static Record Looked(string id, string registration, int day, double hours, LookState gasket) => new()
    {
        Key = ShopCards.Key(id),
        Inspection = new Inspection
        {
            Registration = registration,
            InspectionDate = ShopCards.Day(day),
            TimeInServiceHours = hours,
            Occasion = Occasion.Other,
            Looks =
            {
                new LocationLook { Location = ShopCards.Weld, State = LookState.Examined }, new LocationLook { Location = ShopCards.Gasket, State = gasket },
            },
        },
    };
}
