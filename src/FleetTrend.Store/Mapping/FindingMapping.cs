using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class FindingMapping : IEntityTypeConfiguration<FindingRow>
{
    public void Configure(EntityTypeBuilder<FindingRow> builder)
    {
        builder.ToTable("findings", table =>
        {
            table.Day("found_date");
            table.Hours("time_in_service_hours");
            table.Code("condition", 1, 10);
            table.Code("grade", 1, 2);
            table.HasCheckConstraint("ck_findings_size_mm", "size_mm > 0 and size_mm <= 10000");
            table.Code("trace_colour", 0, 6);
            table.Code("method", 0, 7);
            table.Length("same_event_as", 1, 120);
            table.Length("note", 1, 2000);
        });
        builder.KeyedByRecord(row => row.RecordId);
        builder.AtLocation(row => row.Location);
        builder.Property(row => row.TimeInServiceHours).HasPrecision(9, 1);
    }
}
