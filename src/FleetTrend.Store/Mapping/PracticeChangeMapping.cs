using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class PracticeChangeMapping : IEntityTypeConfiguration<PracticeChangeRow>
{
    public void Configure(EntityTypeBuilder<PracticeChangeRow> builder)
    {
        builder.ToTable("practice_changes", table =>
        {
            table.Day("change_date");
            table.Length("base", 1, 60);
            table.Length("type_group", 2, 60);
            table.HasCheckConstraint("ck_practice_changes_locations", "cardinality(locations) <= 500");
            table.Length("part_number", 1, 120);
            table.Length("what", 1, 200);
            table.Length("why", 1, 2000);
        });
        builder.KeyedByRecord(row => row.RecordId);
    }
}
