using FleetTrend.Records.Spares;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class StockCountMapping : IEntityTypeConfiguration<StockCountRow>
{
    public void Configure(EntityTypeBuilder<StockCountRow> builder)
    {
        builder.ToTable("stock_counts", table =>
        {
            table.Day("count_date");
            table.Length("base", 1, 60);
            table.Length("part_number", 1, 120);
            table.Code("quantity", 0, StockCount.MaxQuantity);
            table.Code("lead_time_days", 0, StockCount.MaxLeadTimeDays);
        });
        builder.KeyedByRecord(row => row.RecordId);
    }
}
