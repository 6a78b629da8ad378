using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class KeptForecastMapping : IEntityTypeConfiguration<KeptForecastRow>
{
    public void Configure(EntityTypeBuilder<KeptForecastRow> builder)
    {
        builder.ToTable("kept_forecasts");
        builder.HasKey(row => new { row.TypeGroup, row.Analysis, row.QuarterDate });
        builder.Property(row => row.DetailJson).HasColumnType("json");
    }
}
