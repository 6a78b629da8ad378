using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class AirframeMapping : IEntityTypeConfiguration<AirframeRow>
{
    public void Configure(EntityTypeBuilder<AirframeRow> builder)
    {
        builder.ToTable("airframes", table =>
        {
            table.Day("watch_start_date");
            table.Day("retired_date");
        });
        builder.KeyedByRecord(row => row.RecordId);
        builder.Property(row => row.MeterOffsetHours).HasPrecision(9, 1);
    }
}
