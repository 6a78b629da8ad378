using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class ReportPlotMapping : IEntityTypeConfiguration<ReportPlotRow>
{
    public void Configure(EntityTypeBuilder<ReportPlotRow> builder)
    {
        builder.ToTable("report_plots", table => table.Length("name", 1, 120));
        builder.HasKey(row => new { row.ReportId, row.Name });
    }
}
