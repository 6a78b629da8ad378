using Microsoft.AspNetCore.Authentication;

namespace FleetTrend.Api.Access;

/// <summary>Puts keys, limits and the gate into the host.</summary>
internal static class AccessRegistration
{
    public static IServiceCollection AddAccess(this IServiceCollection services)
    {
        services.AddSingleton<KnownKeys>();
        services.AddSingleton<CallLimits>();
        services.AddSingleton<CallGate>();
        services.AddSingleton<RefusedCalls>();
        services.AddSingleton<HostNames>();
        services.AddAuthentication(KeyAuthenticationHandler.SchemeName)
            .AddScheme<AuthenticationSchemeOptions, KeyAuthenticationHandler>(KeyAuthenticationHandler.SchemeName, null);
        return services;
    }
}
