using FleetTrend.Records.Flags;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class FlagStepMapping : IEntityTypeConfiguration<FlagStepRow>
{
    public void Configure(EntityTypeBuilder<FlagStepRow> builder)
    {
        builder.ToTable("flag_steps", table =>
        {
            table.Code("state", (int)FlagState.Open, (int)FlagState.Reopened);
            table.Hours("action_time_in_service_hours");
            table.HasCheckConstraint("ck_flag_steps_action_date", "state <> 5 or action_date is not null");

            // People acknowledge, act, close and reopen; the numbers say how strong a flag is and whether an action helped.
            table.HasCheckConstraint("ck_flag_steps_step_by", "state not in (2, 3, 5, 8) or step_by is not null");
        });
        builder.Property(row => row.State).HasConversion<short>();
        builder.Property(row => row.ActionTimeInServiceHours).HasPrecision(9, 1);
        builder.HasOne<FlagRow>().WithMany().HasForeignKey(row => row.FlagId).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(row => new { row.FlagId, row.Id });
    }
}
