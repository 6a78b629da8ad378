using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class LayoutMapping : IEntityTypeConfiguration<LayoutRow>
{
    public void Configure(EntityTypeBuilder<LayoutRow> builder)
    {
        builder.ToTable("layouts", table =>
        {
            table.Form("name", "[a-z0-9-]{2,60}");
            table.Length("title", 0, 120);
        });
        builder.HasIndex(row => row.Name).IsUnique();
        builder.HasMany(row => row.Locations).WithOne().HasForeignKey(row => row.LayoutId).OnDelete(DeleteBehavior.Restrict);
    }
}
