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
            table.HasCheckConstraint("ck_outbox_mails_given_up_time", "given_up_time is null or (sent_time is null and last_error is not null)");
        });
        builder.HasOne<ReportRow>().WithMany().HasForeignKey(row => row.ReportId).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(row => new { row.ReportId, row.Recipient }).IsUnique();
        builder.HasIndex(row => row.MessageId).IsUnique();
        builder.Property(row => row.OwedTime).HasDefaultValueSql("clock_timestamp()");
        builder.HasIndex(row => row.NextAttemptTime).HasFilter("sent_time is null and given_up_time is null");
    }
}
