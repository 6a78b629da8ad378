namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>source_codes</c>: what a code of a source means now.</summary>
internal sealed class SourceCodeRow
{
    public int SourceId { get; set; }

    public short Kind { get; set; }

    public string Code { get; set; } = "";

    public string? Location { get; set; }

    public short? Condition { get; set; }

    public short? Action { get; set; }

    public DateTimeOffset SetTime { get; set; }
}
