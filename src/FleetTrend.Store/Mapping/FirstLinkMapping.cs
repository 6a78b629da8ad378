using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class FirstLinkMapping : IEntityTypeConfiguration<FirstLinkRow>
{
    public void Configure(EntityTypeBuilder<FirstLinkRow> builder)
    {
        builder.ToTable("first_links", table => table.HasCheckConstraint("ck_first_links_token_hash", "octet_length(token_hash) = 32"));
        builder.HasKey(row => row.TokenHash);
        builder.Property(row => row.CreateTime).HasDefaultValueSql("clock_timestamp()");
    }
}
