using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class ReportDeliveryMapping : IEntityTypeConfiguration<ReportDeliveryRow>
{
    public void Configure(EntityTypeBuilder<ReportDeliveryRow> builder)
    {
        builder.ToTable("report_deliveries", table => table.Length("recipient", 3, 320));
        builder.HasKey(row => new { row.ReportId, row.Recipient });
        builder.HasOne<ReportRow>().WithMany().HasForeignKey(row => row.ReportId).OnDelete(DeleteBehavior.Restrict);
    }
}
