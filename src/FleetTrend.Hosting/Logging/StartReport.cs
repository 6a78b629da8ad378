using FleetTrend.Hosting.Configuration;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace FleetTrend.Hosting.Logging;

/// <summary>Logs the start and the end of a host: the settings in force, where it listens, that it stops.</summary>
internal sealed class StartReport(HostSettings settings, string processName, IServer server, ILogger<StartReport> log) : IHostedLifecycleService
{
    public Task StartingAsync(CancellationToken cancellationToken)
    {
        HostingLog.SettingsRead(log, processName, settings);
        foreach (var name in settings.UnknownNames)
            HostingLog.UnknownSetting(log, name);
        return Task.CompletedTask;
    }

    public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StartedAsync(CancellationToken cancellationToken)
    {
        HostingLog.Started(log, processName, string.Join(", ", server.Features.Get<IServerAddressesFeature>()?.Addresses ?? []));
        return Task.CompletedTask;
    }

    public Task StoppingAsync(CancellationToken cancellationToken)
    {
        HostingLog.Stopping(log, processName);
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StoppedAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
