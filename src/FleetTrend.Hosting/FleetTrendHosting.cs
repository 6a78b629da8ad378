using FleetTrend.Hosting.Configuration;
using FleetTrend.Hosting.Health;
using FleetTrend.Hosting.Telemetry;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace FleetTrend.Hosting;

/// <summary>What a process needs before any FleetTrend work.</summary>
public static class FleetTrendHosting
{
    /// <summary>Adds settings, database, clock, telemetry and health checks to a host. The caller keeps
    /// <paramref name="database"/> and disposes it after the host.</summary>
    /// <param name="builder">The host.</param>
    /// <param name="settings">Validated settings.</param>
    /// <param name="database">The database, shared by all hosts of a process.</param>
    /// <param name="processName">How the process is called in telemetry: <c>fleettrend-api</c>.</param>
    public static IHostApplicationBuilder AddFleetTrendHosting(
        this IHostApplicationBuilder builder, HostSettings settings, HostDatabase database, string processName)
    {
        // A failed command is an exception and logged as one; the first start asks for a table that is not there yet.
        builder.Logging.AddFilter("Microsoft.EntityFrameworkCore.Database.Command", LogLevel.Critical);
        builder.Services.AddSingleton(settings);
        builder.Services.AddSingleton(settings.Mail);
        builder.Services.AddSingleton(settings.Schedule);
        builder.Services.AddSingleton(settings.Retention);
        builder.Services.AddSingleton(settings.Access);
        builder.Services.AddSingleton(database);
        builder.Services.AddSingleton(database.DataSource);
        builder.Services.TryAddSingleton(TimeProvider.System);
        builder.Services.AddHostedService<SettingsReport>();
        builder.Services.AddFleetTrendTelemetry(settings, processName);
        builder.Services.AddFleetTrendHealth();
        return builder;
    }
}
