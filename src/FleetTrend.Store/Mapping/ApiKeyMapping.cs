using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class ApiKeyMapping : IEntityTypeConfiguration<ApiKeyRow>
{
    public void Configure(EntityTypeBuilder<ApiKeyRow> builder)
    {
        builder.ToTable("api_keys", table =>
        {
            table.Form("id", "[a-z2-7]{12}");
            table.Length("name", 1, 60);
            table.HasCheckConstraint("ck_api_keys_scopes", "cardinality(scopes) > 0 and scopes <@ array[1, 2, 3, 4]");
            table.HasCheckConstraint("ck_api_keys_source_id", "source_id is not null or not scopes @> array[1]");
            table.HasCheckConstraint("ck_api_keys_secret_hash", "octet_length(secret_hash) = 32");
        });
        builder.HasKey(row => row.Id);
        builder.Property(row => row.Number).UseIdentityAlwaysColumn();
        builder.HasIndex(row => row.Number).IsUnique();
        builder.Property(row => row.CreateTime).HasDefaultValueSql("clock_timestamp()");
        builder.HasOne(row => row.Source).WithMany().HasForeignKey(row => row.SourceId).OnDelete(DeleteBehavior.Restrict);
    }
}
