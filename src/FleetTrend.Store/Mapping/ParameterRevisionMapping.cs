using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class ParameterRevisionMapping : IEntityTypeConfiguration<ParameterRevisionRow>
{
    public void Configure(EntityTypeBuilder<ParameterRevisionRow> builder)
    {
        builder.ToTable("parameter_revisions", table =>
        {
            table.HasCheckConstraint("ck_parameter_revisions_revision", "revision >= 1");
            table.Length("changed_by", 1, 200);
            table.Length("note", 1, 2_000);
        });
        builder.HasKey(row => row.Revision);
        builder.Property(row => row.Revision).ValueGeneratedNever();
        builder.Property(row => row.ValuesJson).HasColumnType("json");

        // Two changes at one moment would leave open which was in force.
        builder.HasIndex(row => row.ChangeTime).IsUnique();
    }
}
