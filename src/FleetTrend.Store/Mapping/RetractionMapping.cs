using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class RetractionMapping : IEntityTypeConfiguration<RetractionRow>
{
    public void Configure(EntityTypeBuilder<RetractionRow> builder)
    {
        builder.ToTable("retractions", table =>
        {
            table.Length("reason", 0, 2000);
        });
        builder.KeyedByRecord(row => row.RecordId);
    }
}
