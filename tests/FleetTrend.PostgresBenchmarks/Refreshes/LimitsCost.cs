using System.Diagnostics;
using FleetTrend.PostgresBenchmarks.Postgres;
using FleetTrend.Results;
using FleetTrend.Results.Observing;
using FleetTrend.Store;
using FleetTrend.Store.Histories;
using FleetTrend.Trends;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace FleetTrend.PostgresBenchmarks.Refreshes;

/// <summary>What the limits of the calls take of a refresh: they are simulated here, in this process, for every type group.</summary>
internal static class LimitsCost
{
    /// <summary>Seconds of processor time for the limits of all type groups; reading and counting are not in it.</summary>
    public static async Task<double> MeasureAsync(BenchmarkDatabase database)
    {
        await using var source = NpgsqlDataSource.Create(database.ConnectionString);
        await using var services = new ServiceCollection().AddSingleton(source).AddLogging().AddFleetTrendStore().AddFleetTrendResults().BuildServiceProvider();
        var asOf = await services.GetRequiredService<Knowledge>().FixAsOfAsync(default);
        var reader = services.GetRequiredService<TypeGroupReader>();
        var seconds = 0.0;
        foreach (var (name, _) in await reader.ReadSizesAsync(asOf, default))
        {
            var inputs = await reader.ReadAsync(asOf, name, new TrendParameters(), keep: false, default);
            _ = inputs.Expectations;
            var before = Process.GetCurrentProcess().TotalProcessorTime;
            _ = (inputs.AircraftLimits, inputs.BaseLimits);
            seconds += (Process.GetCurrentProcess().TotalProcessorTime - before).TotalSeconds;
        }

        return seconds;
    }
}
