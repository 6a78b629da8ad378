using FleetTrend.Api;
using FleetTrend.Hosting;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Hosting.Health;
using FleetTrend.Hosting.Logging;
using FleetTrend.Worker;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace FleetTrend.Cli.Serve;

/// <summary>API and worker in one process on one database; the same code as the two executables.</summary>
internal sealed class BothHosts : IAsyncDisposable
{
    private readonly HostDatabase hostDatabase;
    private readonly WebApplication apiHost;
    private readonly WebApplication workerHost;

    private BothHosts(HostSettings settings, HostDatabase database, WebApplication api, WebApplication worker)
    {
        hostDatabase = database;
        apiHost = api;
        workerHost = worker;
        var addresses = api.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.ToList();
        GrpcUrl = addresses[0];
        PagesUrl = addresses[settings.HasOnePort ? 0 : 1];
    }

    /// <summary>Where gRPC answers.</summary>
    public string GrpcUrl { get; }

    /// <summary>Where pages and JSON answer.</summary>
    public string PagesUrl { get; }

    /// <summary>Services of the API, for looking into the database of the demo.</summary>
    public IServiceProvider Services => apiHost.Services;

    /// <summary>Opens the database, brings its schema up to date, and starts both hosts.</summary>
    /// <param name="settings">Validated settings.</param>
    /// <param name="arguments">Command line, for ASP.NET Core's own settings.</param>
    /// <param name="ct">Cancels.</param>
    public static async Task<BothHosts> StartAsync(HostSettings settings, string[] arguments, CancellationToken ct)
    {
        using var loggers = ProcessLog.Open(settings);
        var database = await HostDatabase.OpenAsync(settings, loggers, ct);
        await DatabaseWait.UntilAnsweredAsync(settings, database, host => host.ListenAsApi(settings).ListenAsWorker(settings), loggers, ct);
        var api = ApiHost.Build(arguments, settings, database);
        var worker = WorkerHost.Build(arguments, settings, database);
        await WorkerHost.PrepareAsync(worker, ct);
        await ApiHost.PrepareAsync(api, ct);
        await api.StartAsync(ct);
        await worker.StartAsync(ct);
        return new BothHosts(settings, database, api, worker);
    }

    /// <summary>Waits until the process is asked to stop.</summary>
    public async Task WaitAsync(CancellationToken ct) => await apiHost.WaitForShutdownAsync(ct);

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await workerHost.StopAsync();
        await apiHost.StopAsync();
        await workerHost.DisposeAsync();
        await apiHost.DisposeAsync();
        await hostDatabase.DisposeAsync();
    }
}
