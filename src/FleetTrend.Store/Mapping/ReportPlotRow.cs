namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>report_plots</c>.</summary>
internal sealed class ReportPlotRow
{
    public long ReportId { get; set; }

    public string Name { get; set; } = "";

    public byte[] Image { get; set; } = [];
}
