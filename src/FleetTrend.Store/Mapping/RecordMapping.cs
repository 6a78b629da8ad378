using FleetTrend.Records;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class RecordMapping : IEntityTypeConfiguration<RecordRow>
{
    public void Configure(EntityTypeBuilder<RecordRow> builder)
    {
        builder.ToTable("records", table =>
        {
            table.Length("source_record_id", 1, 120);
            table.HasCheckConstraint("ck_records_revision", "revision >= 1");
            table.Code("kind", (int)RecordKind.Airframe, (int)RecordKind.StockCount);
            table.HasCheckConstraint("ck_records_content_hash", "octet_length(content_hash) = 32");

            // A retraction speaks of a record, a practice change of a base or type group, a stock count of a base: not of an aircraft.
            // There is nothing to take back before the first revision.
            table.HasCheckConstraint(
                "ck_records_aircraft_id",
                $"(kind in ({(int)RecordKind.Retraction}, {(int)RecordKind.PracticeChange}, {(int)RecordKind.StockCount})) = (aircraft_id is null)");
            table.HasCheckConstraint("ck_records_retraction", $"kind <> {(int)RecordKind.Retraction} or revision >= 2");
        });
        builder.HasIndex(row => new { row.SourceId, row.SourceRecordId, row.Revision }).IsUnique();
        builder.HasOne<SourceRow>().WithMany().HasForeignKey(row => row.SourceId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<AircraftRow>().WithMany().HasForeignKey(row => row.AircraftId).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(row => new { row.AircraftId, row.Kind });

        // What came in since a moment; records come nearly in the order of their times, so that a summary per block of rows is enough and
        // costs no push anything.
        builder.HasIndex(row => row.AcceptTime).HasMethod("brin");

        // Nearly all records are first revisions: finding the superseded ones costs only as much as there are later ones.
        builder.HasIndex(row => new { row.SourceId, row.SourceRecordId, row.Revision, row.AcceptTime })
            .HasFilter("revision > 1");
    }
}
