using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class LayoutLocationMapping : IEntityTypeConfiguration<LayoutLocationRow>
{
    public void Configure(EntityTypeBuilder<LayoutLocationRow> builder)
    {
        builder.ToTable("layout_locations", table =>
        {
            table.Form("jasc_code", "[0-9]{4}");
            table.HasCheckConstraint("ck_layout_locations_position", "position >= 0");
        });
        builder.HasKey(row => new { row.LayoutId, row.Path });
        builder.HasIndex(row => new { row.LayoutId, row.Position }).IsUnique();
        builder.HasOne(row => row.Location).WithMany().HasForeignKey(row => row.Path).OnDelete(DeleteBehavior.Restrict);
    }
}
