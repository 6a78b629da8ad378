using FleetTrend.IntegrationTests.Trends.LongestWatches;
using FleetTrend.Results;
using FleetTrend.Results.Reading;
using FleetTrend.Results.Refreshes;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>An analysis is added with a folder of its own and a line in a list: it is computed in the refresh, stored as rows, and read by subject.</summary>
[Collection(SharedPostgres.Name)]
public sealed class AddedAnalysisTests(PostgresFixture postgres)
{
    [Fact]
    public async Task It_is_computed_stored_and_read_by_subject()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        var fleet = new UnitFleet("added", "gasket", "ZZ", hoursPerDay: 5);
        var (one, other) = (fleet.Unit(), fleet.Unit());
        foreach (var (unit, hours) in new[] { (one, 100), (one, 300), (other, 100), (other, 200) })
            fleet.Looked(unit, hours);
        await fleet.PushAsync(server);
        var added = new LongestWatchAnalysis();
        var refresh = ActivatorUtilities.CreateInstance<TrendRefresh>(server.Services, new AnalysisList([.. Analyses.All, added])); // the line

        var asOf = await refresh.RunAsync(default);

        var reader = server.Services.GetRequiredService<ResultReader>();
        var trends = (await reader.AtAsync(asOf, default))!;
        var found = await reader.ReadAsync(trends, added, new ResultFilter { Registration = one }, default);
        Assert.Equal([(one, 300.0)], found.Select(f => (f.Registration, f.Hours))); // new at 0 h, looked at last at 300 h
        var all = await reader.ReadAsync(trends, added, new ResultFilter(), default);
        Assert.Equal([300, 200], all.Select(f => f.Hours));
        Assert.Equal(2, await server.CountAsync("results where analysis = 'longest-watches' and headline_values[1] in (300, 200)"));
    }
}
