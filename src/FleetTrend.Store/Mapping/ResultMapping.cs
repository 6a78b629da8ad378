using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class ResultMapping : IEntityTypeConfiguration<ResultRow>
{
    public void Configure(EntityTypeBuilder<ResultRow> builder)
    {
        builder.ToTable("results");
        builder.HasKey(row => new { row.SetId, row.Analysis, row.Ordinal });
        builder.Property(row => row.Detail).HasColumnType("json");
        builder.HasOne<ResultSetRow>().WithMany().HasForeignKey(row => row.SetId).OnDelete(DeleteBehavior.Cascade);
    }
}
