using FleetTrend.Store.Mapping;
using FleetTrend.Store.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Conventions;

namespace FleetTrend.Store;

/// <summary>The tables. Callers outside the store use its readers and writers.</summary>
public sealed class FleetDbContext(DbContextOptions<FleetDbContext> options) : DbContext(options)
{
    internal DbSet<SourceRow> Sources => Set<SourceRow>();

    internal DbSet<ApiKeyRow> Keys => Set<ApiKeyRow>();

    internal DbSet<Person> People => Set<Person>();

    internal DbSet<FirstLinkRow> FirstLinks => Set<FirstLinkRow>();

    internal DbSet<LocationKindRow> LocationKinds => Set<LocationKindRow>();

    internal DbSet<LocationRow> Locations => Set<LocationRow>();

    internal DbSet<LayoutRow> Layouts => Set<LayoutRow>();

    internal DbSet<TypeGroupRow> TypeGroups => Set<TypeGroupRow>();

    internal DbSet<FlagRow> Flags => Set<FlagRow>();

    internal DbSet<FlagStepRow> FlagSteps => Set<FlagStepRow>();

    internal DbSet<DataProblemRow> DataProblems => Set<DataProblemRow>();

    internal DbSet<FindingMergeRow> FindingMerges => Set<FindingMergeRow>();

    internal DbSet<ParameterRevisionRow> ParameterRevisions => Set<ParameterRevisionRow>();

    internal DbSet<ReportRow> Reports => Set<ReportRow>();

    internal DbSet<OutboxMailRow> OutboxMails => Set<OutboxMailRow>();

    /// <inheritdoc/>
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder) =>
        // What foreign keys point at is never deleted, so an index for that would only cost: indexes are said in the mappings.
        configurationBuilder.Conventions.Remove<ForeignKeyIndexConvention>();

    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.ApplyConfigurationsFromAssembly(typeof(FleetDbContext).Assembly);

        // Byte order everywhere: the same pages and the same index on every server, whatever its locale.
        var texts = modelBuilder.Model.GetEntityTypes().SelectMany(entity => entity.GetProperties())
            .Where(property => property.ClrType == typeof(string) && property.GetColumnType() != "json"); // an array of texts is never compared
        foreach (var text in texts)
            text.SetCollation("C");
    }
}
