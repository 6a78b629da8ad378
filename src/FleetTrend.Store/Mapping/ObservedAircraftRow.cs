namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>observed_aircraft</c>.</summary>
internal sealed class ObservedAircraftRow
{
    public int AircraftId { get; set; }

    public DateTimeOffset AsOf { get; set; }

    public Guid Code { get; set; }

    public DateOnly? NextDate { get; set; }

    /// <summary>Null where there was no aircraft of that mark then.</summary>
    public byte[]? Content { get; set; }
}
