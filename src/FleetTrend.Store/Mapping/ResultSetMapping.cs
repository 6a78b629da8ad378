using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class ResultSetMapping : IEntityTypeConfiguration<ResultSetRow>
{
    public void Configure(EntityTypeBuilder<ResultSetRow> builder)
    {
        builder.ToTable("result_sets");
        builder.HasKey(row => row.Id);
        builder.Property(row => row.SummaryJson).HasColumnType("json");
        builder.HasIndex(row => new { row.AsOf, row.TypeGroup }).IsUnique();
    }
}
