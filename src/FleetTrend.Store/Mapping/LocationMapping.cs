using FleetTrend.Records.Layouts;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class LocationMapping : IEntityTypeConfiguration<LocationRow>
{
    public void Configure(EntityTypeBuilder<LocationRow> builder)
    {
        var kinds = string.Join(", ", LocationKinds.All.Select(kind => $"'{kind.Name}'"));
        builder.ToTable("locations", table =>
        {
            table.Form("path", "[a-z0-9-]+(/[a-z0-9-]+){1,3}");
            table.HasCheckConstraint("ck_locations_kind", $"kind in ({kinds})");
        });
        builder.HasKey(row => row.Path);
    }
}
