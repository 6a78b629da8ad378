using AngleSharp.Html.Parser;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Results.Refreshes;
using FleetTrend.Store.Sources;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>What no longer comes, over the contract and on the page.</summary>
[Collection(SharedPostgres.Name)]
public sealed class SilenceTests(PostgresFixture postgres)
{
    [Fact] // Records of two years ago only: half a year is over, and too few came to know a habit.
    public async Task An_aircraft_of_which_nothing_has_come_for_half_a_year_is_asked_about()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
        using (var before = await server.Http.GetAsync("/silent"))
            Assert.Contains("No refresh has run yet", await before.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        foreach (var record in new[] { ShopCards.Aircraft("ZZ-A00"), ShopCards.Reading("read 1", "ZZ-A00", 10, 630), ShopCards.Reading("read 2", "ZZ-A00", 17, 640) })
        {
            var pushed = await server.Intake.PushRecordAsync(new PushRecordRequest { Record = record });
            Assert.True(pushed.Outcome.State == RecordState.Accepted, $"{pushed}");
        }

        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);

        var silence = Assert.Single((await server.Trends.ListSilencesAsync(new ListSilencesRequest())).Silences);
        Assert.Equal(("ZZ-A00", "North", false, ShopCards.Day(17)), (silence.Registration, silence.Base, silence.HoursStillCome, silence.LastDate));
        Assert.False(silence.HasLongestGapDays);
        Assert.True(silence.DaysSince > 182);
        Assert.Equal("aircraft ZZ-A00", Assert.Single(silence.RecordKeys).SourceRecordId);
        Assert.Empty((await server.Trends.ListSilencesAsync(new ListSilencesRequest { TypeGroup = ShopCards.TypeGroup, Registration = "zz-a00" })).Silences.Skip(1));
        var page = new HtmlParser().ParseDocument(await server.Http.GetStringAsync("/silent"));
        Assert.Equal(["ZZ-A00", "North", "Hours and inspections"], page.QuerySelector("main tbody tr")!.Children.Take(3).Select(c => c.TextContent));
    }

    // Ten records, one every three days, the last 60 days ago: nine gaps of three days, and more than four weeks without a word.
    [Fact]
    public async Task A_source_that_has_stopped_sending_is_named_on_the_page_and_over_the_contract()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
        foreach (var record in Enumerable.Range(1, 9).Select(i => ShopCards.Reading($"read {i}", "ZZ-A00", i, 600 + i)).Prepend(ShopCards.Aircraft("ZZ-A00")))
            await server.Intake.PushRecordAsync(new PushRecordRequest { Record = record });
        await using (var older = server.Database.DataSource.CreateCommand(
            "update records r set accept_time = now() - make_interval(days => 87 - 3 * (select count(*)::int from records n where n.id < r.id))"))
        {
            Assert.Equal(10, await older.ExecuteNonQueryAsync());
        }

        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);

        var silent = Assert.Single((await server.Trends.ListSilencesAsync(new ListSilencesRequest())).SilentSources);
        Assert.Equal((ShopCards.Source, 60, 3), (silent.Source, silent.DaysSince, silent.LongestGapDays));
        Assert.Empty((await server.Trends.ListSilencesAsync(new ListSilencesRequest { Registration = "ZZ-A00" })).SilentSources);
        var page = await server.Http.GetStringAsync("/silent");
        Assert.Contains($"Source {ShopCards.Source}: nothing since ", page, StringComparison.Ordinal);
        Assert.Contains("60 days; before that never longer than 3 days.", page, StringComparison.Ordinal);
        Assert.DoesNotContain($"Source {ShopCards.Source}", await server.Http.GetStringAsync("/silent?registration=ZZ-A00"), StringComparison.Ordinal);
    }

    [Fact] // Two records on one day are one day.
    public async Task Days_of_a_source_are_those_on_which_its_records_were_accepted()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
        var sources = server.Services.GetRequiredService<SourceStore>();
        foreach (var record in new[] { ShopCards.Aircraft("ZZ-A00"), ShopCards.Reading("read 1", "ZZ-A00", 10, 630) })
            await server.Intake.PushRecordAsync(new PushRecordRequest { Record = record });
        var now = TimeProvider.System.GetUtcNow();
        var days = Assert.Single(await sources.ReadDaysAsync(now.AddDays(-2), now.AddMinutes(1), default));
        Assert.Equal(ShopCards.Source, days.Source);
        Assert.InRange(days.Days.Count, 1, 2); // midnight may lie between them
        Assert.Empty(await sources.ReadDaysAsync(now.AddDays(-2), now.AddDays(-1), default));
        Assert.Empty(await sources.ReadDaysAsync(now.AddMinutes(1), now.AddDays(1), default));
    }
}
