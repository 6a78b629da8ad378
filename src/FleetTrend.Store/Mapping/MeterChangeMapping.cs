using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class MeterChangeMapping : IEntityTypeConfiguration<MeterChangeRow>
{
    public void Configure(EntityTypeBuilder<MeterChangeRow> builder)
    {
        builder.ToTable("meter_changes", table =>
        {
            table.Day("change_date");
            table.Hours("old_meter_hours");
            table.Hours("new_meter_hours");
        });
        builder.KeyedByRecord(row => row.RecordId);
        builder.Property(row => row.OldMeterHours).HasPrecision(9, 1);
        builder.Property(row => row.NewMeterHours).HasPrecision(9, 1);
    }
}
