using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class SourceMapping : IEntityTypeConfiguration<SourceRow>
{
    public void Configure(EntityTypeBuilder<SourceRow> builder)
    {
        builder.ToTable("sources", table =>
        {
            table.Form("name", "[a-z0-9-]{2,40}");
            table.Length("title", 0, 120);
        });
        builder.HasIndex(row => row.Name).IsUnique();
        builder.Property(row => row.CreateTime).HasDefaultValueSql("clock_timestamp()");
    }
}
