using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class InspectionMapping : IEntityTypeConfiguration<InspectionRow>
{
    public void Configure(EntityTypeBuilder<InspectionRow> builder)
    {
        builder.ToTable("inspections", table =>
        {
            table.Day("inspection_date");
            table.Hours("time_in_service_hours");
            table.Code("occasion", 1, 6);
        });
        builder.KeyedByRecord(row => row.RecordId);
        builder.Property(row => row.TimeInServiceHours).HasPrecision(9, 1);
    }
}
