namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>reports</c>.</summary>
internal sealed class ReportRow
{
    public long Id { get; set; }

    public string Base { get; set; } = "";

    public string? TypeGroup { get; set; }

    public DateOnly PeriodStartDate { get; set; }

    public DateOnly PeriodEndDate { get; set; }

    public DateTimeOffset AsOf { get; set; }

    public string CodeVersion { get; set; } = "";

    public string ParametersJson { get; set; } = "";

    public string Subject { get; set; } = "";

    public string Text { get; set; } = "";

    public string Html { get; set; } = "";

    public string? DocumentJson { get; set; }

    public string MessageIdSeed { get; set; } = "";

    public List<ReportPlotRow> Plots { get; } = [];
}
