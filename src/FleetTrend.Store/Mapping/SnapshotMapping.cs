using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class SnapshotMapping : IEntityTypeConfiguration<SnapshotRow>
{
    public void Configure(EntityTypeBuilder<SnapshotRow> builder)
    {
        builder.ToTable("snapshots");
        builder.HasKey(row => row.AsOf);

        // json and not jsonb: it comes back to the byte.
        builder.Property(row => row.ParametersJson).HasColumnType("json");
        builder.Property(row => row.TrendsJson).HasColumnType("json");
    }
}
