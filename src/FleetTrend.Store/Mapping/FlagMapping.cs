using FleetTrend.Records.Flags;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class FlagMapping : IEntityTypeConfiguration<FlagRow>
{
    public void Configure(EntityTypeBuilder<FlagRow> builder)
    {
        builder.ToTable("flags", table =>
        {
            table.Code("state", (int)FlagState.Open, (int)FlagState.Reopened);
            table.Code("tier", (int)FlagTier.Watch, (int)FlagTier.Flag);
            table.HasCheckConstraint("ck_flags_event_count", "event_count >= 0");
            table.HasCheckConstraint("ck_flags_last_seen_time", "last_seen_time >= raise_time");
            table.HasCheckConstraint("ck_flags_answer", "(answered_by is null) = (answer_time is null) and (answered_by is not null or state in (1, 4))");
        });
        builder.Property(row => row.State).HasConversion<short>();
        builder.Property(row => row.Tier).HasConversion<short>();
        builder.Property(row => row.BodyJson).HasColumnType("json");

        // A subject has at most one flag that is not settled: neither closed nor helped.
        builder.HasIndex(row => row.Subject).IsUnique().HasFilter("state not in (3, 6)");
        builder.HasIndex(row => new { row.Subject, row.Id });
    }
}
