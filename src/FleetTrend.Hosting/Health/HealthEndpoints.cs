using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Diagnostics.HealthChecks;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.Hosting.Health;

/// <summary>Health over HTTP and gRPC. "Live" says that the process answers; "ready" that its database does too.</summary>
public static class HealthEndpoints
{
    /// <summary>Path that answers 200 while the process runs.</summary>
    public const string LivePath = "/health/live";

    /// <summary>Path that answers 200 while the database answers, else 503.</summary>
    public const string ReadyPath = "/health/ready";

    internal static IServiceCollection AddFleetTrendHealth(this IServiceCollection services)
    {
        services.AddHealthChecks().AddCheck<DatabaseHealthCheck>("database");
        return services;
    }

    /// <summary>Maps <see cref="LivePath"/> and <see cref="ReadyPath"/>.</summary>
    public static IEndpointRouteBuilder MapFleetTrendHealth(this IEndpointRouteBuilder routes)
    {
        routes.MapHealthChecks(LivePath, new HealthCheckOptions { Predicate = _ => false });
        routes.MapHealthChecks(ReadyPath);
        return routes;
    }

    /// <summary>Adds the gRPC health service (grpc.health.v1); the host calls AddGrpc itself.</summary>
    public static IServiceCollection AddFleetTrendGrpcHealth(this IServiceCollection services)
    {
        services.AddGrpcHealthChecks();
        return services;
    }

    /// <summary>Maps grpc.health.v1.Health: the empty service name is "ready".</summary>
    public static IEndpointRouteBuilder MapFleetTrendGrpcHealth(this IEndpointRouteBuilder routes)
    {
        routes.MapGrpcHealthChecksService();
        return routes;
    }
}
