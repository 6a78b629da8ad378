using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class TrendsMapping : IEntityTypeConfiguration<TrendsRow>
{
    public void Configure(EntityTypeBuilder<TrendsRow> builder)
    {
        builder.ToTable("trends");
        builder.HasKey(row => row.AsOf);
        builder.Property(row => row.IsWhole).HasDefaultValue(true);

        // json and not jsonb: it comes back to the byte.
        builder.Property(row => row.ParametersJson).HasColumnType("json");
        builder.Property(row => row.FleetJson).HasColumnType("json");
    }
}
