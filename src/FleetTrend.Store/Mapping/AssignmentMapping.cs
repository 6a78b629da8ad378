using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class AssignmentMapping : IEntityTypeConfiguration<AssignmentRow>
{
    public void Configure(EntityTypeBuilder<AssignmentRow> builder)
    {
        builder.ToTable("assignments", table =>
        {
            table.Day("from_date");
            table.Length("base", 1, 60);
        });
        builder.HasKey(row => new { row.RecordId, row.FromDate });
        builder.HasOne<AirframeRow>().WithMany().HasForeignKey(row => row.RecordId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<TypeGroupRow>().WithMany().HasForeignKey(row => row.TypeGroupId).OnDelete(DeleteBehavior.Restrict);
    }
}
