using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class HeldRecordMapping : IEntityTypeConfiguration<HeldRecordRow>
{
    public void Configure(EntityTypeBuilder<HeldRecordRow> builder)
    {
        builder.ToTable("held_records", table =>
        {
            table.Length("source_record_id", 1, 120);
            table.HasCheckConstraint("ck_held_records_revision", "revision >= 1");
            table.Form("registration", "[A-Z0-9-]{2,10}");
            table.HasCheckConstraint("ck_held_records_content_hash", "octet_length(content_hash) = 32");
        });
        builder.HasIndex(row => new { row.SourceId, row.SourceRecordId, row.Revision }).IsUnique();
        builder.HasOne<SourceRow>().WithMany().HasForeignKey(row => row.SourceId).OnDelete(DeleteBehavior.Restrict);

        // Few wait at a time; the many that have waited need not be looked at.
        builder.HasIndex(row => row.Registration).HasFilter("release_time is null");
        builder.HasIndex(row => row.Id).HasFilter("release_time is null").HasDatabaseName("ix_held_records_waiting");
    }
}
