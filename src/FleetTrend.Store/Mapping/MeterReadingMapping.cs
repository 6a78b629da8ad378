using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class MeterReadingMapping : IEntityTypeConfiguration<MeterReadingRow>
{
    public void Configure(EntityTypeBuilder<MeterReadingRow> builder)
    {
        builder.ToTable("meter_readings", table =>
        {
            table.Day("reading_date");
            table.Hours("meter_hours");
        });
        builder.KeyedByRecord(row => row.RecordId);
        builder.Property(row => row.MeterHours).HasPrecision(9, 1);
    }
}
