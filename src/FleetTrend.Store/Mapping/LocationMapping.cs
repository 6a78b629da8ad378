using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class LocationMapping : IEntityTypeConfiguration<LocationRow>
{
    public void Configure(EntityTypeBuilder<LocationRow> builder)
    {
        builder.ToTable("locations", table => table.Form("path", "[a-z0-9-]+(/[a-z0-9-]+){1,3}"));
        builder.HasKey(row => row.Path);
        builder.HasOne(row => row.KindRow).WithMany().HasForeignKey(row => row.Kind).OnDelete(DeleteBehavior.Restrict);
    }
}
