using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class RemovalMapping : IEntityTypeConfiguration<RemovalRow>
{
    public void Configure(EntityTypeBuilder<RemovalRow> builder)
    {
        builder.ToTable("removals", table =>
        {
            table.Day("removal_date");
            table.Hours("time_in_service_hours");
            table.Code("reason", 1, 6);
            table.Length("serial_number", 1, 60);
        });
        builder.KeyedByRecord(row => row.RecordId);
        builder.AtLocation(row => row.Location);
        builder.Property(row => row.TimeInServiceHours).HasPrecision(9, 1);
    }
}
