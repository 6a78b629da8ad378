using FleetTrend.Records.Sources;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class SourceCodeMapping : IEntityTypeConfiguration<SourceCodeRow>
{
    public void Configure(EntityTypeBuilder<SourceCodeRow> builder)
    {
        builder.ToTable("source_codes", table =>
        {
            table.Code("kind", (int)CodeKind.Location, (int)CodeKind.Action);
            table.Length("code", 1, 120);
            table.Code("condition", 1, 10);
            table.Code("action", 1, 10);
            table.HasCheckConstraint(
                "ck_source_codes_meaning",
                "(kind = 1) = (location is not null) and (kind = 2) = (condition is not null) and (kind = 3) = (action is not null)");
        });
        builder.HasKey(row => new { row.SourceId, row.Kind, row.Code });
        builder.HasOne<SourceRow>().WithMany().HasForeignKey(row => row.SourceId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<LocationRow>().WithMany().HasForeignKey(row => row.Location).OnDelete(DeleteBehavior.Restrict);
        builder.Property(row => row.SetTime).HasDefaultValueSql("clock_timestamp()");
    }
}
