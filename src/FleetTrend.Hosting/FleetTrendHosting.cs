using FleetTrend.Hosting.Configuration;
using FleetTrend.Hosting.Health;
using FleetTrend.Hosting.Logging;
using FleetTrend.Hosting.Telemetry;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Hosting;

namespace FleetTrend.Hosting;

/// <summary>What a process needs before any FleetTrend work.</summary>
public static class FleetTrendHosting
{
    /// <summary>Adds settings, database, clock, telemetry and health checks to a host. The caller keeps
    /// <paramref name="database"/> and disposes it after the host.</summary>
    /// <param name="builder">The host.</param>
    /// <param name="settings">Validated settings.</param>
    /// <param name="database">The database, shared by all hosts of a process.</param>
    /// <param name="processName">Name of the process in telemetry and log: <c>fleettrend-api</c>.</param>
    public static IHostApplicationBuilder AddFleetTrendHosting(
        this IHostApplicationBuilder builder, HostSettings settings, HostDatabase database, string processName)
    {
        ProcessLog.UseIn(builder.Configuration, builder.Logging, settings);
        builder.Services.AddSingleton(settings);
        builder.Services.AddSingleton(settings.Mail);
        builder.Services.AddSingleton(settings.Schedule);
        builder.Services.AddSingleton(settings.Retention);
        builder.Services.AddSingleton(settings.Access);
        builder.Services.AddSingleton(database);
        builder.Services.AddSingleton(database.DataSource);
        builder.Services.TryAddSingleton(TimeProvider.System);
        builder.Services.AddHostedService(services => ActivatorUtilities.CreateInstance<StartReport>(services, processName));
        builder.Services.AddFleetTrendTelemetry(settings, processName);
        builder.Services.AddFleetTrendHealth();
        return builder;
    }
}
