using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class ReportRequestMapping : IEntityTypeConfiguration<ReportRequestRow>
{
    public void Configure(EntityTypeBuilder<ReportRequestRow> builder)
    {
        builder.ToTable("report_requests", table => table.Length("request_id", 1, 60));
        builder.HasKey(row => row.RequestId);
        builder.Property(row => row.RequestTime).HasDefaultValueSql("clock_timestamp()");
    }
}
