namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>results</c>.</summary>
internal sealed class ResultRow
{
    public long SetId { get; set; }

    public string Analysis { get; set; } = "";

    public int Ordinal { get; set; }

    public string? Registration { get; set; }

    public string? Location { get; set; }

    public string? Kind { get; set; }

    public string? Base { get; set; }

    public int ItemCount { get; set; }

    public string[]? Labels { get; set; }

    public float?[]? HeadlineValues { get; set; }

    public float?[]? Lowers { get; set; }

    public float?[]? Uppers { get; set; }

    public int[]? EventCounts { get; set; }

    /// <summary>The answers; null where only the headline figures are still kept.</summary>
    public string? Detail { get; set; }
}
