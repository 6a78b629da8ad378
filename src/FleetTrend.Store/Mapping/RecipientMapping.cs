using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class RecipientMapping : IEntityTypeConfiguration<RecipientRow>
{
    public void Configure(EntityTypeBuilder<RecipientRow> builder)
    {
        builder.ToTable("recipients", table =>
        {
            table.Length("base", 1, 60);
            table.Length("address", 3, 320);
        });
        builder.HasKey(row => new { row.Base, row.Address });
    }
}
