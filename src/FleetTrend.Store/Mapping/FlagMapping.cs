using FleetTrend.Store.Flags;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class FlagMapping : IEntityTypeConfiguration<FlagRow>
{
    public void Configure(EntityTypeBuilder<FlagRow> builder)
    {
        builder.ToTable("flags", table =>
        {
            table.Code("state", (int)FlagState.Open, (int)FlagState.Closed);
            table.HasCheckConstraint("ck_flags_event_count", "event_count >= 0");
            table.HasCheckConstraint("ck_flags_last_seen_time", "last_seen_time >= raise_time");
            table.HasCheckConstraint("ck_flags_answer", "(state = 1) = (answered_by is null) and (state = 1) = (answer_time is null)");
        });
        builder.Property(row => row.State).HasConversion<short>();
        builder.Property(row => row.BodyJson).HasColumnType("json");

        // A subject has at most one flag that is not closed.
        builder.HasIndex(row => row.Subject).IsUnique().HasFilter("state <> 3");
        builder.HasIndex(row => new { row.Subject, row.Id });
    }
}
