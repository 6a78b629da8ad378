using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class TypeGroupMapping : IEntityTypeConfiguration<TypeGroupRow>
{
    public void Configure(EntityTypeBuilder<TypeGroupRow> builder)
    {
        builder.ToTable("type_groups", table =>
        {
            table.Form("name", "[a-z0-9-]{2,60}");
            table.Length("title", 0, 120);
        });
        builder.HasIndex(row => row.Name).IsUnique();
        builder.HasOne(row => row.Layout).WithMany().HasForeignKey(row => row.LayoutId).OnDelete(DeleteBehavior.Restrict);
    }
}
