namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>retractions</c>.</summary>
internal sealed class RetractionRow
{
    public long RecordId { get; set; }

    public string Reason { get; set; } = "";
}
