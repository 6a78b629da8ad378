using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class RefreshRequestMapping : IEntityTypeConfiguration<RefreshRequestRow>
{
    public void Configure(EntityTypeBuilder<RefreshRequestRow> builder)
    {
        builder.ToTable("refresh_requests");
        builder.Property(row => row.AtOnce).HasDefaultValue(false);
        builder.HasIndex(row => row.RequestTime);
    }
}
