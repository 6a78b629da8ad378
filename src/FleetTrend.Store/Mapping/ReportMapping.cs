using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class ReportMapping : IEntityTypeConfiguration<ReportRow>
{
    public void Configure(EntityTypeBuilder<ReportRow> builder)
    {
        builder.ToTable("reports", table =>
        {
            table.Day("period_start_date");
            table.Day("period_end_date");
            table.HasCheckConstraint("ck_reports_period", "period_start_date <= period_end_date");
            table.Length("base", 1, 60);
            table.Length("subject", 1, 500);
        });
        builder.Property(row => row.ParametersJson).HasColumnType("json");
        builder.Property(row => row.DocumentJson).HasColumnType("json");
        builder.HasIndex(row => new { row.Base, row.TypeGroup, row.PeriodStartDate, row.PeriodEndDate }).IsUnique().AreNullsDistinct(false);
        builder.HasMany(row => row.Plots).WithOne().HasForeignKey(row => row.ReportId).OnDelete(DeleteBehavior.Restrict);
    }
}
