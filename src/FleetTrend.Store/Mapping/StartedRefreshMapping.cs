using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class StartedRefreshMapping : IEntityTypeConfiguration<StartedRefreshRow>
{
    public void Configure(EntityTypeBuilder<StartedRefreshRow> builder)
    {
        builder.ToTable("started_refreshes");
        builder.HasKey(row => new { row.AsOf, row.TypeGroup });
    }
}
