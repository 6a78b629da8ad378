using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class ReportRequestMapping : IEntityTypeConfiguration<ReportRequestRow>
{
    public void Configure(EntityTypeBuilder<ReportRequestRow> builder)
    {
        builder.ToTable("report_requests", table =>
        {
            table.Length("request_id", 1, 60);
            table.Day("period_start_date");
            table.Day("period_end_date");
            table.HasCheckConstraint("ck_report_requests_period", "period_start_date <= period_end_date");
        });
        builder.HasKey(row => row.RequestId);
        builder.Property(row => row.RequestTime).HasDefaultValueSql("clock_timestamp()");
        builder.Property(row => row.AttemptCount).HasDefaultValue(0);
    }
}
