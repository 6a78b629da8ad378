using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace FleetTrend.Store;

/// <summary>Lets dotnet-ef make migrations; it needs no database for that.</summary>
public sealed class FleetDbContextFactory : IDesignTimeDbContextFactory<FleetDbContext>
{
    /// <inheritdoc/>
    public FleetDbContext CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<FleetDbContext>().UseNpgsql().UseSnakeCaseNamingConvention().Options);
}
