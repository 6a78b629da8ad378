using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class ScheduleRecipientMapping : IEntityTypeConfiguration<ScheduleRecipientRow>
{
    public void Configure(EntityTypeBuilder<ScheduleRecipientRow> builder)
    {
        builder.ToTable("schedule_recipients", table => table.Length("address", 3, 320));
        builder.HasKey(row => new { row.ScheduleId, row.Address });
        builder.HasOne<ReportScheduleRow>().WithMany().HasForeignKey(row => row.ScheduleId).OnDelete(DeleteBehavior.Cascade);
    }
}
