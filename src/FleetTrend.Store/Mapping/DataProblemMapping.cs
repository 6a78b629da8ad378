using FleetTrend.Store.DataProblems;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class DataProblemMapping : IEntityTypeConfiguration<DataProblemRow>
{
    public void Configure(EntityTypeBuilder<DataProblemRow> builder)
    {
        builder.ToTable("data_checks", table =>
        {
            table.Code("state", (int)DataProblemState.Open, (int)DataProblemState.Gone);
            table.HasCheckConstraint("ck_data_checks_last_seen_time", "last_seen_time >= since_time");
            table.HasCheckConstraint("ck_data_checks_gone_time", "(state <> 1 or gone_time is null) and (state <> 3 or gone_time is not null)");
            table.HasCheckConstraint("ck_data_checks_closing", "(closed_by is null) = (close_time is null) and (closed_by is null) = (close_note is null)");
            table.HasCheckConstraint("ck_data_checks_closed_by", "(state <> 2 or closed_by is not null) and (state <> 1 or closed_by is null)");
        });
        builder.Property(row => row.State).HasConversion<short>();
        builder.Property(row => row.EvidenceJson).HasColumnType("json");

        // Of rows with one identity at most one is open; what was closed or ended before stays as a row of its own.
        builder.HasIndex(row => row.Identity).IsUnique().HasFilter("state = 1");
        builder.HasIndex(row => new { row.Identity, row.Id });
        builder.HasIndex(row => new { row.State, row.Id });
    }
}
