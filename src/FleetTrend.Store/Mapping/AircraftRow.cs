namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>aircraft</c>: a registration mark that some record has registered.</summary>
internal sealed class AircraftRow
{
    public int Id { get; set; }

    public string Registration { get; set; } = "";
}
