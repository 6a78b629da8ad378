using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class AircraftMapping : IEntityTypeConfiguration<AircraftRow>
{
    public void Configure(EntityTypeBuilder<AircraftRow> builder)
    {
        builder.ToTable("aircraft", table => table.Form("registration", "[A-Z0-9-]{2,10}"));
        builder.HasIndex(row => row.Registration).IsUnique();
    }
}
