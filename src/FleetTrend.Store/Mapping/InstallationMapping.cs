using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class InstallationMapping : IEntityTypeConfiguration<InstallationRow>
{
    public void Configure(EntityTypeBuilder<InstallationRow> builder)
    {
        builder.ToTable("installations", table =>
        {
            table.Day("installation_date");
            table.Hours("time_in_service_hours");
            table.Hours("part_hours");
            table.Length("serial_number", 1, 60);
            table.Length("part_number", 1, 120);
        });
        builder.KeyedByRecord(row => row.RecordId);
        builder.AtLocation(row => row.Location);
        builder.Property(row => row.TimeInServiceHours).HasPrecision(9, 1);
        builder.Property(row => row.PartHours).HasPrecision(9, 1);
    }
}
