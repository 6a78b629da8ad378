using System.Diagnostics;
using FleetTrend.PostgresBenchmarks.Postgres;
using FleetTrend.Records.Layouts;
using FleetTrend.Synthetic;
using Layout = FleetTrend.Contracts.V1.Layout;
using Location = FleetTrend.Contracts.V1.Location;

namespace FleetTrend.PostgresBenchmarks.Fleets;

/// <summary>Databases with a synthetic fleet, each filled once and handed out in copies.</summary>
internal sealed class FilledFleets(BenchmarkServer server, int seed, Figures figures) : IAsyncDisposable
{
    private readonly Dictionary<OperatorSize, FilledFleet> filledBySize = [];

    /// <summary>The layout of all aircraft.</summary>
    public static Layout Layout { get; } =
        ToContract(ShippedLayouts.All.Single(l => l.Name == SyntheticOperator.LayoutName));

    /// <summary>A database with a fleet of that size.</summary>
    public async Task<FilledFleet> CopyAsync(OperatorSize size)
    {
        if (!filledBySize.TryGetValue(size, out var filled))
            filledBySize.Add(size, filled = await FillAsync(size));
        return filled with { Database = await server.CreateAsync(filled.Database.Name) };
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var filled in filledBySize.Values)
            await filled.DisposeAsync();
    }

    private async Task<FilledFleet> FillAsync(OperatorSize size)
    {
        figures.Title(
            $"Filling: {size.Aircraft:N0} aircraft over {size.Years} years in {size.TypeGroups} type groups, seed {seed}");
        var clock = Stopwatch.StartNew();
        var lastDate = DateOnly.FromDateTime(TimeProvider.System.GetUtcNow().UtcDateTime).AddDays(-1);
        var fleet = new SyntheticOperator(seed, size, lastDate, Layout);
        var database = await server.CreateAsync();
        await using (var intake = new DirectIntake(database))
        {
            await intake.PrepareAsync(fleet);
            await intake.PushAllAsync(fleet.Records());
        }

        // As after a quiet night: planned with statistics, and no refresh owed before one is asked for.
        await database.ExecuteAsync("delete from refresh_requests");
        await database.ExecuteAsync("vacuum analyze");
        figures.Print("records", await database.ReadAsync<long>("select count(*) from records"), "");
        figures.Print("look lines", await database.ReadAsync<long>("select count(*) from location_looks"), "");
        var bytes = await database.ReadAsync<long>("select pg_database_size(current_database())");
        figures.Print("database", bytes / 1e6, "MB");
        figures.Print("filled in", clock.Elapsed.TotalSeconds, "s");
        await database.CloseAsync();
        return new FilledFleet(database, fleet);
    }

    private static Layout ToContract(FleetTrend.Records.Layouts.Layout shipped)
    {
        var layout = new Layout { Name = shipped.Name, Title = shipped.Title };
        layout.Locations.AddRange(shipped.Locations.Select(l => new Location { Path = l.Path, Kind = l.Kind.Name }));
        return layout;
    }
}
