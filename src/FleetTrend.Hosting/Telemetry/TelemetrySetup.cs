using System.Reflection;
using FleetTrend.Hosting.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using OpenTelemetry;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace FleetTrend.Hosting.Telemetry;

/// <summary>Traces and metrics by OpenTelemetry.</summary>
internal static class TelemetrySetup
{
    /// <summary>Every source and meter of ours begins so: <c>FleetTrend.Intake</c>, <c>FleetTrend.Worker</c>.</summary>
    private const string OurSources = "FleetTrend.*";

    /// <summary>Exports over OTLP where a collector is configured; without one nothing is collected at all.</summary>
    public static IServiceCollection AddFleetTrendTelemetry(
        this IServiceCollection services, HostSettings settings, string processName)
    {
        if (settings.OtlpEndpoint is not { } endpoint)
            return services;

        var version = typeof(TelemetrySetup).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>();
        services.AddOpenTelemetry()
            .ConfigureResource(r => r.AddService(processName, serviceVersion: version?.InformationalVersion))
            .WithTracing(t => t
                .AddSource(OurSources)
                .AddAspNetCoreInstrumentation()
                .AddHttpClientInstrumentation()
                .AddNpgsql())
            .WithMetrics(m => m
                .AddMeter(OurSources)
                .AddAspNetCoreInstrumentation()
                .AddHttpClientInstrumentation()
                .AddRuntimeInstrumentation()
                .AddNpgsqlInstrumentation())
            .UseOtlpExporter(OpenTelemetry.Exporter.OtlpExportProtocol.Grpc, endpoint);
        return services;
    }
}
