using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class LocationLookMapping : IEntityTypeConfiguration<LocationLookRow>
{
    public void Configure(EntityTypeBuilder<LocationLookRow> builder)
    {
        builder.ToTable("location_looks", table =>
        {
            table.Code("state", 1, 3);
            table.Code("method", 0, 7);
        });
        builder.HasKey(row => new { row.RecordId, row.Location });
        builder.HasOne<InspectionRow>().WithMany().HasForeignKey(row => row.RecordId).OnDelete(DeleteBehavior.Restrict);
        builder.AtLocation(row => row.Location);
    }
}
