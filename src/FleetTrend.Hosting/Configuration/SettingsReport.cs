using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace FleetTrend.Hosting.Configuration;

/// <summary>Writes the settings in force to the log when a host starts.</summary>
internal sealed class SettingsReport(HostSettings settings, ILogger<SettingsReport> logger) : IHostedService
{
    public Task StartAsync(CancellationToken cancellationToken)
    {
        HostingLog.Settings(logger, settings);
        foreach (var name in settings.UnknownNames)
            HostingLog.UnknownSetting(logger, name);
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
