namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>stock_counts</c>.</summary>
internal sealed class StockCountRow
{
    public long RecordId { get; set; }

    public DateOnly CountDate { get; set; }

    public string Base { get; set; } = "";

    public string PartNumber { get; set; } = "";

    public int Quantity { get; set; }

    public int? LeadTimeDays { get; set; }
}
