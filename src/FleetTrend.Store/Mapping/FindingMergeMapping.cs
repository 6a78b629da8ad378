using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class FindingMergeMapping : IEntityTypeConfiguration<FindingMergeRow>
{
    public void Configure(EntityTypeBuilder<FindingMergeRow> builder)
    {
        builder.ToTable("finding_merges", table =>
        {
            table.Length("merged_record_id", 1, 120);
            table.Length("kept_record_id", 1, 120);
            table.HasCheckConstraint("ck_finding_merges_two_sources", "merged_source_id <> kept_source_id");
        });
        builder.HasOne<SourceRow>().WithMany().HasForeignKey(row => row.MergedSourceId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<SourceRow>().WithMany().HasForeignKey(row => row.KeptSourceId).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(row => new { row.MergedSourceId, row.MergedRecordId, row.Id });
    }
}
