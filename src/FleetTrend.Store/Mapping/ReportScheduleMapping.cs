using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class ReportScheduleMapping : IEntityTypeConfiguration<ReportScheduleRow>
{
    public void Configure(EntityTypeBuilder<ReportScheduleRow> builder)
    {
        builder.ToTable("report_schedules", table =>
        {
            table.Length("name", 1, 80);
            table.Length("base", 1, 60);
            table.Code("day_of_week", 0, 6);
            table.Length("time_zone", 1, 60);
            table.HasCheckConstraint("ck_report_schedules_scope", "base = '*' or type_group is null");
        });
        builder.HasIndex(row => row.Name).IsUnique().HasFilter("remove_time is null");
        builder.HasOne<ReportRow>().WithMany().HasForeignKey(row => row.LastReportId).OnDelete(DeleteBehavior.Restrict);
    }
}
