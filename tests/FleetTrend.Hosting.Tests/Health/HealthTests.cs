using System.Net;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Hosting.Health;
using FleetTrend.Hosting.Tests.LocalPostgres;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;

namespace FleetTrend.Hosting.Tests.Health;

/// <summary>A host as the worker builds it, asked over HTTP. 200 and 503 are what load balancers and compose look at.</summary>
public sealed class HealthTests
{
    [Fact]
    public async Task A_host_with_its_local_database_is_live_and_ready()
    {
        using var data = new DataFolder();
        var settings = new HostSettings { DataFolder = data.Path, WorkerAddress = NetworkAddress.Loopback(0) };
        await using var database = await HostDatabase.OpenAsync(settings, NullLoggerFactory.Instance, default);

        Assert.True(database.IsLocal);
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), await AskAsync(settings, database));
    }

    [Fact]
    public async Task A_host_whose_database_is_gone_is_live_but_not_ready()
    {
        var settings = new HostSettings
        {
            // Port 9 (discard) answers nowhere.
            Database = "Host=127.0.0.1;Port=9;Database=d;Username=u;Password=p;Timeout=2",
            WorkerAddress = NetworkAddress.Loopback(0),
        };
        await using var database = await HostDatabase.OpenAsync(settings, NullLoggerFactory.Instance, default);

        Assert.False(database.IsLocal);
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.ServiceUnavailable), await AskAsync(settings, database));
    }

    [Fact]
    public async Task A_collector_that_is_not_there_does_not_disturb_the_host()
    {
        using var data = new DataFolder();
        var settings = new HostSettings
        {
            DataFolder = data.Path,
            WorkerAddress = NetworkAddress.Loopback(0),
            OtlpEndpoint = new Uri("http://127.0.0.1:9"),
        };
        await using var database = await HostDatabase.OpenAsync(settings, NullLoggerFactory.Instance, default);

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), await AskAsync(settings, database));
    }

    private static async Task<(HttpStatusCode Live, HttpStatusCode Ready)> AskAsync(
        HostSettings settings, HostDatabase database)
    {
        var builder = WebApplication.CreateBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.ListenAsWorker(settings);
        builder.AddFleetTrendHosting(settings, database, "fleettrend-test");
        await using var app = builder.Build();
        app.MapFleetTrendHealth();
        await app.StartAsync();
        var address = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        using var client = new HttpClient { BaseAddress = new Uri(address) };

        using var live = await client.GetAsync(new Uri(HealthEndpoints.LivePath, UriKind.Relative));
        using var ready = await client.GetAsync(new Uri(HealthEndpoints.ReadyPath, UriKind.Relative));
        await app.StopAsync();
        return (live.StatusCode, ready.StatusCode);
    }
}
