using FleetTrend.Records.Sources;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class HeldCodeMapping : IEntityTypeConfiguration<HeldCodeRow>
{
    public void Configure(EntityTypeBuilder<HeldCodeRow> builder)
    {
        builder.ToTable("held_codes", table =>
        {
            table.Code("kind", (int)CodeKind.Location, (int)CodeKind.Action);
            table.Length("code", 1, 120);
        });
        builder.HasKey(row => new { row.HeldRecordId, row.Kind, row.Code });
        builder.HasOne<HeldRecordRow>().WithMany().HasForeignKey(row => row.HeldRecordId).OnDelete(DeleteBehavior.Restrict)
            .HasConstraintName("fk_held_codes_held_records_held_record_id");
    }
}
