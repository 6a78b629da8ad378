using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class OutboxMailMapping : IEntityTypeConfiguration<OutboxMailRow>
{
    public void Configure(EntityTypeBuilder<OutboxMailRow> builder)
    {
        builder.ToTable("outbox_mails", table =>
        {
            table.Length("recipient", 3, 320);
            table.HasCheckConstraint("ck_outbox_mails_attempt_count", "attempt_count >= 0");
        });
        builder.HasOne<ReportRow>().WithMany().HasForeignKey(row => row.ReportId).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(row => new { row.ReportId, row.Recipient }).IsUnique();
        builder.HasIndex(row => row.MessageId).IsUnique();
        builder.HasIndex(row => row.NextAttemptTime).HasFilter("sent_time is null");
    }
}
