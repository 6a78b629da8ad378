using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class ObservedAircraftMapping : IEntityTypeConfiguration<ObservedAircraftRow>
{
    public void Configure(EntityTypeBuilder<ObservedAircraftRow> builder)
    {
        builder.ToTable("observed_aircraft");
        builder.HasKey(row => row.AircraftId);
        builder.Property(row => row.AircraftId).ValueGeneratedNever();
        builder.HasOne<AircraftRow>().WithOne().HasForeignKey<ObservedAircraftRow>(row => row.AircraftId).OnDelete(DeleteBehavior.Restrict);
    }
}
