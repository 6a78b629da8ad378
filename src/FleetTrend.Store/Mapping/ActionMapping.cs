using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class ActionMapping : IEntityTypeConfiguration<ActionRow>
{
    public void Configure(EntityTypeBuilder<ActionRow> builder)
    {
        builder.ToTable("actions", table =>
        {
            table.Day("action_date");
            table.Hours("time_in_service_hours");
            table.Code("kind", 1, 10);
            table.HasCheckConstraint("ck_actions_part_hours", "part_hours is null or (part_hours >= 0 and kind = 3)");
            table.Length("note", 1, 2000);
        });
        builder.KeyedByRecord(row => row.RecordId);
        builder.AtLocation(row => row.Location);
        builder.Property(row => row.TimeInServiceHours).HasPrecision(9, 1);
        builder.Property(row => row.PartHours).HasPrecision(9, 1);
    }
}
