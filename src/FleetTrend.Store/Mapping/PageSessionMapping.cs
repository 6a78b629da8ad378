using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class PageSessionMapping : IEntityTypeConfiguration<PageSessionRow>
{
    public void Configure(EntityTypeBuilder<PageSessionRow> builder)
    {
        builder.ToTable("page_sessions", table => table.HasCheckConstraint("ck_page_sessions_id_hash", "octet_length(id_hash) = 32"));
        builder.HasKey(row => row.IdHash);
        builder.Property(row => row.CreateTime).HasDefaultValueSql("clock_timestamp()");
        builder.Property(row => row.LastUsedTime).HasDefaultValueSql("clock_timestamp()");
        builder.HasOne(row => row.Person).WithMany().HasForeignKey(row => row.PersonId).OnDelete(DeleteBehavior.Restrict);
    }
}
