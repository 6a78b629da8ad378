using Microsoft.Extensions.Diagnostics.HealthChecks;
using Npgsql;

namespace FleetTrend.Hosting.Health;

/// <summary>Healthy when the database answers a query within <see cref="Limit"/>.</summary>
internal sealed class DatabaseHealthCheck(NpgsqlDataSource database) : IHealthCheck
{
    private static readonly TimeSpan Limit = TimeSpan.FromSeconds(5);

    public async Task<HealthCheckResult> CheckHealthAsync(
        HealthCheckContext context, CancellationToken cancellationToken = default)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        limit.CancelAfter(Limit);
        try
        {
            await using var command = database.CreateCommand("SELECT 1");
            await command.ExecuteScalarAsync(limit.Token);
            return HealthCheckResult.Healthy();
        }
        catch (NpgsqlException e)
        {
            return HealthCheckResult.Unhealthy("The database does not answer.", e);
        }
        catch (OperationCanceledException) when (!cancellationToken.IsCancellationRequested)
        {
            return HealthCheckResult.Unhealthy($"The database did not answer within {Limit.TotalSeconds:0} s.");
        }
    }
}
